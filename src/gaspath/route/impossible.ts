/**
 * What makes a packing impossible before any search: the straights at port and collector, the chord, the shortest
 * pipe with its bends, and the room in which the collector may stand.
 *
 * Stubs, the ring, the chord and the pose that is fixed are proofs. Where the pose is free its best place is looked
 * for by descent from many starts, and so is the shortest pipe; they are told as found, with what is lacking, and
 * only where the lack is plain.
 */
import { along, type Vec3 } from '../../maths/vec3.ts';
import { Chance } from './chance.ts';
import { descend, turnPose, USUAL } from './descent.ts';
import { legalOrders } from './order.ts';
import type { RouteProblem } from './problem.ts';
import { Rig } from './rig.ts';
import { blocked, type Lack, PLENTY, roomAt } from './room.ts';
import { type Site, siteOf } from './site.ts';
import { drawPipe, drawPose } from './starts.ts';

export interface Cause {
  readonly code:
    | 'port stub'
    | 'ports apart'
    | 'ring'
    | 'collector stub'
    | 'first bend'
    | 'chord'
    | 'least bend';
  readonly says: string;
  /** Ports, counted from 0. */
  readonly pipes?: readonly number[];
  readonly needs?: number;
  readonly has?: number;
}

/** A lack below this is left to the search, mm. */
const PLAIN = 0.05;
/** The same where the best pose was looked for, not proved. */
const PLAIN_FOUND = 0.5;
const STARTS = 30;

const mm = (value: number): string => `${value.toFixed(1)} mm`;

export function impossible(site: Site): readonly Cause[] {
  const stubs = [...portStubs(site), ...ring(site), ...collectorStubs(site)];
  if (stubs.length > 0) return stubs;
  const bends = firstBends(site);
  return bends.length > 0 ? bends : lengths(site);
}

function portStubs(site: Site): Cause[] {
  const { problem } = site;
  const { ports, limits } = problem;
  const long = limits.minStraightFlange;
  const causes: Cause[] = [];
  ports.forEach(({ p, d }, i) => {
    let worst: Lack | undefined;
    for (let s = 0; s <= long; s = s < long && s + 1 > long ? long : s + 1) {
      const here = roomAt(site, p[0] + s * d[0], p[1] + s * d[1], p[2] + s * d[2], s);
      if (here.lack > PLAIN && here.lack > (worst?.lack ?? 0)) worst = here;
      if (s === long) break;
    }
    if (worst === undefined) return;
    causes.push({
      code: 'port stub',
      says: `Port ${i + 1}: the straight of ${mm(long)} that must leave the flange comes too near ${worst.what}: the centre line needs ${mm(worst.needs)}, has ${mm(worst.has)}.`,
      pipes: [i],
      needs: worst.needs,
      has: worst.has,
    });
  });
  // near the flange no pair is in the collector's zone, unless the pipe is hardly longer than that
  if (problem.length.target - problem.length.tol - long <= site.zone) return causes;
  for (let i = 0; i < ports.length; i++)
    for (let j = i + 1; j < ports.length; j++) {
      const has = stubGap(ports[i]!, ports[j]!, long);
      if (site.needPipe - has <= PLAIN) continue;
      causes.push({
        code: 'ports apart',
        says: `Ports ${i + 1} and ${j + 1}: their straights come to ${mm(has)} of each other; two pipes need ${mm(site.needPipe)} from centre line to centre line.`,
        pipes: [i, j],
        needs: site.needPipe,
        has,
      });
    }
  return causes;
}

function stubGap(
  one: RouteProblem['ports'][number],
  two: RouteProblem['ports'][number],
  long: number,
): number {
  let least = Infinity;
  for (let a = 0; a <= 20; a++)
    for (let b = 0; b <= 20; b++) {
      const s = (a / 20) * long;
      const t = (b / 20) * long;
      least = Math.min(
        least,
        Math.hypot(...[0, 1, 2].map((c) => one.p[c]! + s * one.d[c]! - two.p[c]! - t * two.d[c]!)),
      );
    }
  return least;
}

function ring(site: Site): Cause[] {
  const { collector, ports } = site.problem;
  if (ports.length < 2) return [];
  // so many places between neighbours at most, the pipes spread as evenly as the ring lets them
  const apart = Math.floor(collector.n / ports.length);
  // in rows that have places to spare nobody counts how far apart the pipes could stand
  if (collector.rows !== undefined && apart > 1) return [];
  const has =
    collector.rows === undefined
      ? 2 * collector.ringRadius * Math.sin((Math.PI * apart) / collector.n)
      : collector.rows.pitch;
  const needs = site.needInZone + 2 * site.moreAtMouth;
  if (needs - has <= 0.001) return [];
  return [
    {
      code: 'ring',
      says: `The inlets stand ${mm(has)} apart ${collector.rows === undefined ? 'on their ring' : 'in their rows'}; two pipes need ${mm(needs)} there from centre line to centre line.`,
      needs,
      has,
    },
  ];
}

/** Worst lack of room of the straights at all inlets that must be used, in the pose that the rig has. */
function mouthLack(site: Site, rig: Rig): Lack {
  const { collector, ports, limits, length } = site.problem;
  const lacks: Lack[] = [];
  for (let k = 0; k < collector.n; k++) {
    rig.inlets[0] = k;
    rig.seatOne(0);
    const { inlet, into } = rig.pipes[0]!;
    let worst: Lack = PLENTY;
    for (let q = 0; q <= 6; q++) {
      const s = (q / 6) * limits.minStraightCollector;
      const here = roomAt(
        site,
        inlet[0]! - s * into[0]!,
        inlet[1]! - s * into[1]!,
        inlet[2]! - s * into[2]!,
        length.target - s,
      );
      if (here.lack > worst.lack) worst = here;
    }
    lacks.push(worst);
  }
  // with inlets to spare the worst of them stay empty
  lacks.sort((a, b) => a.lack - b.lack);
  return lacks[ports.length - 1]!;
}

function collectorStubs(site: Site): Cause[] {
  const rig = new Rig(site);
  const { collector, limits } = site.problem;
  const best = leastOverPoses(
    rig,
    () => mouthLack(site, rig),
    (lack) => lack.lack,
  );
  const free = collector.mode === 'free';
  if (best.lack <= (free ? PLAIN_FOUND : PLAIN)) return [];
  return [
    {
      code: 'collector stub',
      says: `${free ? 'Wherever the collector stands in its box and cone, the' : 'The'} straight of ${mm(limits.minStraightCollector)} before one of its inlets comes too near ${best.what}: the centre line needs ${mm(best.needs)}, has ${free ? 'at best ' : ''}${mm(best.has)}.`,
      needs: best.needs,
      has: best.has,
    },
  ];
}

/**
 * The least of a measure over the poses that are allowed: at once where the pose is fixed; else by chance, then
 * from the best few by smaller and smaller moves. Ends where it is no more than nothing.
 */
function leastOverPoses<T>(rig: Rig, measure: () => T, size: (of: T) => number): T {
  const { collector } = rig.site.problem;
  if (collector.mode === 'fixed') return measure();
  const chance = new Chance(7);
  const seen: { readonly at: Float64Array; of: T }[] = [];
  const pose = (): Float64Array => Float64Array.from([...rig.origin, ...rig.axis, ...rig.ref]);
  const put = (at: Float64Array): void =>
    rig.setPose(at.subarray(0, 3), at.subarray(3, 6), at.subarray(6, 9));
  for (let tries = 0; tries < 250; tries++) {
    drawPose(rig, chance);
    const of = measure();
    if (size(of) <= 0) return of;
    seen.push({ at: pose(), of });
  }
  seen.sort((a, b) => size(a.of) - size(b.of));
  let best = seen[0]!.of;
  for (const each of seen.slice(0, 6)) {
    let { at, of } = each;
    for (let step = 40, misses = 0; step > 0.05; ) {
      put(at);
      for (let c = 0; c < 3; c++)
        rig.origin[c] = Math.min(
          collector.boxMax[c]!,
          Math.max(collector.boxMin[c]!, at[c]! + step * chance.normal()),
        );
      const turn = step / 150;
      turnPose(rig, turn * chance.normal(), turn * chance.normal(), turn * chance.normal());
      if (!inCone(rig, collector.axis, collector.coneDeg)) {
        if (++misses > 24) {
          misses = 0;
          step /= 2;
        }
        continue;
      }
      const next = measure();
      if (size(next) <= 0) return next;
      if (size(next) < size(of)) {
        of = next;
        at = pose();
        misses = 0;
      } else if (++misses > 24) {
        misses = 0;
        step /= 2;
      }
    }
    if (size(of) < size(best)) best = of;
  }
  return best;
}

function inCone(rig: Rig, axis: Vec3, coneDeg: number): boolean {
  const c = rig.axis[0]! * axis[0] + rig.axis[1]! * axis[1] + rig.axis[2]! * axis[2];
  return Math.acos(Math.min(1, c)) <= (coneDeg * Math.PI) / 180;
}

/** Ends from which no pipe gets away, however it is bent after its least straight. */
function firstBends(site: Site): Cause[] {
  const { ports, limits, collector, length } = site.problem;
  const radius = mm(site.radii[0]!);
  const causes: Cause[] = [];
  const a = limits.minStraightFlange;
  ports.forEach(({ p, d }, i) => {
    const wall = blocked(site, along(p, d, a), d, (gone) => a + gone);
    if (wall === undefined) return;
    causes.push({
      code: 'first bend',
      says: `Port ${i + 1}: after the straight of ${mm(a)} no bend of ${radius} radius or more, to any side, gets past ${wall.what}: the centre line needs ${mm(wall.needs)} there and comes to ${mm(wall.has)}.`,
      pipes: [i],
      needs: wall.needs,
      has: wall.has,
    });
  });
  if (collector.mode === 'free' || collector.n > ports.length) return causes;
  const rig = new Rig(site);
  const b = limits.minStraightCollector;
  for (let k = 0; k < collector.n; k++) {
    rig.inlets[0] = k;
    rig.seatOne(0);
    const back: Vec3 = [-collector.axis[0], -collector.axis[1], -collector.axis[2]];
    const mouth: Vec3 = [rig.pipes[0]!.inlet[0]!, rig.pipes[0]!.inlet[1]!, rig.pipes[0]!.inlet[2]!];
    const wall = blocked(site, along(mouth, back, b), back, (gone) => length.target - b - gone);
    if (wall === undefined) continue;
    causes.push({
      code: 'first bend',
      says: `Inlet ${k + 1}: before the straight of ${mm(b)} no bend of ${radius} radius or more, from any side, gets past ${wall.what}: the centre line needs ${mm(wall.needs)} there and comes to ${mm(wall.has)}.`,
      needs: wall.needs,
      has: wall.has,
    });
  }
  return causes;
}

/** Straights at both ends and the chord between them: no pipe is shorter. */
function chordOf(rig: Rig): number {
  const { limits } = rig.site.problem;
  const { port, out, inlet, into } = rig.pipes[0]!;
  const a = limits.minStraightFlange;
  const b = limits.minStraightCollector;
  return a + b + Math.hypot(...[0, 1, 2].map((c) => port[c]! + a * out[c]! - inlet[c]! + b * into[c]!));
}

function lengths(site: Site): Cause[] {
  const { problem } = site;
  const { target, tol } = problem.length;
  const orders = legalOrders(problem);
  const free = problem.collector.mode === 'free';
  const alone = problem.ports.map((port, i) => ({
    i,
    rig: new Rig(siteOf(aloneProblem(problem, port))),
    // a free pose turns any inlet to any place
    inlets: free ? [0] : [...new Set(orders.map((order) => order[i]!))],
  }));
  const chords = alone.flatMap(({ i, rig, inlets }): Cause[] => {
    const needs = Math.min(...inlets.map((k) => leastChord(rig, k)));
    if (needs <= target + tol + PLAIN) return [];
    const says = `Pipe of port ${i + 1}: the straights at its ends and the straight line between them are ${mm(needs)} already${free ? ', wherever the collector stands' : ''}; ${mm(target)} is asked.`;
    return [{ code: 'chord', says, pipes: [i], needs, has: target }];
  });
  if (chords.length > 0) return chords;
  const short = alone.filter(({ rig, inlets }) => !inlets.some((k) => bends(rig, k)));
  return short.map(({ i, rig, inlets }, at): Cause => {
    // how long it would have to be is told of one
    const needs = at === 0 ? leastLength(problem, problem.ports[i]!, inlets) : undefined;
    return {
      code: 'least bend',
      says: `Pipe of port ${i + 1}: with bends of ${mm(rig.site.radii[0]!)} radius and the straights asked it ${needs === undefined ? 'cannot be laid in this length' : `is ${mm(needs)} long at least, so far as was found`}, even with nothing in its way; ${mm(target)} is asked.`,
      pipes: [i],
      ...(needs === undefined ? {} : { needs }),
      has: target,
    };
  });
}

function leastChord(rig: Rig, inlet: number): number {
  const { target, tol } = rig.site.problem.length;
  rig.inlets[0] = inlet;
  return leastOverPoses(
    rig,
    () => {
      rig.seatOne(0);
      return chordOf(rig);
    },
    (long) => long - target - tol,
  );
}

const thickest = ({ od, steps = [] }: RouteProblem['tube']): number =>
  Math.max(od, ...steps.map((step) => step.od));

/** The same pipe with nothing about it. */
function aloneProblem(problem: RouteProblem, port: RouteProblem['ports'][number]): RouteProblem {
  return {
    ...problem,
    ports: [port],
    order: { mode: 'free' },
    shell: { vertices: new Float64Array(0), triangles: new Uint32Array(0) },
    solids: [],
    collectorBody: { length: 0, radiusAdd: 0 },
    // negative by the thickest tube: a pipe may run through itself
    clearance: { ...problem.clearance, self: -thickest(problem.tube) },
  };
}

/** Whether a lone pipe of the length asked can be bent to inlet k. */
function bends(rig: Rig, k: number): boolean {
  const { limits, length, collector } = rig.site.problem;
  const chance = new Chance(11);
  rig.margin = 0;
  for (let tries = 0; tries < STARTS; tries++) {
    rig.inlets[0] = k;
    drawPose(rig, chance);
    drawPipe(rig, 0, Math.min(limits.maxBends, 2 + (tries % 4)), chance);
    rig.moves[0] = true;
    rig.poseMoves = collector.mode === 'free';
    descend(rig, { ...USUAL, iterations: 60 });
    // so much as the length may be off, and not more
    if (rig.cost <= (0.9 * length.tol) ** 2 + 0.01) return true;
  }
  return false;
}

function leastLength(
  problem: RouteProblem,
  port: RouteProblem['ports'][number],
  inlets: readonly number[],
): number | undefined {
  const can = (target: number): boolean => {
    const rig = new Rig(siteOf(aloneProblem({ ...problem, length: { target, tol: 0.05 } }, port)));
    return inlets.some((k) => bends(rig, k));
  };
  let low = problem.length.target;
  let high = low;
  for (let grow = 1.15; grow < 4; grow *= 1.3) {
    high = problem.length.target * grow;
    if (can(high)) break;
    low = high;
    if (grow * 1.3 >= 4) return undefined;
  }
  for (let k = 0; k < 5; k++) {
    const middle = (low + high) / 2;
    if (can(middle)) high = middle;
    else low = middle;
  }
  return high;
}
