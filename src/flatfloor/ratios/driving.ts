/**
 * The engine on its brake sheet, what it drives, and what resists.
 *
 * RA-n are the equations of docs/theory/ratios.md.
 */
import type { CarForm } from '../../car/read.ts';
import { airOf } from '../../loadpath/loads/doing.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import { pchip } from '../../maths/pchip.ts';
import { type MetrePerSecond, type Newton, type Ratio, STANDARD_GRAVITY } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';
import type { Rolling } from './speed.ts';
import type { Driving } from './thrust.ts';

const resistanceOf = formula({
  symbol: 'R',
  means: 'resistance',
  is: 'D + c_r*(m*g_0 + L)',
  unit: 'N',
  terms: {
    D: { unit: 'N', means: 'drag at this speed' },
    c_r: { unit: '1', means: 'rolling resistance over load' },
    m: { unit: 'kg', means: 'mass of the car' },
    g_0: { unit: 'm/s^2', means: 'acceleration of free fall' },
    L: { unit: 'N', means: 'downforce at this speed' },
  },
  source: 'RA-7',
  holds: 'level road, still air as dense as where the drag was read',
});

/** Rolling resistance where the file tells none: common practice for racing tyres, no source. */
export const USUAL_RESISTANCE: Ratio = 0.016;
/** Part of the power that comes to the ground where the file tells none: common practice, no source. */
export const USUAL_EFFICIENCY: Ratio = 0.93;

const massOf = (form: CarForm, numbers: Numbers): number =>
  (['front', 'rear'] as const).reduce(
    (sum, end) => sum + numbers.of(form[end].left.scale) + numbers.of(form[end].right.scale),
    0,
  );

/** What resists at a speed. [RA-7] */
export function resistanceAt(v: MetrePerSecond, form: CarForm, numbers: Numbers, working?: Working): Newton {
  const air = airOf(form, v, numbers);
  const resistance = form.rolling?.resistance;
  const from: Record<string, Origin> = {
    g_0: { kind: 'constant', what: 'standard' },
    c_r: resistance === undefined ? { kind: 'constant', what: 'taken as usual' } : fromReading(resistance),
    m: { kind: 'constant', what: 'the four wheel scales' },
  };
  return resistanceOf(
    {
      D: air.drag,
      c_r: numbers.or(resistance, USUAL_RESISTANCE),
      m: massOf(form, numbers),
      g_0: STANDARD_GRAVITY,
      L: air.frontDownforce + air.rearDownforce,
    },
    working,
    from,
  );
}

/** The engine on its sheet and what it drives; nothing without a brake sheet. */
export function drivingOf(form: CarForm, rolling: Rolling, numbers: Numbers): Driving | undefined {
  const sheet = form.engine?.brakeSheet;
  if (sheet === undefined) return undefined;
  const torque = pchip(sheet.map(({ speed, torque: T }) => ({ x: numbers.of(speed), y: numbers.of(T) })));
  return {
    torque,
    rolling,
    efficiency: numbers.or(form.gearbox?.efficiency, USUAL_EFFICIENCY),
    limit: numbers.or(form.engine?.limit, torque.last.x),
    resistance: (v) => resistanceAt(v, form, numbers),
  };
}
