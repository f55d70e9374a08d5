/** Which coil in the damper unit does the bar's work at this wheel. */
import type { Car } from '../car/read.ts';
import { Numbers } from '../loadpath/numbers.ts';
import {
  type CoilFit,
  coilsOfRack,
  coilForBar as fitCoil,
  type RackCoil,
} from '../loadpath/spring/coil-for-bar.ts';
import { sprungCorner, travelMarks } from '../loadpath/sprung-corner.ts';
import { torqueSamples, wheelRateOfBar, wheelRateOfCoil } from '../loadpath/torque-curves.ts';
import type { NoProposal } from './bar-for-coil.ts';
import { COILED_SPRING_CAUTION, STANDING_CAUTION } from './cautions.ts';
import type { Wheel } from './figure.ts';
import { rangeOf } from './travel-range.ts';

export interface CoilAsked {
  /** Distance between the spring seats in the surveyed position, m: what the damper's platform gives. */
  readonly seatLength: number;
  /** Coils that hang on the rack: then these alone are weighed. */
  readonly rack?: readonly RackCoil[];
}

export interface CoilProposal {
  readonly reached: true;
  readonly wheel: Wheel;
  readonly travel: readonly number[];
  readonly rockerAngle: readonly number[];
  readonly torqueBar: readonly number[];
  readonly wheelRateBar: readonly number[];
  /** Wheel rate of the bar in the surveyed position. */
  readonly wheelRateBarStanding: number;
  /** Best first; with no rack the one coil that fits best. */
  readonly coils: readonly (CoilFit & {
    readonly torque: readonly number[];
    readonly wheelRate: readonly number[];
    /** Wheel rate in the surveyed position, N/m, with the coil set to fit best. */
    readonly wheelRateStanding: number;
  })[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

const SAMPLES = 41;

export function coilForBar(car: Car, wheel: Wheel, asked: CoilAsked): CoilProposal | NoProposal {
  const axle = car.form[wheel.end];
  const form = axle[wheel.side];
  if (form.bar === undefined)
    return {
      reached: false,
      because: 'asked wrongly',
      message: `The ${wheel.end} ${wheel.side} corner of this spec has no torsion bar to be replaced.`,
    };
  if (form.points.damperRocker === undefined || form.points.damperTub === undefined) {
    return {
      reached: false,
      because: 'asked wrongly',
      message: 'A coil needs the eyes of a unit: the points damperRocker and damperTub are not both there.',
    };
  }
  if (!(asked.seatLength > 0))
    return {
      reached: false,
      because: 'asked wrongly',
      message: 'The distance between the spring seats must be given, such as 120 mm.',
    };
  const of = sprungCorner(axle, wheel.side, new Numbers(car.values));
  const range = rangeOf(of, 0);
  const lowest = Math.max(range.droop, travelMarks(of).barSlack);
  const samples = torqueSamples(of, lowest * 0.999, range.bump * 0.999, SAMPLES);
  const points = samples.map(({ ratios, compression, bar }) => ({
    rockerAngle: ratios.angle,
    torque: bar,
    compression,
    compressionPerAngle: ratios.unit / ratios.turn,
  }));
  const fits =
    asked.rack === undefined ? [fitCoil(points, asked.seatLength)] : coilsOfRack(points, asked.rack);
  const notes = [
    ...of.springing.notes,
    ...fits
      .slice(0, 1)
      .flatMap((fit) => [
        ...(fit.unseatsBelow === undefined
          ? []
          : [
              'Below some rocker angle the coil would have to pull: there it comes off its seat, which the bar does not.',
            ]),
        ...(fit.bindMargin !== undefined && fit.bindMargin < 0.005
          ? ['Less than 5 mm is left before the coil is solid at full bump (common practice, no source).']
          : []),
      ]),
  ];
  const now = of.wheelAt(0);
  return {
    reached: true,
    wheel,
    travel: samples.map((sample) => sample.travel),
    rockerAngle: samples.map(({ ratios }) => ratios.angle),
    torqueBar: samples.map(({ bar }) => bar),
    wheelRateBar: samples.map(({ ratios, bar }) => wheelRateOfBar(ratios, of.springing.barRate!, bar)),
    wheelRateBarStanding: wheelRateOfBar(now.ratios, of.springing.barRate!, now.torque),
    coils: fits.map((fit) => ({
      ...fit,
      wheelRateStanding: wheelRateOfCoil(now.ratios, fit.rate, fit.rate * (now.compression - fit.freeAt)),
      torque: fit.points.map((point) => point.coil),
      wheelRate: samples.map(({ ratios, compression }) =>
        wheelRateOfCoil(ratios, fit.rate, fit.rate * (compression - fit.freeAt)),
      ),
    })),
    notes,
    cautions: [COILED_SPRING_CAUTION, STANDING_CAUTION],
  };
}
