/**
 * First places for every point and arm frame, near enough for the adjustment to take over.
 *
 * In    a survey that has passed its check
 * Out   a state in car axes, points that could not be placed and why, problems that stop everything
 *
 * Sets are joined by the points they share; the whole is laid on the car's axes by approximate places or by
 * the datum rules; points known by lengths alone are found from their neighbours. Where two places fit
 * equally, it says so and asks, and does not choose.
 */
import { fitRigid, type MatchedPoint, moved, type RigidMotion } from '../geometry/rigid-fit.ts';
import { NO_TURN } from '../geometry/rotation.ts';
import type { Vec3 } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import { leftHanded, unitProblem } from './check.ts';
import { axisIndex, type State } from './equations.ts';
import { layOnAxes } from './lay-on-axes.ts';
import { locate } from './locate.ts';
import { CAR_SET, freeSets, pointNames, type Survey } from './network.ts';

export interface Unplaced {
  readonly point: string;
  readonly why: string;
}

export interface Start {
  readonly state: State;
  readonly unplaced: readonly Unplaced[];
  /** Sets that share too few points with the rest to be joined. */
  readonly loose: readonly string[];
}

export type StartResult =
  | { readonly ok: true; readonly is: Start }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface Building {
  readonly points: Map<string, Vec3>;
  readonly frames: Map<string, RigidMotion>;
  readonly problems: Problem[];
}

export function startOf(survey: Survey): StartResult {
  const sets = setsOf(survey);
  const own = new Map([...placedByAxes(survey), ...(sets.get(CAR_SET) ?? [])]);
  const approximate = new Map(Object.entries(survey.approximate ?? {}));
  const building: Building = { points: new Map(own), frames: new Map(), problems: [] };
  const base = freeSets(survey)
    .map((name) => ({ name, points: sets.get(name)! }))
    .sort((a, b) => b.points.size - a.points.size)[0];

  const known = new Map([...approximate, ...own]);
  if (base !== undefined && matches(base.points, own).length < 3) {
    // a cluster in the base set's own frame, then laid on the car's axes as one body
    const cluster: Building = {
      points: new Map(base.points),
      frames: new Map([[base.name, { rotation: NO_TURN, translation: [0, 0, 0] }]]),
      problems: building.problems,
    };
    grow(survey, sets, cluster, new Map(), false);
    if (building.problems.length > 0) return { ok: false, problems: building.problems };
    const laid = layOnAxes(survey, cluster.points, known, base.name);
    if (!laid.ok) return laid;
    for (const [name, p] of cluster.points) if (!own.has(name)) building.points.set(name, moved(laid.is, p));
    const origin = { rotation: laid.is.rotation, translation: laid.is.translation };
    building.frames.set(base.name, origin);
  }
  grow(survey, sets, building, approximate, true);
  if (building.problems.length > 0) return { ok: false, problems: building.problems };
  const unplaced = pointNames(survey)
    .filter((name) => !building.points.has(name))
    .map((point) => ({ point, why: locate(survey, point, building, approximate.get(point)).why ?? '' }));
  const loose = freeSets(survey).filter((name) => !building.frames.has(name));
  return { ok: true, is: { state: { points: building.points, frames: building.frames }, unplaced, loose } };
}

/** Points whose three co-ordinates are all given by rules, heights and offsets. */
function placedByAxes(survey: Survey): ReadonlyMap<string, Vec3> {
  const found = new Map<string, (number | undefined)[]>();
  const note = (point: string, k: 0 | 1 | 2, value: number): void => {
    const place = found.get(point) ?? [undefined, undefined, undefined];
    place[k] = value;
    found.set(point, place);
  };
  for (const r of survey.readings) {
    if (r.kind === 'height') note(r.point, 2, r.value);
    if (r.kind === 'offset') note(r.point, axisIndex(r.axis), r.value);
  }
  for (const rule of survey.datum) if ('point' in rule) note(rule.point, axisIndex(rule.axis), rule.at);
  return new Map(
    [...found].flatMap(([point, [x, y, z]]) =>
      x === undefined || y === undefined || z === undefined ? [] : [[point, [x, y, z] as const]],
    ),
  );
}

function setsOf(survey: Survey): ReadonlyMap<string, ReadonlyMap<string, Vec3>> {
  const sets = new Map<string, Map<string, Vec3>>();
  for (const r of survey.readings) {
    if (r.kind !== 'point') continue;
    if (!sets.has(r.set)) sets.set(r.set, new Map());
    if (!sets.get(r.set)!.has(r.point)) sets.get(r.set)!.set(r.point, r.xyz);
  }
  return sets;
}

const matches = (from: ReadonlyMap<string, Vec3>, to: ReadonlyMap<string, Vec3>): readonly MatchedPoint[] =>
  [...from].flatMap(([name, p]) => (to.has(name) ? [{ from: p, to: to.get(name)! }] : []));

/** Joins sets and places points until nothing more can be added. */
function grow(
  survey: Survey,
  sets: ReadonlyMap<string, ReadonlyMap<string, Vec3>>,
  building: Building,
  approximate: ReadonlyMap<string, Vec3>,
  inCarAxes: boolean,
): void {
  for (let added = true; added && building.problems.length === 0; ) {
    added = false;
    for (const [name, points] of sets) {
      if (name === CAR_SET || building.frames.has(name)) {
        added = place(points, building.frames.get(name), building.points) || added;
        continue;
      }
      const motion = joined(name, points, building);
      if (motion === undefined) continue;
      building.frames.set(name, motion);
      added = true;
    }
    if (added) continue;
    for (const point of pointNames(survey)) {
      if (building.points.has(point)) continue;
      const found = locate(survey, point, building, approximate.get(point), inCarAxes);
      if (found.at === undefined) continue;
      building.points.set(point, found.at);
      added = true;
    }
  }
}

/** Puts the points of a placed set where its frame says. True when there was something new. */
function place(
  points: ReadonlyMap<string, Vec3>,
  frame: RigidMotion | undefined,
  known: Map<string, Vec3>,
): boolean {
  let added = false;
  for (const [name, p] of points) {
    if (known.has(name) || frame === undefined) continue;
    known.set(name, moved(frame, p));
    added = true;
  }
  return added;
}

function joined(
  name: string,
  points: ReadonlyMap<string, Vec3>,
  building: Building,
): RigidMotion | undefined {
  const shared = matches(points, building.points);
  const fit = fitRigid(shared);
  if (!fit.ok) return undefined;
  const unit = unitProblem(name, fit.is.scale, 'the points it shares with the rest');
  if (unit !== undefined) building.problems.push(unit);
  else if (fit.is.looksMirrored)
    building.problems.push(leftHanded(name, 'the points it shares with the rest'));
  return withoutWorst(shared, fit.is);
}

/** A fit that one grossly wrong point cannot pull about: left out while it helps tenfold and four remain. */
function withoutWorst(
  shared: readonly MatchedPoint[],
  whole: RigidMotion & { readonly rms: number },
): RigidMotion {
  if (shared.length < 5) return whole;
  let best: RigidMotion & { readonly rms: number } = whole;
  for (const worst of shared) {
    const fit = fitRigid(shared.filter((p) => p !== worst));
    if (fit.ok && fit.is.rms < best.rms) best = fit.is;
  }
  return best.rms < whole.rms / 10 ? best : whole;
}
