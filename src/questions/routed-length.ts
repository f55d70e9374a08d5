/** From the length that the engine builder gives to the length that is routed: flange to collector inlet, along the middle. */
import type { ExhaustForm } from '../car/check-exhaust.ts';
import { fromReading, type Numbers } from '../loadpath/numbers.ts';
import type { Metre } from '../units/quantity.ts';
import { formula, type Origin, type Working } from '../working/working.ts';

const routed = formula({
  symbol: 'L_r',
  means: 'length of the pipe, flange to collector inlet',
  is: 'L - p - f - m',
  unit: 'm',
  terms: {
    L: { unit: 'm', means: 'length as the builder gives it' },
    p: { unit: 'm', means: 'port, valve seat to port face, where his length begins at the seat' },
    f: { unit: 'm', means: 'flange, where his length begins before it' },
    m: { unit: 'm', means: 'collector entry to merge point, where his length ends there' },
  },
  source: 'GP-1',
});

/** What the builder counts that is not pipe is taken off.  [GP-1] */
export function routedLength({ given }: ExhaustForm, numbers: Numbers, working?: Working): Metre {
  const fromSeat = given.from === 'valve seat';
  const beforeFlange = given.from !== 'flange';
  const toMerge = given.to === 'merge point';
  const none = (what: string): Origin => ({ kind: 'constant', what });
  const part = (counted: boolean, reading: typeof given.flange, otherwise: string) => ({
    value: counted ? numbers.or(reading, 0) : 0,
    from: counted && reading !== undefined ? fromReading(reading) : none(otherwise),
  });
  const p = part(fromSeat, given.portLength, 'his length begins at the port face or flange');
  const f = part(
    beforeFlange,
    given.flange,
    'his length begins at the flange, or the flange is not measured',
  );
  const m = part(toMerge, given.mergeDepth, 'his length ends at the collector entry');
  return routed({ L: given.length, p: p.value, f: f.value, m: m.value }, working, {
    L: { kind: 'asked', what: 'the engine builder' },
    p: p.from,
    f: f.from,
    m: m.from,
  });
}
