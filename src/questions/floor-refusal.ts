/** What the flat floor refuses beside what the load path does: to be told to the one who asked. */
import { NoCentreOfGravity } from '../flatfloor/floor-car.ts';
import { LinkOpen } from '../flatfloor/joined.ts';
import { isRefusal } from './refusal.ts';

export const isFloorRefusal = (reason: unknown): reason is Error =>
  reason instanceof NoCentreOfGravity || reason instanceof LinkOpen || isRefusal(reason);
