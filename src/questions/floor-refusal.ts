/** What the flat floor refuses beside what the load path does: to be told to the one who asked. */
import type { Doubt } from '../flatfloor/doubts.ts';
import { NoCentreOfGravity } from '../flatfloor/floor-car.ts';
import { LinkOpen } from '../flatfloor/joined.ts';
import type { Problem } from '../measured/problem.ts';
import { isRefusal } from './refusal.ts';

export const isFloorRefusal = (reason: unknown): reason is Error =>
  reason instanceof NoCentreOfGravity || reason instanceof LinkOpen || isRefusal(reason);

/** A doubt that ends a question, as a problem of the file. */
export const problemOfDoubt = ({ code, message, remedy, paths }: Doubt): Problem => ({
  code,
  message,
  remedy,
  path: paths[0] ?? 'floor.read',
  weight: 'error',
});
