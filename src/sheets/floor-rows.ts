/**
 * Which readings stand in the table of each wheel, in the order in which a car is read.
 *
 * In    the sheets of the floor, names of all readings there are
 * Out   for each wheel names of readings; a height stands at the wheel that its measuring point is nearest to
 */
import { WHEEL_NAMES, type WheelName, type Wheels } from '../loadpath/loads/doing.ts';
import type { FloorSheets } from '../questions/floor-sheets.ts';

export interface RowAtWheel {
  readonly id: string;
  /** Of the measuring point, where the wheel alone does not say which. */
  readonly name?: string;
}

export function rowsAtWheels(
  { wanted, heightsAt }: FloorSheets,
  read: readonly string[],
): Wheels<readonly RowAtWheel[]> {
  const known = new Set([...wanted.map(({ id }) => id), ...read]);
  const some = (kind: string, at: readonly WheelName[] = WHEEL_NAMES): boolean =>
    at.some((wheel) => known.has(`${kind}.${wheel}`));
  const toe = some('toe') && !some('toeAtRim') ? 'toe' : 'toeAtRim';
  return Object.fromEntries(
    WHEEL_NAMES.map((wheel) => {
      const axle = WHEEL_NAMES.filter((each) => each.slice(0, 4) === wheel.slice(0, 4));
      const of = (kind: string): RowAtWheel => ({ id: `${kind}.${wheel}` });
      return [
        wheel,
        [
          of('pressure'),
          of('weight'),
          ...heightsOf(wheel, heightsAt),
          // the rear's is read only where somebody wants it
          ...(wheel.startsWith('front') || some('caster', axle) ? [of('caster')] : []),
          of('camber'),
          of(toe),
          ...(some('droop', axle) ? [of('droop')] : []),
        ],
      ];
    }),
  ) as unknown as Wheels<readonly RowAtWheel[]>;
}

/** Within this of the middle a measuring point belongs to neither side, m: it is told at the left. */
const MIDDLE = 0.03;

function heightsOf(wheel: WheelName, at: FloorSheets['heightsAt']): RowAtWheel[] {
  const all = Object.entries(at);
  const forward = all.map(([, [x]]) => x);
  const half = (Math.max(...forward) + Math.min(...forward)) / 2;
  const left = wheel.endsWith('Left');
  const own = all.filter(
    ([, [x, y]]) => x > half === wheel.startsWith('front') && (left ? y > -MIDDLE : y <= -MIDDLE),
  );
  return own.map(([name, [, y]]) => ({
    id: `height.${name}`,
    ...(own.length > 1 || Math.abs(y) <= MIDDLE ? { name } : {}),
  }));
}
