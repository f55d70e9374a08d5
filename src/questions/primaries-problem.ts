/**
 * The packing of one bank's primaries as a question for the finder: from the car file, its scans and its suspension.
 *
 * In    a car with an exhaust, which bank, the scans laid into the car
 * Out   the problem in car axes and millimetres, and what had to be assumed; or why it cannot be put
 * Axes  of the car, ISO 8855: x forward, y left, z up
 */
import type { BankForm, BankName, ExhaustForm } from '../car/check-exhaust.ts';
import { joinOf, USUAL_STEP } from '../car/check-steps.ts';
import type { Car } from '../car/read.ts';
import { roundRows } from '../gaspath/route/inlets.ts';
import type { Inlets, Port, Round, RouteProblem, RouteStep, Solid } from '../gaspath/route/problem.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { tubeMaterial } from '../materials/tube-material.ts';
import { add, cross, dot, length, scale, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { Mesh } from '../scan/index.ts';
import { drawCorner } from './drawing.ts';
import type { Stance } from './figure.ts';
import { routedLength } from './routed-length.ts';

/** A scan as it lies in the car, metres, with the name it has in the file. */
export interface ScanInCar {
  readonly name: string;
  readonly mesh: Mesh;
}

export type ProblemPut =
  | {
      readonly reached: true;
      readonly problem: RouteProblem;
      /** Cylinder of each port of the problem, in its order. */
      readonly cylinders: readonly number[];
      readonly notes: readonly string[];
    }
  | { readonly reached: false; readonly message: string };

const MM = 1000;
const inMm = (v: Vec3): Vec3 => scale(v, MM);

/** Where the file leaves it open (common practice, no source). */
const USUAL = {
  bends: 4,
  greatest: 150,
  between: 0,
  collectorLength: 180,
  collectorZone: 130,
  flangeZone: 45,
  weldGap: 1,
} as const;

/** A secondary has left its collector behind when it is so many times as far along as it must then be off. */
const LEAVING = 1.5;

/** How far beyond ports and collector a pipe may wander, mm. */
const ROOM = 450;

const no = (message: string): ProblemPut => ({ reached: false, message });

type CollectorForm = NonNullable<BankForm['collector']>;

/** `work`: as the car stands on its stands, links at rest, without what the file says comes off. */
export type CarStands = 'runs' | 'work';

/** @param outlets  of collectors at which the pipes begin, mm, where they do not begin at the ports of the bank */

export function primariesProblem(
  car: Car,
  side: BankName,
  allScans: readonly ScanInCar[],
  stands: CarStands = 'runs',
  outlets?: readonly Port[],
): ProblemPut {
  const { exhaust } = car.form;
  if (exhaust === undefined) {
    return no('The car file tells no exhaust: write ports, tube, bends, collector and length under exhaust.');
  }
  const bank = exhaust[side];
  if (bank === undefined) return no(`The car file tells no ${side} bank under exhaust.`);
  if (bank.collector === undefined) {
    return no(`The ${side} bank has several collectors: each is a part of its own.`);
  }
  const on = (each: { readonly comesOff?: boolean | undefined } | undefined): boolean =>
    stands === 'runs' || each?.comesOff !== true;
  const scans = allScans.filter(({ name }) => on(exhaust.scans?.[name]));
  const numbers = new Numbers(car.values);
  const target = routedLength(exhaust, numbers) * MM;
  if (target <= 0) {
    return no('Port, flange and collector together are longer than the length that the builder gives.');
  }
  const od = numbers.of(exhaust.tube.outside) * MM;
  const ports =
    outlets ??
    bank.ports.map(({ at, outward }): Port => {
      const p = numbers.point(at);
      return { p: inMm(p), d: unit(sub(numbers.point(outward), p)) };
    });
  const { clearances: gaps, bends } = exhaust;
  const atCollector = (gaps.atCollector ?? USUAL.weldGap / MM) * MM;
  const steps = stepsOf(exhaust, numbers);
  const atMouth = steps.at(-1)?.od ?? od;
  const collector = collectorOf(bank.collector, ports.length, atMouth, atCollector, numbers);
  const notes: string[] = [];
  const bounds = boundsOf(ports, collector);
  const solids = [
    // a pipe that does not begin at the head is clear of it all along
    ...keepOuts((exhaust.keepOuts ?? []).filter(on), numbers, outlets === undefined),
    ...suspension(car, exhaust, side, stands === 'runs' ? PLACES : 1).filter((each) =>
      isWithin(each, bounds, gaps.solids * MM + Math.max(od, atMouth)),
    ),
  ];
  if (allScans.length === 0)
    notes.push('No scan of the bodywork: the pipes are not kept clear of any cover.');
  if (exhaust.suspension !== 'kept clear') notes.push('The links of the suspension are left out.');
  return {
    reached: true,
    cylinders: bank.cylinders,
    notes,
    problem: {
      id: `${car.form.car.name}, ${side} bank`,
      tube: {
        od,
        wall: numbers.of(exhaust.tube.wall) * MM,
        densityKgM3: tubeMaterial(exhaust.tube.material)!.density,
        ...(steps.length === 0 ? {} : { steps }),
      },
      radii: bends.radii.map((radius) => radius * MM),
      limits: {
        maxBends: bends.most ?? USUAL.bends,
        minStraightFlange: bends.atFlange * MM,
        minStraightCollector: bends.atCollector * MM,
        minStraightBetween: (bends.between ?? USUAL.between) * MM,
        maxBendDeg: bends.greatest === undefined ? USUAL.greatest : (bends.greatest * 180) / Math.PI,
      },
      length: { target, tol: exhaust.given.within * MM },
      ports,
      collector,
      collectorBody: {
        length:
          bank.collector.length === undefined
            ? ports.length === 1
              ? 0
              : USUAL.collectorLength
            : numbers.of(bank.collector.length) * MM,
        radiusAdd: 0,
      },
      order: orderOf(exhaust, bank),
      shell: shellOf(scans),
      solids,
      clearance: {
        shell: gaps.body * MM,
        solid: gaps.solids * MM,
        pipe: gaps.pipes * MM,
        self: gaps.pipes * MM,
        collectorZone: gaps.collectorZone === undefined ? USUAL.collectorZone : gaps.collectorZone * MM,
        pipeInZone: atCollector,
        flangeZone:
          outlets !== undefined
            ? LEAVING * (od / 2 + gaps.solids * MM)
            : gaps.flangeZone === undefined
              ? USUAL.flangeZone
              : gaps.flangeZone * MM,
      },
      bounds,
    },
  };
}

/** In a row nothing goes round: any order will do. */
function orderOf({ firing, order }: ExhaustForm, { cylinders, collector }: BankForm): RouteProblem['order'] {
  if (collector?.rows !== undefined) return { mode: 'free' };
  return {
    mode: 'rotation',
    firing: firing.map((each) => cylinders.indexOf(each)).filter((port) => port >= 0),
    sense: 'either',
    // no more than this can be passed over in a round
    ...(order === 'in rotation' ? {} : { passed: cylinders.length ** 2 }),
  };
}

function inletsOf(
  { rows, ring }: CollectorForm,
  pipes: number,
  od: number,
  gap: number,
  numbers: Numbers,
): Inlets {
  if (rows !== undefined) {
    const pitch = numbers.of(rows.pitch) * MM;
    const n = rows.counts.reduce((a, b) => a + b, 0);
    return { n, ringRadius: roundRows(rows.counts, pitch), rows: { counts: rows.counts, pitch } };
  }
  // one pipe alone stands in the middle
  const touching = pipes === 1 ? 0 : (od + gap) / 2 / Math.sin(Math.PI / pipes);
  return { n: pipes, ringRadius: ring === undefined ? touching : numbers.of(ring) * MM };
}

/** Larger tubes farther on. */
const stepsOf = ({ tube }: ExhaustForm, numbers: Numbers): readonly RouteStep[] =>
  (tube.steps ?? []).map((step) => {
    const { kind, length: long } = joinOf(step);
    return {
      from: step.from * MM,
      within: (step.within ?? USUAL_STEP.within) * MM,
      od: numbers.of(step.outside) * MM,
      wall: numbers.of(step.wall) * MM,
      join: { kind, length: long * MM },
      ...(step.radii === undefined ? {} : { radii: step.radii.map((radius) => radius * MM) }),
    };
  });

function collectorOf(
  collector: CollectorForm,
  pipes: number,
  od: number,
  gap: number,
  numbers: Numbers,
): RouteProblem['collector'] {
  const inlets = inletsOf(collector, pipes, od, gap, numbers);
  const mouth = numbers.point(collector.mouth);
  const axis = unit(sub(numbers.point(collector.downstream), mouth));
  const { free } = collector;
  if (free === undefined) {
    return {
      mode: 'fixed',
      ...inlets,
      origin: inMm(mouth),
      axis,
      ref: inletWay(axis, collector.clock ?? 0),
    };
  }
  const half: Vec3 = [free.along * MM, free.across * MM, free.up * MM];
  const at = inMm(mouth);
  return {
    mode: 'free',
    ...inlets,
    boxMin: [at[0] - half[0], at[1] - half[1], at[2] - half[2]],
    boxMax: [at[0] + half[0], at[1] + half[1], at[2] + half[2]],
    axis,
    coneDeg: (free.tilt * 180) / Math.PI,
  };
}

/** The way to the first inlet: straight up as seen along the axis, turned by the clock angle. */
function inletWay(axis: Vec3, clock: number): Vec3 {
  const up: Vec3 = Math.abs(axis[2]) < 0.99 ? [0, 0, 1] : [1, 0, 0];
  const square = unit(sub(up, scale(axis, dot(up, axis))));
  const across = cross(axis, square);
  return add(scale(square, Math.cos(clock)), scale(across, Math.sin(clock)));
}

function keepOuts(given: NonNullable<ExhaustForm['keepOuts']>, numbers: Numbers, flanged: boolean): Solid[] {
  return given.map(({ name, form, from, to, across, carriesFlange }): Solid => {
    const [a, b] = [inMm(numbers.point(from)), inMm(numbers.point(to))];
    const exempt = flanged && carriesFlange === true ? ({ flangeExempt: true } as const) : {};
    if (form === 'box') {
      const half: Vec3 = [Math.abs(b[0] - a[0]) / 2, Math.abs(b[1] - a[1]) / 2, Math.abs(b[2] - a[2]) / 2];
      return {
        kind: 'box',
        name,
        center: scale([a[0] + b[0], a[1] + b[1], a[2] + b[2]], 0.5),
        half,
        ...exempt,
      };
    }
    const r = (numbers.of(across!) * MM) / 2;
    return { kind: form === 'rod' ? 'capsule' : 'cylinder', name, a, b, r, ...exempt };
  });
}

/** Places between droop and bump at which the links are kept clear of. */
const PLACES = 7;

/** Every link of the rear corner on this side at places along its travel, as rods with round ends. */
function suspension(car: Car, { suspension: kept }: ExhaustForm, side: BankName, places: number): Round[] {
  if (kept !== 'kept clear') return [];
  // one place alone is the middle one, at rest
  const shares = places === 1 ? [0.5] : Array.from({ length: places }, (_, k) => k / (places - 1));
  return shares.flatMap((share) => {
    const stance = stanceAt(side, DROOP + share * (BUMP - DROOP));
    const corner = drawCorner(car, { end: 'rear', side }, stance);
    return (corner?.members ?? [])
      .filter(({ from, to }) => length(sub(to, from)) > 1e-3)
      .map(
        ({ name, from, to, diameter }): Round => ({
          kind: 'capsule',
          name,
          a: inMm(from),
          b: inMm(to),
          r: (diameter * MM) / 2,
        }),
      );
  });
}

/** Whether any of a rod comes nearer than this to the room in which the pipes may lie. */
const isWithin = ({ a, b, r }: Round, { min, max }: RouteProblem['bounds'], near: number): boolean =>
  ([0, 1, 2] as const).every(
    (k) => Math.min(a[k], b[k]) - r - near <= max[k] && Math.max(a[k], b[k]) + r + near >= min[k],
  );

/** Beyond what any of these cars moves; a corner that stops earlier is drawn at its stop. Metres. */
const BUMP = 0.06;
const DROOP = -0.06;

const stanceAt = (side: BankName, travel: number): Stance => ({
  front: { left: 0, right: 0 },
  rear: { left: side === 'left' ? travel : 0, right: side === 'right' ? travel : 0 },
  rack: 0,
});

function shellOf(scans: readonly ScanInCar[]): RouteProblem['shell'] {
  const corners = scans.reduce((sum, { mesh }) => sum + mesh.corners.length, 0);
  const triangles = scans.reduce((sum, { mesh }) => sum + mesh.triangles.length, 0);
  const shell = { vertices: new Float64Array(corners), triangles: new Uint32Array(triangles) };
  let corner = 0;
  let at = 0;
  for (const { mesh } of scans) {
    for (let k = 0; k < mesh.corners.length; k += 1) shell.vertices[corner + k] = mesh.corners[k]! * MM;
    for (let k = 0; k < mesh.triangles.length; k += 1)
      shell.triangles[at + k] = mesh.triangles[k]! + corner / 3;
    corner += mesh.corners.length;
    at += mesh.triangles.length;
  }
  return shell;
}

function boundsOf(ports: readonly Port[], collector: RouteProblem['collector']): RouteProblem['bounds'] {
  const corners = collector.mode === 'fixed' ? [collector.origin] : [collector.boxMin, collector.boxMax];
  const all = [...ports.map(({ p }) => p), ...corners];
  const end = (axis: 0 | 1 | 2, of: (...values: number[]) => number): number =>
    of(...all.map((p) => p[axis]));
  return {
    min: [end(0, Math.min) - ROOM, end(1, Math.min) - ROOM, end(2, Math.min) - ROOM],
    max: [end(0, Math.max) + ROOM, end(1, Math.max) + ROOM, end(2, Math.max) + ROOM],
  };
}
