/** A figure of the flat floor: of a tyre, an axle, a gear, the car; with the unit that the trade says it in. */
import type { Working } from '../working/working.ts';

/** Units spoken, metric and imperial, where they are not those usual for the SI unit. */
export type SpokenIn = readonly [metric: string, imperial: string];

export const SAY_PRESSURE: SpokenIn = ['bar', 'psi'];
export const SAY_TEMPERATURE: SpokenIn = ['degC', 'degF'];
export const SAY_SPEED: SpokenIn = ['km/h', 'mph'];
export const SAY_ENGINE_SPEED: SpokenIn = ['rpm', 'rpm'];
export const SAY_VOLUME: SpokenIn = ['l', 'l'];
export const SAY_DISTANCE: SpokenIn = ['km', 'mile'];
export const SAY_POWER: SpokenIn = ['kW', 'hp'];

export interface FloorNote {
  /** Name of the figure within what it belongs to: `coldPressure`. */
  readonly id: string;
  /** In the trade's words. */
  readonly means: string;
  readonly symbol: string;
  /** SI unit. */
  readonly unit: string;
  readonly spoken?: SpokenIn;
  /** What must be said beside the figure always. */
  readonly say?: string;
  /** How it is solved where it is not one formula, and where that stands in docs/theory. */
  readonly method?: string;
  readonly source?: string;
}

/** Takes figures one by one, in the same order for the same question. @param of  `front`, `gear 3`, `car` */
export type PutFloor = (of: string, note: FloorNote, value: number) => void;

/** Puts figures, and writes down as a step what is solved and not one formula. */
export const recordedFloor =
  (put: PutFloor, working: Working | undefined): PutFloor =>
  (of, note, value) => {
    put(of, note, value);
    const { method, symbol, means, unit, source = '' } = note;
    if (working === undefined || method === undefined || working.stepOf(symbol, value) !== undefined) return;
    working.add({ kind: 'solved', symbol, means, method, value, unit, source, terms: [] });
  };
