/**
 * What a preload loses and gains after the wrench is put away: settling of the faces, heat.
 *
 * In    compliances of stud and parts, what settles, temperatures
 * Out   change of preload, loss negative
 *
 * ST-n are the equations of docs/theory/studs.md.
 */
import type { Kelvin, Metre, Newton, Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

const COMPLIANCES = {
  δ_S: { unit: 'm/N', means: 'compliance of the stud' },
  δ_P: { unit: 'm/N', means: 'compliance of the clamped parts' },
} as const;

const settlingLoss = formula({
  symbol: 'F_Z',
  means: 'change of preload as the faces settle',
  is: '-f_Z/(δ_S + δ_P)',
  unit: 'N',
  terms: { f_Z: { unit: 'm', means: 'settling of threads and faces' }, ...COMPLIANCES },
  source: 'ST-14; VDI 2230',
});

export interface Compliances {
  readonly stud: number;
  readonly parts: number;
}

export const settling = (
  of: Compliances & { readonly settles: Metre },
  working?: Working,
  from: Readonly<Partial<Record<'f_Z', Origin>>> = {},
): Newton => settlingLoss({ f_Z: of.settles, δ_S: of.stud, δ_P: of.parts }, working, from);

/**
 * Settling by roughness and number of faces, metres: the guide values of VDI 2230 Part 1, table 5 (from memory),
 * for tension, roughness Rz 10 to 40 µm: thread 3, each face under a nut 3, each inner interface 2 µm.
 */
export const SETTLING = { thread: 3e-6, nutFace: 3e-6, interface: 2e-6 } as const;

export const settlingOf = (count: { readonly nutFaces: number; readonly interfaces: number }): Metre =>
  SETTLING.thread + SETTLING.nutFace * count.nutFaces + SETTLING.interface * count.interfaces;

const heatGain = formula({
  symbol: 'F_th',
  means: 'change of preload with heat',
  is: '(x_P - x_S)/(δ_S + δ_P)',
  unit: 'N',
  terms: {
    x_P: { unit: 'm', means: 'growth of the clamped parts' },
    x_S: { unit: 'm', means: 'growth of the stud over the same length' },
    ...COMPLIANCES,
  },
  source: 'ST-15',
  holds: 'with moduli as cold; both fall by a few per cent at 100 °C',
});

/** Growth of a length by heat, m. */
export interface Warmed {
  readonly length: Metre;
  /** 1/K */
  readonly expansion: Ratio;
  readonly rise: Kelvin;
}

const growth = (parts: readonly Warmed[]): Metre =>
  parts.reduce((sum, { length, expansion, rise }) => sum + length * expansion * rise, 0);

/** Change of preload when stud and parts warm up, each by its own rise.  [ST-15] */
export const heatChange = (
  of: Compliances & { readonly layers: readonly Warmed[]; readonly studPieces: readonly Warmed[] },
  working?: Working,
): Newton =>
  heatGain({ x_P: growth(of.layers), x_S: growth(of.studPieces), δ_S: of.stud, δ_P: of.parts }, working, {
    x_P: { kind: 'constant', what: 'Σ length × expansion × rise of the layers' },
    x_S: { kind: 'constant', what: 'length × expansion × rise of the stud' },
  });
