/** Which corner of which car a sheet is asked of, and where it stands. */
import type { Car } from '../car/read.ts';
import { AS_SURVEYED, type Position, type Stance, type Wheel } from '../questions/figure.ts';

export interface AskedCorner {
  readonly car: Car;
  readonly wheel: Wheel;
  readonly at: Position;
}

/** The stance that a corner is drawn in: both wheels of its axle at the same travel. */
export function stanceOf(wheel: Wheel, at: Position): Stance {
  return { ...AS_SURVEYED, [wheel.end]: { left: at.travel, right: at.travel }, rack: at.rack };
}
