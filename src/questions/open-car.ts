/** Opens a car file: reads it, and says what looks wrong once its linkage moves. */
import { lately } from '../car/lately.ts';
import { type CarRead, type CarSource, readCar } from '../car/read.ts';
import { sameSource } from '../car/same-source.ts';
import { plausibility } from './plausible.ts';

export function openCar(source: CarSource): CarRead {
  const read = readCar(source);
  if (!read.ok) return read;
  const { car } = read;
  const file = source.file === undefined ? {} : { file: source.file };
  const doubts = plausibility(car).map((problem) => ({ ...problem, ...file }));
  return { ok: true, car: { ...car, warnings: [...car.warnings, ...doubts] } };
}

/** Cars that are kept: two specs side by side, and the one before. */
const MOST = 4;

/** The same, and the last few cars stay open. */
export const openLately = lately(MOST, sameSource, openCar);
