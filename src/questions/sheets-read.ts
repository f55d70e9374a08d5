/**
 * The sheets of a car as they were read, with what is doubted of them before anything is worked out from them.
 *
 * In    a car with sheets that were read
 * Out   the car ready to be stood on its pads, its sheets, what must be mended first, what is doubted at sight
 */
import type { Car } from '../car/read.ts';
import { adjustersOf } from '../flatfloor/adjusters.ts';
import { type Doubt, doubtsAtSight, doubtsOfFit } from '../flatfloor/doubts.ts';
import { type FloorCar, floorCarOf } from '../flatfloor/floor-car.ts';
import { type Found, type Hidden, hiddenOf } from '../flatfloor/found.ts';
import { type Sheet, sheetsOf, type Wanted, wantedOf } from '../flatfloor/sheet.ts';
import { narrowTolerances, spreadsOfSheet, unevenFloor } from '../flatfloor/sheet-spreads.ts';
import { crossedByFit, lonelySigns } from '../flatfloor/slips.ts';
import { Floor, type FloorStanding } from '../flatfloor/stand.ts';
import { absolutePressures, unitsSlipped } from '../flatfloor/units-slipped.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Problem } from '../measured/problem.ts';
import { problemOfDoubt } from './floor-refusal.ts';
import { movedProblems } from './moved-problems.ts';

export interface SheetsRead {
  readonly prepared: FloorCar;
  readonly floor: Floor;
  readonly numbers: Numbers;
  readonly wanted: readonly Wanted[];
  readonly sheets: readonly Sheet[];
  readonly hidden: readonly Hidden[];
  /** The car as surveyed, under what each sheet knows. */
  readonly standings: readonly FloorStanding[];
  /** What is seen before anything is fitted; errors among them end the question. */
  readonly atSight: readonly Doubt[];
}

export type SheetsReading =
  | { readonly ok: true; readonly is: SheetsRead }
  | { readonly ok: false; readonly message: string; readonly problems: readonly Problem[] };

/** @throws NoCentreOfGravity, LinkOpen, NotSettled */
export function sheetsRead({ form, values }: Car): SheetsReading {
  const numbers = new Numbers(values);
  const prepared = floorCarOf(form, numbers);
  const wanted = wantedOf(form, numbers);
  const droops = JSON.stringify(form.floor).includes('"droop"');
  const floor = new Floor(prepared, droops);
  const surveyed = adjustersOf(form, prepared.changes, numbers);
  const problems = movedProblems(form, prepared.changes, numbers);
  if (problems.length > 0)
    return { ok: false, message: 'The sheets move adjusters as they cannot be moved.', problems };
  const sheets = sheetsOf(form, prepared, surveyed, numbers);
  const hidden = hiddenOf(prepared, sheets);
  if (sheets.every(({ readings }) => readings.length === 0))
    return {
      ok: false,
      message: 'No sheet holds a reading: write what pads and gauges showed under floor, read, readings.',
      problems: [],
    };
  const standings = sheets.map((sheet) => floor.stand(sheet.state));
  const uneven = unevenFloor(form, numbers);
  const ofSheet = (sheet: Sheet, standing: FloorStanding): readonly Doubt[] => {
    const seen = doubtsAtSight(prepared, sheet, standing, hidden);
    const signs = lonelySigns(sheet, standing, wanted);
    // one sign is asked about once
    const told = new Set(seen.filter(({ code }) => code === 'sheet/sign').flatMap(({ paths }) => paths));
    return [
      ...spreadsOfSheet(sheet),
      // on a floor far out of level weights lie far off for that reason
      ...(uneven.length === 0 ? unitsSlipped(sheet, standing) : []),
      ...seen,
      ...signs.filter(({ paths }) => !paths.every((path) => told.has(path))),
    ];
  };
  const atSight = [
    ...narrowTolerances(form),
    ...absolutePressures(form, numbers),
    ...uneven,
    ...sheets.flatMap((sheet, k) => ofSheet(sheet, standings[k]!)),
  ];
  const errors = atSight.filter(({ weight }) => weight === 'error');
  if (errors.length > 0)
    return {
      ok: false,
      message: 'The sheets hold readings that cannot be used.',
      problems: errors.map(problemOfDoubt),
    };
  return { ok: true, is: { prepared, floor, numbers, wanted, sheets, hidden, standings, atSight } };
}

/** All that is doubted, at sight and by the fit. */
export const doubtsOf = ({ floor, sheets, hidden, atSight }: SheetsRead, found: Found): readonly Doubt[] => [
  ...atSight,
  ...crossedByFit(floor, sheets, found, hidden),
  ...doubtsOfFit(found),
];
