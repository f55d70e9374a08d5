/**
 * A figure as it is answered: a number in SI with its unit, its spread, and where on the car it belongs.
 *
 * Only plain data, so that it crosses to a worker, a file or the network as it is.
 */
import { LOAD_PATH, type Stop } from '../loadpath/figures/note.ts';
import type { Spread } from '../measured/spread.ts';

export type End = 'front' | 'rear';
export type Side = 'left' | 'right';

export interface Wheel {
  readonly end: End;
  readonly side: Side;
}

export { HANDED_ON, type HandedOn } from '../car/handed-on.ts';
export { type Contact, type Doing, STANDING, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
export { LOAD_PATH, type Stop };

export interface Figure {
  /** Name of the figure within its answer: `wheelRate`. */
  readonly id: string;
  readonly stop: Stop;
  /** In the trade's words. */
  readonly means: string;
  readonly symbol: string;
  /** SI. Not finite where the figure does not exist here; `say` then tells why. */
  readonly value: number;
  /** SI unit: `N/m`, `rad`, `1`. */
  readonly unit: string;
  readonly spread?: Spread;
  /** Point of the drawing that the figure stands at, such as `rockerPivot`. */
  readonly anchor?: string;
  /** What else must be said beside the figure. */
  readonly say?: string;
  /** 1: one of the few large figures of its stop; 2: on its card; 3: in its table alone. */
  readonly rank: 1 | 2 | 3;
  /** The one figure of its stop that the eye should find first. */
  readonly lead?: true;
}

/** Where a wheel stands: vertical movement of the contact point from the surveyed position, bump positive. */
export interface Position {
  readonly travel: number;
  /** Rack movement, metres, positive to the left (+y). */
  readonly rack: number;
}

/** All four wheels and the rack. */
export interface Stance {
  readonly front: { readonly left: number; readonly right: number };
  readonly rear: { readonly left: number; readonly right: number };
  readonly rack: number;
}

export const AS_SURVEYED: Stance = { front: { left: 0, right: 0 }, rear: { left: 0, right: 0 }, rack: 0 };

export const travelOf = (stance: Stance, wheel: Wheel): number => stance[wheel.end][wheel.side];
export const rackOf = (stance: Stance, wheel: Wheel): number => (wheel.end === 'front' ? stance.rack : 0);

/** Something that happens on the way up or down: a stop takes over, a coil comes free, a rod goes over centre. */
export interface TravelEvent {
  readonly travel: number;
  readonly what: string;
  readonly kind: 'stop' | 'free' | 'limit' | 'joint';
}
