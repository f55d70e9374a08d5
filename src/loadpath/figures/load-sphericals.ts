/** Spherical bearings and rod ends of a corner under load, over the ratings that the file gives. */
import { sub, unit as unitOf, type Vec3 } from '../../maths/vec3.ts';
import type { Working } from '../../working/working.ts';
import type { CornerState } from '../corner/state.ts';
import type { CornerForm } from '../corner-of-car.ts';
import type { CornerLoads } from '../loads/corner-loads.ts';
import { axisNow, bothShares, partsOf, radialShare } from '../loads/spherical.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { type FigureNote, noteSolved, notesOf, type Put } from './note.ts';

type Sphericals = NonNullable<CornerForm['sphericals']>;
export type SphericalName = keyof Sphericals;

const WORDS: Readonly<Record<SphericalName, string>> = {
  upperFront: 'upper wishbone, front inner joint',
  upperRear: 'upper wishbone, rear inner joint',
  upperOuter: 'upper outer joint',
  lowerFront: 'lower wishbone, front inner joint',
  lowerRear: 'lower wishbone, rear inner joint',
  lowerOuter: 'lower outer joint',
  toeInner: 'track rod or toe link, inner joint',
  toeOuter: 'track rod or toe link, outer joint',
  rodOuter: 'rod, outer joint',
  rodInner: 'rod, joint at the rocker',
};

const NAMES = Object.keys(WORDS) as SphericalName[];

const METHOD = 'force of the joint, parted by the axis of its housing';

const notesFor = (name: SphericalName) => {
  const note = (what: string, means: string, rest: Pick<FigureNote, 'symbol' | 'unit' | 'rank'>) =>
    notesOf(name.endsWith('Outer') && name !== 'rodOuter' ? 'upright' : 'links')({
      id: `spherical.${name}.${what}`,
      means: `${WORDS[name]}: ${means}`,
      anchor: name,
      ...(rest.unit === 'N' ? { method: METHOD, source: 'LL-37' } : {}),
      ...rest,
    });
  return {
    radial: note('radial', 'force square to its housing', { symbol: 'F_q', unit: 'N', rank: 3 }),
    axial: note('axial', 'force along the axis of its housing', { symbol: 'F_p', unit: 'N', rank: 3 }),
    share: note('share', 'force over its static rating', { symbol: 'r', unit: 'share', rank: 2 }),
  };
};

const NOTES = Object.fromEntries(NAMES.map((name) => [name, notesFor(name)])) as Record<
  SphericalName,
  ReturnType<typeof notesFor>
>;

function forceAt(name: SphericalName, { members }: CornerLoads): Vec3 {
  if (name === 'upperOuter') return members.onUpright.upper.force;
  if (name === 'lowerOuter') return members.onUpright.lower.force;
  if (name === 'rodOuter' || name === 'rodInner') return members.onRocker.force;
  if (name === 'toeInner' || name === 'toeOuter') return members.onUpright.toeLink.force;
  return members.onTub[name].force;
}

export function putSphericalFigures(
  corner: CornerForm,
  state: CornerState,
  of: CornerLoads,
  numbers: Numbers,
  put: Put,
  working?: Working,
): void {
  for (const name of NAMES) {
    const rated: NonNullable<Sphericals['upperOuter']> | undefined = corner.sphericals?.[name];
    if (rated === undefined) continue;
    const surveyed =
      rated.axis === undefined
        ? undefined
        : unitOf(sub(numbers.point(rated.axis), numbers.point(corner.points[name])));
    const wishbone = name.startsWith('upper') ? 'upper' : 'lower';
    const axis = surveyed === undefined ? undefined : axisNow(state, wishbone, surveyed);
    const { radial, axial } = partsOf(forceAt(name, of), axis);
    if (axis === undefined) {
      // then it is the force of the joint or member, which stands elsewhere
      const { symbol, means, unit } = NOTES[name].radial;
      noteSolved(working, METHOD, 'LL-37', () => [{ symbol, means, value: radial, unit }]);
    } else {
      put(NOTES[name].radial, radial);
      put(NOTES[name].axial, axial);
    }
    const R_r = numbers.of(rated.radialRating);
    const from = { R_r: fromReading(rated.radialRating) };
    if (axis === undefined || rated.axialRating === undefined) {
      put(NOTES[name].share, radialShare({ F_q: radial, R_r }, working, from));
      continue;
    }
    const R_a = numbers.of(rated.axialRating);
    const both = { F_q: radial, F_p: axial, R_r, R_a };
    put(NOTES[name].share, bothShares(both, working, { ...from, R_a: fromReading(rated.axialRating) }));
  }
}
