/** How far a wheel goes and what happens on the way: stops, free springs, the linkage's own ends. */
import { type TravelLimits, travelLimits } from '../loadpath/corner/reach.ts';
import { type SprungCorner, travelMarks } from '../loadpath/sprung-corner.ts';
import type { TravelEvent } from './figure.ts';

/** How far the wheel goes, and what ends it. Metres. */
export interface TravelRange {
  readonly bump: number;
  readonly droop: number;
  readonly bumpBy: string;
  readonly droopBy: string;
}

/** What ends the bump of a corner whose damper closes before the linkage ends. */
export const DAMPER_CLOSED = 'damper closed';
const END_WORDS = { bump: DAMPER_CLOSED, droop: 'droop stop' } as const;

/** The range of the linkage, cut by the damper's own ends where it has one. */
export function rangeOf(of: SprungCorner, rack: number): TravelRange {
  const limits: TravelLimits = travelLimits(of.corner, rack);
  const marks = travelMarks(of);
  const linkage = (end: TravelLimits['bump']): string =>
    end.limit === undefined ? 'linkage free this far' : `${end.limit.binds} ${end.limit.how}`;
  const closed = Number.isFinite(marks.closed) && marks.closed < limits.bump.travel;
  const stopped = Number.isFinite(marks.droopStop) && marks.droopStop > limits.droop.travel;
  return {
    bump: closed ? marks.closed : limits.bump.travel,
    bumpBy: closed ? END_WORDS.bump : linkage(limits.bump),
    droop: stopped ? marks.droopStop : limits.droop.travel,
    droopBy: stopped ? END_WORDS.droop : linkage(limits.droop),
  };
}

/** What happens along the travel, in order from droop to bump. */
export function eventsOf(of: SprungCorner, range: TravelRange): TravelEvent[] {
  const marks = travelMarks(of);
  const { springing } = of;
  const all: TravelEvent[] = [
    { travel: marks.droopStop, what: 'droop stop takes over', kind: 'stop' },
    { travel: marks.coilFree, what: 'coil comes free of its seat', kind: 'free' },
    { travel: marks.barSlack, what: 'torsion bar is slack; beyond, its twist reverses', kind: 'free' },
    { travel: marks.rubber, what: 'bump rubber touches', kind: 'stop' },
    { travel: marks.coilSolid, what: 'coil is solid', kind: 'limit' },
    { travel: marks.closed, what: 'damper is closed', kind: 'limit' },
    ...(springing.closedAt === undefined
      ? [{ travel: range.bump, what: range.bumpBy, kind: 'limit' } as const]
      : []),
  ];
  return all.filter((event) => Number.isFinite(event.travel)).sort((a, b) => a.travel - b.travel);
}
