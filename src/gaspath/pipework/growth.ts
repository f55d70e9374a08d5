/**
 * A pipe grown by heat: longer everywhere by the same share, from its flange on.
 *
 * In    a pipe, its expansion and how much hotter it is than when it was measured
 * Out   growth along the pipe, the hot pipe, how far the mouth moves
 * Not   pipes hotter at one end (take the mean), pipes that are held at both ends: these are then under load
 */
import { distance } from '../../maths/vec3.ts';
import type { Kelvin, Metre } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { mouth } from './centreline.ts';
import { developedLength, type Pipe, type Tube } from './pipe.ts';

const growthOf = formula({
  symbol: 'ΔL',
  means: 'how much longer the pipe is when hot',
  is: 'α*L*ΔT',
  unit: 'm',
  terms: {
    α: { unit: '1/K', means: 'mean expansion between cold and hot' },
    L: { unit: 'm', means: 'developed length, cold' },
    ΔT: { unit: 'K', means: 'hotter than when measured' },
  },
  source: 'PW-4',
  holds: 'for a mean expansion between the two temperatures, not the one at room temperature',
});

export interface Heat {
  /** Mean expansion from cold to hot, 1/K. */
  readonly expansion: number;
  readonly hotter: Kelvin;
}

/** α L ΔT.  [PW-4] */
export const growth = (pipe: Pick<Pipe, 'elements'>, heat: Heat, working?: Working): Metre =>
  growthOf({ α: heat.expansion, L: developedLength(pipe, working), ΔT: heat.hotter }, working);

/** The pipe when hot, its flange where it was: all lengths and radii grow alike and no angle changes. */
export function hotPipe(pipe: Pipe, heat: Heat): Pipe {
  const k = 1 + heat.expansion * heat.hotter;
  const grown = ({ od, wall, density }: Tube): Tube => ({
    od: od * k,
    wall: wall * k,
    density: density / k ** 3,
  });
  return {
    ...pipe,
    tube: grown(pipe.tube),
    ...(pipe.steps === undefined
      ? {}
      : {
          steps: pipe.steps.map(({ element, tube, join }) => ({
            element,
            tube: grown(tube),
            join: { ...join, length: join.length * k },
          })),
        }),
    elements: pipe.elements.map((each) =>
      each.kind === 'straight' ? { ...each, length: each.length * k } : { ...each, radius: each.radius * k },
    ),
  };
}

/** How far the mouth moves if nothing holds it: what a slip joint must take up. */
export const mouthMoves = (pipe: Pipe, heat: Heat): Metre =>
  distance(mouth(pipe).p, mouth(hotPipe(pipe, heat)).p);
