/**
 * The car made ready to stand on four pads: corners by their links, springs, tyres, bars, masses.
 *
 * In    the car file's form and its numbers
 * Out   what `stand` works with, prepared once
 * Axes  tub axes
 *
 * Springs are those of the load path as the survey found them, with the same forces at the surveyed position.
 */
import type { CarForm } from '../car/read.ts';
import { axleState, heaveSpring } from '../loadpath/axle-of-car.ts';
import { asSurveyed } from '../loadpath/loads/as-surveyed.ts';
import { eachWheel, endOf, type Mass, sideOf, type Wheels } from '../loadpath/loads/doing.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import type { SpringElement } from '../loadpath/spring/elements.ts';
import { type SprungCorner, sprungCorner } from '../loadpath/sprung-corner.ts';
import type { Vec3 } from '../maths/vec3.ts';
import type { Kilogram, Metre, Newton, NewtonPerMetre } from '../units/quantity.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import { ChangeNames, ENDS, type EndName } from './changes.ts';
import { CornerLinks, cornerStores, USUAL_SHIMS } from './corner-links.ts';
import { DroopStop } from './droop.ts';
import { axleStores, JoinedAxle } from './joined.ts';

export interface FloorTyre {
  readonly rate: NewtonPerMetre;
  /** Load as surveyed. */
  readonly load: Newton;
  readonly ratePerPascal: number;
  readonly radiusPerPascal: number;
}

export interface FloorWheel {
  readonly links: CornerLinks;
  readonly droopStop: DroopStop;
  readonly sprung: SprungCorner;
  readonly tyre: FloorTyre;
  readonly unsprung: Kilogram;
  /** What virtual work and the wheel scale leave between them as surveyed, N.  [LL-5] */
  readonly offset: Newton;
  /** Height of the loaded circle's lowest point as surveyed: the pad's, in tub axes. */
  readonly ground: Metre;
  readonly rim: Metre;
  /** Where the rim's diameter stands in the file. */
  readonly rimPath: string;
}

export interface FloorAxle {
  readonly joined: JoinedAxle;
  readonly barRate?: number;
  readonly heaveSpring?: SpringElement;
}

/** A mass at a place of the tub that may differ from the survey. */
export interface PlacedMass {
  readonly name: string;
  readonly at: Vec3;
  /** As surveyed. */
  readonly mass: Kilogram;
}

export interface FloorCar {
  readonly changes: ChangeNames;
  readonly wheels: Wheels<FloorWheel>;
  readonly axles: Readonly<Record<EndName, FloorAxle>>;
  readonly sprung: Mass;
  readonly masses: readonly PlacedMass[];
  /** Measuring points for heights, by name. */
  readonly heights: readonly MeasuringPoint[];
}

export interface MeasuringPoint {
  readonly name: string;
  readonly at: Vec3;
  /** Where its numbers stand in the file. */
  readonly paths: Readonly<Record<'x' | 'y' | 'z', string>>;
}

/** Without the height of its centre of gravity the car cannot stand on a floor that is not level. */
export class NoCentreOfGravity extends Error {
  constructor() {
    super(
      'The file has no body: the car cannot be stood on its pads without the height of its centre of gravity. Measure it by the raised axle and write it under body, centreOfGravityHeight.',
    );
    this.name = 'NoCentreOfGravity';
  }
}

/** @throws NoCentreOfGravity, Unreachable, DegenerateCorner, BarOpen */
export function floorCarOf(car: CarForm, numbers: Numbers): FloorCar {
  if (car.body === undefined) throw new NoCentreOfGravity();
  const start = asSurveyed(car, numbers);
  const { floor } = car;
  const masses: PlacedMass[] = [
    ...Object.entries(floor?.aboard ?? {}).map(([name, { mass, at }]) => ({
      name,
      at: numbers.point(at),
      mass: numbers.of(mass),
    })),
    ...Object.entries(floor?.ballast ?? {}).map(([name, { fitted, at }]) => ({
      name,
      at: numbers.point(at),
      mass: numbers.of(fitted),
    })),
  ];
  const axles = Object.fromEntries(ENDS.map((end) => [end, axleOf(car, end, numbers)])) as Record<
    EndName,
    FloorAxle
  >;
  return {
    changes: new ChangeNames(masses.map(({ name }) => name)),
    wheels: eachWheel((wheel) => {
      const axle = car[endOf(wheel)];
      const form = axle[sideOf(wheel)];
      const sprung = sprungCorner(axle, sideOf(wheel), numbers);
      const { adjusters } = form;
      const tyre = adjusters?.tyre;
      const shims = {
        camber: adjusters?.camberShims?.at ?? USUAL_SHIMS.camber,
        caster: adjusters?.casterShims?.moves ?? USUAL_SHIMS.caster,
      };
      // with a number moved that does not touch it, a corner stays as it is with the place that it keeps
      const kept = numbers.part(`links of ${form.scale.path}`, () => {
        const { corner } = sprungCorner(axle, sideOf(wheel), numbers);
        // of corners with a number moved there is one at a time
        const stores = numbers.asFiled(`stores of ${form.scale.path}`, twoStores);
        return {
          links: new CornerLinks(corner, shims, stores?.links),
          droopStop: new DroopStop(new CornerLinks(corner, shims, stores?.droop)),
        };
      });
      return {
        ...kept,
        sprung,
        tyre: {
          rate: numbers.of(form.wheel.tyreRate),
          load: numbers.of(form.scale) * STANDARD_GRAVITY,
          ratePerPascal: numbers.or(tyre?.ratePerBar, 0),
          radiusPerPascal: numbers.or(tyre?.radiusPerBar, 0),
        },
        unsprung: numbers.of(form.unsprung),
        offset: start.offsets[wheel],
        ground: start.contacts[wheel][2],
        rim: numbers.of(form.wheel.rimDiameter),
        rimPath: form.wheel.rimDiameter.path,
      };
    }),
    axles,
    sprung: start.sprung,
    masses,
    heights: Object.entries(floor?.heights ?? {}).map(([name, at]) => ({
      name,
      at: numbers.point(at),
      paths: { x: at.x.path, y: at.y.path, z: at.z.path },
    })),
  };
}

const twoStores = () => ({ links: cornerStores(), droop: cornerStores() });

const AS_READ = { left: 0, right: 0, rack: 0 } as const;

function axleOf(car: CarForm, end: EndName, numbers: Numbers): FloorAxle {
  const axle = car[end];
  const surveyed = axleState(axle, AS_READ, numbers);
  return {
    joined: numbers.part(`joined ${end}`, () => {
      const stores = numbers.asFiled(`stores of ${end}`, axleStores);
      return new JoinedAxle(end, axle, axleState(axle, AS_READ, numbers), numbers, stores);
    }),
    ...(surveyed.bar === undefined ? {} : { barRate: surveyed.bar.rate }),
    ...(surveyed.heave === undefined ? {} : { heaveSpring: heaveSpring(axle.heave!, numbers) }),
  };
}
