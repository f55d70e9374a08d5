/**
 * A pair of gears: its ratio, and whether two wheels of so many teeth can stand at the distance of the shafts.
 *
 * RA-n are the equations of docs/theory/ratios.md.
 */
import type { Teeth } from '../../car/teeth.ts';
import type { Metre, Radian, Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

const counted = ({ text }: Teeth): Origin => ({ kind: 'constant', what: `teeth counted, ${text}` });

const pairRatio = (symbol: string, means: string) =>
  formula({
    symbol,
    means,
    is: 'z_2/z_1',
    unit: '1',
    terms: {
      z_2: { unit: '1', means: 'teeth of the driven' },
      z_1: { unit: '1', means: 'teeth of the driver' },
    },
    source: 'RA-1',
  });

const GEAR = pairRatio('i_g', 'ratio of the pair');
const FINAL = pairRatio('i_f', 'ratio of the final drive');
const DROP = pairRatio('i_d', 'ratio of the drop gears');

const overall = formula({
  symbol: 'i',
  means: 'turns of the crank for one of the wheel',
  is: 'i_g*i_d*i_f',
  unit: '1',
  terms: {
    i_g: { unit: '1', means: 'ratio of the pair' },
    i_d: { unit: '1', means: 'ratio of the drop gears' },
    i_f: { unit: '1', means: 'ratio of the final drive' },
  },
  source: 'RA-2',
});

const ratioOf = (of: typeof GEAR, pair: Teeth, working?: Working): Ratio =>
  of({ z_2: pair.driven, z_1: pair.driver }, working, { z_2: counted(pair), z_1: counted(pair) });

export const gearRatio = (pair: Teeth, working?: Working): Ratio => ratioOf(GEAR, pair, working);

/** Turns of the crank for one of the wheel. [RA-2] */
export function overallRatio(
  { pair, final, drop }: { readonly pair: Teeth; readonly final: Teeth; readonly drop?: Teeth },
  working?: Working,
): Ratio {
  const i_g = gearRatio(pair, working);
  const i_f = ratioOf(FINAL, final, working);
  const i_d = drop === undefined ? 1 : ratioOf(DROP, drop, working);
  return overall({ i_g, i_d, i_f }, working, {
    ...(drop === undefined ? { i_d: { kind: 'constant', what: 'no drop gears' } as const } : {}),
  });
}

const reference = formula({
  symbol: 'a_0',
  means: 'distance of the shafts with teeth of standard height',
  is: 'm*(z_1 + z_2)/2',
  unit: 'm',
  terms: {
    m: { unit: 'm', means: 'module' },
    z_1: { unit: '1', means: 'teeth of the driver' },
    z_2: { unit: '1', means: 'teeth of the driven' },
  },
  source: 'RA-11',
});

const workingAngle = formula({
  symbol: 'α_w',
  means: 'pressure angle at which the pair works',
  is: 'acos(a_0*cos(α)/a)',
  unit: 'rad',
  terms: {
    a_0: { unit: 'm', means: 'distance with teeth of standard height' },
    α: { unit: 'rad', means: 'pressure angle of the cutter' },
    a: { unit: 'm', means: 'distance of the shafts' },
  },
  source: 'RA-11',
});

const shiftSum = formula({
  symbol: 'x_Σ',
  means: 'profile shift of both wheels together, in modules',
  is: '(z_1 + z_2)*((tan(α_w) - α_w) - (tan(α) - α))/(2*tan(α))',
  unit: '1',
  terms: {
    z_1: { unit: '1', means: 'teeth of the driver' },
    z_2: { unit: '1', means: 'teeth of the driven' },
    α_w: { unit: 'rad', means: 'pressure angle at which the pair works' },
    α: { unit: 'rad', means: 'pressure angle of the cutter' },
  },
  source: 'RA-11',
  holds: 'straight teeth, no backlash',
});

/** Cutter angle that nearly every pair is made with. */
export const CUTTER_ANGLE: Radian = (20 * Math.PI) / 180;

/**
 * How far both wheels together must be cut off standard height to stand at this distance, in modules; not a number
 * where no cutting could.
 */
export function profileShift(
  { pair, module, distance, angle = CUTTER_ANGLE }: ShiftOf,
  working?: Working,
): Ratio {
  const teeth = { z_1: pair.driver, z_2: pair.driven };
  const from = { z_1: counted(pair), z_2: counted(pair) };
  const a_0 = reference({ m: module, ...teeth }, working, from);
  const α_w = workingAngle({ a_0, α: angle, a: distance }, working, {
    α: { kind: 'constant', what: 'cutter of 20°' },
  });
  return shiftSum({ ...teeth, α_w, α: angle }, working, {
    ...from,
    α: { kind: 'constant', what: 'cutter of 20°' },
  });
}

export interface ShiftOf {
  readonly pair: Teeth;
  readonly module: Metre;
  readonly distance: Metre;
  readonly angle?: Radian;
}
