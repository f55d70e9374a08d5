/** Moves of a set-up as they stand on the drawing: each at its wheel, by its number in the order of work, with an arrow. */
import type { SetUpMove } from '../../questions/index.ts';
import { WHEEL_KEYS, WHEEL_WORDS, type WheelKey } from './words.ts';

export interface MoveAtWheel {
  readonly at: WheelKey;
  /** `4. pushrod ↑ 3 flats`. */
  readonly text: string;
  /** Without its name, where there is little room: `4. ↑ 3 flats`. */
  readonly short: string;
}

/** `front left pushrod`, 3 flats, the fourth: at the front left wheel `4. pushrod ↑ 3 flats`. The arrow: longer, tighter, more. */
export function movesAtWheels(moves: readonly SetUpMove[]): readonly MoveAtWheel[] {
  return moves.flatMap(({ adjuster, units, unit }, k): MoveAtWheel[] => {
    const at = WHEEL_KEYS.find((wheel) => adjuster.startsWith(`${WHEEL_WORDS[wheel]} `));
    if (at === undefined) return [];
    const name = adjuster.slice(WHEEL_WORDS[at].length + 1);
    const by = `${units > 0 ? '↑' : '↓'} ${counted(Math.abs(units), unit)}`;
    return [{ at, text: `${k + 1}. ${name} ${by}`, short: `${k + 1}. ${by}` }];
  });
}

/** `3 flats`; where a unit is itself an amount, such as 0.1 mm of shims, all of it: `0.5 mm`. */
function counted(units: number, unit: string): string {
  const amount = /^([\d.]+) (\S+)$/.exec(unit);
  if (amount !== null) return `${Math.round(units * Number(amount[1]) * 1000) / 1000} ${amount[2]}`;
  const count = Math.round(units * 100) / 100;
  return `${count} ${count === 1 ? unit : `${unit}s`}`;
}
