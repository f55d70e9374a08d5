/**
 * The springing of one corner: what pushes at the rocker, and where each element stands when the car is as
 * surveyed.
 *
 * In    the corner from the car file, the linkage at the surveyed position
 * Out   the laws of unit (coil, helper, rubber, droop stop, gas) and bar, and their force at the wheel
 * Axes  compression c of the unit is counted from the surveyed position, positive in bump; so is the twist of the
 *       bar. Forces are positive in compression
 * Not   anti-roll bar and heave element, which need both wheels (axle/)
 *
 * Where the file does not say how far the spring is compressed as surveyed, it follows from the wheel scale: in
 * that position the springing carries what stands on the scale less the unsprung mass. LP-4x, docs/theory.
 */
import type { Metre, Newton, NewtonMetre, NewtonPerMetre, Radian } from '../units/quantity.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import { formula, type Origin, type Working } from '../working/working.ts';
import type { CornerForm } from './corner-of-car.ts';
import { fromReading, type Numbers } from './numbers.ts';
import { solidLength } from './spring/coil-spring.ts';
import {
  CurveSpring,
  DroopStop,
  HelperInSeries,
  LinearSpring,
  SolidSpring,
  type SpringElement,
} from './spring/elements.ts';
import { coilOf, rateOfBar, rateOfCoil } from './spring-of-car.ts';

/** The linkage at the surveyed position, as far as the springing needs it. */
export interface AtSurvey {
  /** Eye to eye. Absent without a unit. */
  readonly unitLength?: Metre;
  /** Compression of the unit per metre of wheel travel. */
  readonly unitRatio: number;
  /** Twist of the bar per metre of wheel travel, rad/m. */
  readonly barRatio: number;
}

export interface Springing {
  /** Coil with helper and bind, law in c. */
  readonly coil?: SpringElement;
  readonly coilRate?: NewtonPerMetre;
  /** c at which the coil is free; its compression is c less this. */
  readonly coilFreeAt?: Metre;
  /** c at which the coil is solid. */
  readonly coilSolidAt?: Metre;
  readonly rubber?: SpringElement;
  readonly rubberAt?: Metre;
  readonly droopStop?: SpringElement;
  readonly droopStopAt?: Metre;
  /** c at which the damper is closed metal to metal. */
  readonly closedAt?: Metre;
  readonly gasForce: Newton;
  readonly barRate?: number;
  /** Twist of the bar as surveyed. */
  readonly barTwistAtSurvey?: Radian;
  /** Load that the springing carries as surveyed, from the scale. */
  readonly sprungLoad: Newton;
  /** What is open to doubt, in sentences. */
  readonly notes: readonly string[];
}

const sprungLoadOf = formula({
  symbol: 'W_s',
  means: 'load that the springing carries as surveyed',
  is: '(m_w - m_u)*g',
  unit: 'N',
  terms: {
    m_w: { unit: 'kg', means: 'mass on the wheel scale' },
    m_u: { unit: 'kg', means: 'unsprung mass of the corner' },
    g: { unit: 'm/s^2', means: 'standard acceleration of free fall' },
  },
  source: 'LP-40',
});

const barTorqueAtSurvey = formula({
  symbol: 'T_0',
  means: 'torque of the bar as surveyed',
  is: '(W_s - F_0*r_0)/s_0',
  unit: 'N m',
  terms: {
    W_s: { unit: 'N', means: 'load that the springing carries as surveyed' },
    F_0: { unit: 'N', means: 'force of the damper unit as surveyed' },
    r_0: { unit: '1', means: 'compression of the unit per wheel travel, as surveyed' },
    s_0: { unit: 'rad/m', means: 'twist per wheel travel, as surveyed' },
  },
  source: 'LP-41',
});

const twistAtSurvey = formula({
  symbol: 'φ_0',
  means: 'twist of the bar as surveyed',
  is: 'T_0/k_t',
  unit: 'rad',
  terms: {
    T_0: { unit: 'N m', means: 'torque of the bar as surveyed' },
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar' },
  },
  source: 'LP-41',
});

const coilForceAtSurvey = formula({
  symbol: 'F_c0',
  means: 'force of the coil as surveyed',
  is: '(W_s - T_0*s_0)/r_0 - F_r0 - F_g',
  unit: 'N',
  terms: {
    W_s: { unit: 'N', means: 'load that the springing carries as surveyed' },
    T_0: { unit: 'N m', means: 'torque of the bar as surveyed' },
    s_0: { unit: 'rad/m', means: 'twist per wheel travel, as surveyed' },
    r_0: { unit: '1', means: 'compression of the unit per wheel travel, as surveyed' },
    F_r0: { unit: 'N', means: 'force of the bump rubber as surveyed' },
    F_g: { unit: 'N', means: 'force of the damper gas' },
  },
  source: 'LP-42',
});

const coilForceAsFitted = formula({
  symbol: 'F_c0',
  means: 'force of the coil as surveyed',
  is: 'R*max(0*L_0, L_0 - L_s)',
  unit: 'N',
  terms: {
    R: { unit: 'N/m', means: 'rate of the coil spring' },
    L_0: { unit: 'm', means: 'free length' },
    L_s: { unit: 'm', means: 'length of the main spring as surveyed' },
  },
  source: 'LP-43',
});

const forceOfOthers = formula({
  symbol: 'F_0',
  means: 'force of the damper unit as surveyed',
  is: 'F_r0 + F_g + F_c0',
  unit: 'N',
  terms: {
    F_r0: { unit: 'N', means: 'force of the bump rubber as surveyed' },
    F_g: { unit: 'N', means: 'force of the damper gas' },
    F_c0: { unit: 'N', means: 'force of the coil as surveyed' },
  },
  source: 'LP-41',
});

const barTorqueAsMeasured = formula({
  symbol: 'T_0',
  means: 'torque of the bar as surveyed',
  is: 'k_t*φ_0',
  unit: 'N m',
  terms: {
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar' },
    φ_0: { unit: 'rad', means: 'twist of the bar as surveyed' },
  },
  source: 'LP-41',
});

const FREE_TERMS = {
  F_c0: { unit: 'N', means: 'force of the coil as surveyed' },
  R: { unit: 'N/m', means: 'rate of the coil spring' },
} as const;

const coilFree = formula({
  symbol: 'c_f',
  means: 'compression, from the surveyed position, at which the coil is free',
  is: '-(F_c0/R)',
  unit: 'm',
  terms: FREE_TERMS,
  source: 'SP-30',
});

const coilFreeWithHelper = formula({
  symbol: 'c_f',
  means: 'compression, from the surveyed position, at which coil and helper are free',
  is: '-(F_c0/R + min(F_c0/R_h, s_h))',
  unit: 'm',
  terms: {
    ...FREE_TERMS,
    R_h: { unit: 'N/m', means: 'rate of the helper' },
    s_h: { unit: 'm', means: 'travel of the helper, free to solid' },
  },
  source: 'SP-32',
});

const coilSolid = formula({
  symbol: 'c_s',
  means: 'compression, from the surveyed position, at which the coil is solid',
  is: 'c_f + s_h + L_0 - L_c',
  unit: 'm',
  terms: {
    c_f: { unit: 'm', means: 'compression at which the coil is free' },
    s_h: { unit: 'm', means: 'travel of the helper, free to solid' },
    L_0: { unit: 'm', means: 'free length' },
    L_c: { unit: 'm', means: 'solid length' },
  },
  source: 'SP-31',
});

const G: number = STANDARD_GRAVITY;

const told = (what: string): Origin => ({ kind: 'constant', what });

/** Where the forces come from that stand beside coil and bar as surveyed. */
function otherOrigins(corner: CornerForm, rubberForce: Newton) {
  const { bumpRubber, damper } = corner;
  const clear = bumpRubber === undefined ? 'no bump rubber' : 'the bump rubber is clear as surveyed';
  return {
    F_r0:
      rubberForce === 0 ? told(clear) : ({ kind: 'table', name: 'measured curve of the rubber' } as const),
    F_g: damper?.gasForce === undefined ? told('no gas force given') : fromReading(damper.gasForce),
  };
}

/** Works out the springing of a corner from the file and the linkage as surveyed. */
export function springingOf(
  corner: CornerForm,
  at: AtSurvey,
  numbers: Numbers,
  working?: Working,
): Springing {
  const notes: string[] = [];
  const W_s = sprungLoadOf(
    { m_w: numbers.of(corner.scale), m_u: numbers.of(corner.unsprung), g: G },
    working,
    {
      m_w: fromReading(corner.scale),
      m_u: fromReading(corner.unsprung),
      g: { kind: 'constant', what: 'standard acceleration of free fall, 3rd CGPM 1901' },
    },
  );
  const rubber = rubberOf(corner, numbers);
  const stops = stopsOf(corner, at, numbers);
  const gasForce = numbers.or(corner.damper?.gasForce, 0);
  const F_r0 = rubber?.element.force(0) ?? 0;
  const beside = otherOrigins(corner, F_r0);
  const { coil, bar } = corner;
  const coilMeasured = coil?.fittedLength !== undefined;
  const barMeasured = bar?.twist !== undefined;

  let T_0 = 0;
  let barRate: number | undefined;
  let φ_0: number | undefined;
  let coilForce: number | undefined;
  if (coil?.fittedLength !== undefined) {
    coilForce = coilForceAsFitted(
      {
        R: rateOfCoil(coil, numbers, working),
        L_0: numbers.of(coil.freeLength),
        L_s: numbers.of(coil.fittedLength),
      },
      working,
      { L_0: fromReading(coil.freeLength), L_s: fromReading(coil.fittedLength) },
    );
  }
  if (bar !== undefined) {
    barRate = rateOfBar(bar, numbers, working);
    if (barMeasured) {
      φ_0 = numbers.of(bar.twist!);
      T_0 = barTorqueAsMeasured({ k_t: barRate, φ_0 }, working, { φ_0: fromReading(bar.twist!) });
    } else if (coil === undefined || coilMeasured) {
      const F_0 = forceOfOthers({ F_r0, F_g: gasForce, F_c0: coilForce ?? 0 }, working, {
        ...beside,
        ...(coilForce === undefined ? { F_c0: told('no coil') } : {}),
      });
      T_0 = barTorqueAtSurvey({ W_s, F_0, r_0: at.unitRatio, s_0: at.barRatio }, working);
      φ_0 = twistAtSurvey({ T_0, k_t: barRate }, working);
    } else {
      notes.push(
        'Coil and bar share the load and neither is measured as fitted: the bar is taken as slack as surveyed.',
      );
      φ_0 = 0;
    }
  }
  const parts: Partial<Record<'coil' | 'rubber' | 'droopStop', SpringElement>> = {
    ...(rubber === undefined ? {} : { rubber: rubber.element }),
    ...(stops.droopStop === undefined ? {} : { droopStop: stops.droopStop }),
  };
  let coilPart: Pick<Springing, 'coil' | 'coilRate' | 'coilFreeAt' | 'coilSolidAt'> = {};
  if (coil !== undefined) {
    const F_c0 =
      coilForce ??
      coilForceAtSurvey({ W_s, T_0, s_0: at.barRatio, r_0: at.unitRatio, F_r0, F_g: gasForce }, working, {
        ...beside,
        ...(bar === undefined ? { T_0: told('no torsion bar') } : {}),
        ...(bar !== undefined && !barMeasured ? { T_0: told('the bar is taken as slack as surveyed') } : {}),
      });
    if (F_c0 <= 0) {
      notes.push(
        'The scale shows no more than gas and rubber carry: the coil would be loose as surveyed. Check scale, unsprung mass and gas force.',
      );
    }
    const law = lawOfCoil(corner, numbers, F_c0, working);
    coilPart = { coil: law.element, coilRate: law.rate, coilFreeAt: law.freeAt, coilSolidAt: law.solidAt };
  }
  return {
    ...coilPart,
    ...parts,
    ...(rubber === undefined ? {} : { rubberAt: rubber.touchesAt }),
    ...(stops.droopStopAt === undefined ? {} : { droopStopAt: stops.droopStopAt }),
    ...(stops.closedAt === undefined ? {} : { closedAt: stops.closedAt }),
    gasForce,
    ...(barRate === undefined ? {} : { barRate, barTwistAtSurvey: φ_0! }),
    sprungLoad: W_s,
    notes,
  };
}

/**
 * The coil's law in c when it carries `force` as surveyed.
 * A helper is on top until it is solid; past the coil's own solid length there is only steel.
 */
function lawOfCoil(corner: CornerForm, numbers: Numbers, force: Newton, working?: Working) {
  const form = corner.coil!;
  const { coil, from } = coilOf(form, numbers);
  const rate = rateOfCoil(form, numbers, working);
  const { helper } = form;
  const terms = { F_c0: force, R: rate };
  const s_h = helper === undefined ? 0 : numbers.of(helper.travel);
  const R_h = helper === undefined ? undefined : numbers.of(helper.rate);
  const freeAt =
    R_h === undefined
      ? coilFree(terms, working)
      : coilFreeWithHelper({ ...terms, R_h, s_h }, working, {
          R_h: fromReading(helper!.rate),
          s_h: fromReading(helper!.travel),
        });
  const spring =
    R_h === undefined
      ? LinearSpring({ rate, freeAt })
      : HelperInSeries({ mainRate: rate, helperRate: R_h, helperTravel: s_h, freeAt });
  const solidAt = coilSolid(
    { c_f: freeAt, s_h, L_0: coil.freeLength, L_c: solidLength(coil, working, from) },
    working,
    {
      L_0: fromReading(form.freeLength),
      s_h: helper === undefined ? told('no helper') : fromReading(helper.travel),
    },
  );
  return { element: SolidSpring({ spring, solidAt }), rate, freeAt, solidAt };
}

function rubberOf(corner: CornerForm, numbers: Numbers) {
  const { bumpRubber } = corner;
  if (bumpRubber === undefined) return undefined;
  const table = bumpRubber.curve.map((row) => ({
    compression: numbers.of(row.compression),
    force: numbers.of(row.force),
  }));
  const gap = numbers.of(bumpRubber.gap);
  const packers = numbers.or(bumpRubber.packers, 0);
  return { element: CurveSpring({ table, gap, packers }), touchesAt: gap - packers };
}

function stopsOf(corner: CornerForm, at: AtSurvey, numbers: Numbers) {
  const { damper } = corner;
  if (damper === undefined || at.unitLength === undefined) return {};
  const droopStopAt = at.unitLength - numbers.of(damper.openLength);
  return {
    droopStop: DroopStop({ at: droopStopAt }),
    droopStopAt,
    closedAt: at.unitLength - numbers.of(damper.closedLength),
  };
}

export interface UnitForce {
  readonly coil: Newton;
  readonly rubber: Newton;
  readonly droopStop: Newton;
  readonly gas: Newton;
  readonly total: Newton;
  readonly rate: NewtonPerMetre;
}

/** Force and rate of the unit at compression c. */
export function unitForce(springing: Springing, c: Metre): UnitForce {
  const { coil, rubber, droopStop, gasForce } = springing;
  const parts = {
    coil: coil?.force(c) ?? 0,
    rubber: rubber?.force(c) ?? 0,
    droopStop: droopStop?.force(c) ?? 0,
    gas: gasForce,
  };
  return {
    ...parts,
    total: parts.coil + parts.rubber + parts.droopStop + parts.gas,
    rate: (coil?.rate(c) ?? 0) + (rubber?.rate(c) ?? 0) + (droopStop?.rate(c) ?? 0),
  };
}

/** Torque of the bar when the rocker has turned by this angle from the surveyed position. */
export const barTorque = (springing: Springing, rockerAngle: Radian): NewtonMetre =>
  (springing.barRate ?? 0) * (rockerAngle + (springing.barTwistAtSurvey ?? 0));
