/**
 * What an instrument is worth in a workshop's hands, where the file does not say.
 *
 * One standard uncertainty (GUM 2.3.1) of one reading: a fixed part, a part of the value, and a part of the
 * value that all readings of the same instrument share (its scale error). These are shop habits, not
 * calibrations: common practice, no source. A figure whose spread leans on one says so, and a stated value
 * always rules.
 */
export interface InstrumentClass {
  readonly name: string;
  readonly means: string;
  /** Fixed part by SI unit of what is read. */
  readonly fixed: Readonly<Record<string, number>>;
  /** Part of the value, each reading for itself. */
  readonly relative: number;
  /** Part of the value that every reading of this instrument has in common. */
  readonly shared: number;
}

const MM = 1e-3;
const DEG = Math.PI / 180;

const described = (
  name: string,
  means: string,
  fixed: Readonly<Record<string, number>>,
  relative = 0,
  shared = 0,
): InstrumentClass => ({ name, means, fixed, relative, shared });

export const INSTRUMENT_CLASSES = [
  described(
    'portable arm',
    'articulated measuring arm with a ball probe',
    { m: 0.06 * MM, rad: 0.05 * DEG },
    0,
    3e-5,
  ),
  described('vernier', 'vernier or digital calliper', { m: 0.03 * MM }, 0, 5e-5),
  described('micrometer', 'outside or bore micrometer', { m: 0.004 * MM }, 0, 2e-5),
  described('dial gauge', 'dial gauge on a stand', { m: 0.01 * MM }),
  described('height gauge', 'height gauge on the flat patch', { m: 0.15 * MM }),
  described('steel rule', 'steel rule read by eye', { m: 0.3 * MM }),
  described('tape', 'steel tape', { m: 0.7 * MM }, 0, 2e-4),
  described('trammel', 'trammel bar set over two points', { m: 0.3 * MM }, 0, 5e-5),
  described('plumb bob', 'marks dropped to the floor and joined by a tape', { m: 0.9 * MM }, 0, 2e-4),
  described('string line', 'string along the car and a rule', { m: 0.25 * MM, rad: 0.03 * DEG }),
  described('inclinometer', 'digital inclinometer', { rad: 0.06 * DEG }),
  described('protractor', 'vernier protractor or degree disc', { rad: 0.15 * DEG }),
  described('corner scale', 'wheel scale', { kg: 0.25, N: 2.5 }, 0, 1e-3),
  described('weighing scale', 'bench or hanging scale', { kg: 0.05, N: 0.5 }, 0, 2e-3),
  described('spring press', 'load and length on a spring press', { 'N/m': 0, N: 5 }, 0.008, 0.005),
  described(
    'lever and mass',
    'known mass on a known lever, twist by clinometer',
    { 'N m/rad': 0, 'N m': 0.3 },
    0.008,
    0.005,
  ),
  described('damper bench', 'force against velocity on a damper bench', { N: 6, 'm/s': 0.001 }, 0.015, 0.01),
  described('pressure gauge', 'gauge', { Pa: 2000 }, 0.005, 0.005),
  described('thermometer', 'air, track or probe thermometer', { K: 1.5 }),
  described('brake', 'engine on a brake, as its sheet tells', { 'N m': 0 }, 0.01, 0.02),
  described('barometer', 'barometer, or the pressure that the airfield gives', { Pa: 150 }),
  described('torque wrench', 'wrench within its yearly calibration', { 'N m': 0 }, 0.02, 0.01),
  described('measuring can', 'litres by a marked can', { 'm^3': 0.1e-3 }, 0.002, 0.005),
  described('counted', 'counted by eye', { '1': 0 }),
  described(
    'maker',
    'figure given by the part maker, unmeasured here',
    { m: 0.05 * MM, rad: 0.1 * DEG, '1': 0 },
    0.01,
  ),
  described('table', 'property from a named table', { '1': 0 }, 0.01),
  described('estimate', 'judged, not measured', { m: 2 * MM, rad: 0.5 * DEG }, 0.1),
] as const satisfies readonly InstrumentClass[];

export type InstrumentClassName = string;

export const instrumentClass = (name: string): InstrumentClass | undefined =>
  INSTRUMENT_CLASSES.find((each) => each.name === name);

/** One standard uncertainty of a reading by this class, without the part that is shared. SI. */
export function ownUncertainty(of: InstrumentClass, value: number, siUnit: string): number {
  return Math.hypot(of.fixed[siUnit] ?? 0, of.relative * value);
}
