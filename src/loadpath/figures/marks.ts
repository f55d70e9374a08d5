/** Where along the travel things happen, and what is left at full bump. */
import { formula, type Working } from '../../working/working.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { skinStress } from '../spring/torsion-bar.ts';
import { barOf } from '../spring-of-car.ts';
import { type SprungCorner, type TravelMarks, travelAtLoad, travelMarks } from '../sprung-corner.ts';
import { notesOf, type Put } from './note.ts';
import { marginOf } from './unit.ts';

const note = notesOf('spring');

const MARKS: readonly (readonly [keyof TravelMarks, ReturnType<typeof note>])[] = (
  [
    ['droopStop', 'droopStopTravel', 'travel at which the droop stop takes over', 'z_d'],
    ['coilFree', 'coilFreeTravel', 'travel at which the coil comes free of its seat', 'z_f'],
    ['barSlack', 'barSlackTravel', 'travel at which the bar is slack', 'z_0'],
    ['rubber', 'rubberTravel', 'travel at which the bump rubber touches', 'z_r'],
    ['coilSolid', 'coilSolidTravel', 'travel at which the coil is solid', 'z_s'],
    ['closed', 'closedTravel', 'travel at which the damper is closed', 'z_c'],
  ] as const
).map(([mark, id, means, symbol]) => [
  mark,
  note({
    id,
    means,
    symbol,
    unit: 'm',
    anchor: 'wheelCentre',
    rank: mark === 'rubber' || mark === 'droopStop' ? 2 : 3,
    method: 'the linkage solved for the length at which it happens',
    source: 'LP-47',
  }),
]);

/** Marks at which the rate jumps: what stands within the spread of one may be on either side of it. */
export const RATE_JUMPS: readonly string[] = MARKS.filter(([mark]) => mark !== 'barSlack').map(
  ([, { id }]) => id,
);

const fullBumpStress = note({
  id: 'barStressFullBump',
  means: 'shear stress at the skin with the damper closed',
  symbol: 'τ_b',
  unit: 'Pa',
  anchor: 'rockerPivot',
  rank: 2,
  method: 'torque with the damper closed, then as the stress above',
  source: 'SP-23',
});

const fullBumpMargin = note({
  id: 'solidMarginFullBump',
  means: 'compression left before the coil is solid, damper closed',
  symbol: 'c_b',
  unit: 'm',
  anchor: 'damperTub',
  rank: 2,
});

const droopPreload = note({
  id: 'droopPreload',
  means: 'load at the wheel before it leaves its droop stop',
  symbol: 'P_d',
  unit: 'N',
  anchor: 'contact',
  rank: 2,
  method: 'springing at the droop stop, stop not counted',
  source: 'LP-48',
});

const standsAt = note({
  id: 'standsAt',
  means: 'travel at which the springing balances the scale',
  symbol: 'z_e',
  unit: 'm',
  anchor: 'contact',
  rank: 2,
  say: 'not 0: the spring as fitted does not carry just what the scale says in the surveyed position',
  method: 'force of the springing at the wheel against the load, enclosed between its kinks and halved',
  source: 'LP-43',
});

const closedCompression = formula({
  symbol: 'c_z',
  means: 'compression, from the surveyed position, at which the damper is closed',
  is: 'l_0 - l_c',
  unit: 'm',
  terms: {
    l_0: { unit: 'm', means: 'damper unit as surveyed, eye to eye' },
    l_c: { unit: 'm', means: 'length of the closed damper' },
  },
  source: 'SP-31',
});

const marginClosed = marginOf('c_b', 'compression left before the coil is solid, damper closed');

export function markFigures(of: SprungCorner, numbers: Numbers, put: Put, working?: Working): void {
  const marks = travelMarks(of);
  const { springing, form } = of;
  const present: Record<keyof TravelMarks, boolean> = {
    droopStop: springing.droopStop !== undefined,
    coilFree: springing.coil !== undefined,
    rubber: springing.rubber !== undefined,
    coilSolid: springing.coil !== undefined,
    closed: springing.closedAt !== undefined,
    barSlack: springing.barRate !== undefined,
  };
  for (const [mark, note] of MARKS) if (present[mark]) put(note, marks[mark]);
  // where nothing was measured as fitted, the springing is set by the scale and balances it by construction
  if (form.coil?.fittedLength !== undefined || form.bar?.twist !== undefined) {
    put(standsAt, travelAtLoad(of, springing.sprungLoad));
  }
  if (springing.droopStop !== undefined) {
    put(droopPreload, Number.isNaN(marks.droopStop) ? Number.NaN : of.wheelAt(marks.droopStop).force);
  }
  if (springing.closedAt === undefined) return;
  if (springing.coil !== undefined) {
    if (working !== undefined) {
      const l_c = form.damper!.closedLength;
      closedCompression({ l_0: of.surveyedLength, l_c: numbers.of(l_c) }, working, { l_c: fromReading(l_c) });
    }
    put(
      fullBumpMargin,
      marginClosed({ c_s: springing.coilSolidAt!, c: springing.closedAt }, working, {
        c: { kind: 'step', symbol: 'c_z' },
      }),
    );
  }
  if (form.bar !== undefined) {
    const { bar: sizes } = barOf(form.bar, numbers);
    const closed = Number.isNaN(marks.closed) ? undefined : of.wheelAt(marks.closed);
    put(fullBumpStress, closed === undefined ? Number.NaN : skinStress(sizes, closed.torque));
  }
}
