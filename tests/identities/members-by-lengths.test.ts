/**
 * Members by virtual work from lengths alone: one member is made a hair longer, the others keep theirs, the upright goes
 * where the six lengths let it, and the work of what acts on it over the lengthening is that member's tension
 * (any textbook of statics, from memory). Nothing of the equilibrium's own equations is used.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import type { CornerGeometry } from '../../src/loadpath/corner/geometry.ts';
import { prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { Unreachable } from '../../src/loadpath/corner/reach.ts';
import { type CornerState, solveCorner } from '../../src/loadpath/corner/solve.ts';
import { MEMBERS, type MemberName, memberForces } from '../../src/loadpath/loads/members.ts';
import type { AppliedForce } from '../../src/loadpath/loads/wrench.ts';
import { add, cross, distance, dot, length, scale, sub, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';
import { anyCorner } from './anycorner.ts';

/** Turned by a rotation vector (Rodrigues). */
function turned(v: Vec3, by: Vec3): Vec3 {
  const angle = length(by);
  if (angle === 0) return v;
  const axis = unit(by);
  return add(
    add(scale(v, Math.cos(angle)), scale(cross(axis, v), Math.sin(angle))),
    scale(axis, dot(axis, v) * (1 - Math.cos(angle))),
  );
}

/** Where a point of the upright is when the wheel centre has moved by the first three and turned by the others. */
const placed = (p: CornerState['points'], at: Vec3, q: readonly number[]): Vec3 =>
  add(add(p.wheelCentre, [q[0]!, q[1]!, q[2]!]), turned(sub(at, p.wheelCentre), [q[3]!, q[4]!, q[5]!]));

/** The six lengths at a place of the upright. */
function lengthsAt(state: CornerState, { rodOn }: CornerGeometry, q: readonly number[]): number[] {
  const p = state.points;
  const at = (point: Vec3): Vec3 => placed(p, point, q);
  const rodEnd = (): Vec3 => {
    if (rodOn === 'upright') return at(p.rodOuter);
    const side = rodOn === 'upper wishbone' ? 'upper' : 'lower';
    const root = p[`${side}Front`];
    const hinge = unit(sub(p[`${side}Rear`], root));
    const across = (point: Vec3): Vec3 => {
      const arm = sub(point, root);
      return sub(arm, scale(hinge, dot(arm, hinge)));
    };
    const [from, to] = [across(p[`${side}Outer`]), across(at(p[`${side}Outer`]))];
    const angle = Math.atan2(dot(hinge, cross(from, to)), dot(from, to));
    return add(root, turned(sub(p.rodOuter, root), scale(hinge, angle)));
  };
  return [
    distance(at(p.upperOuter), p.upperFront),
    distance(at(p.upperOuter), p.upperRear),
    distance(at(p.lowerOuter), p.lowerFront),
    distance(at(p.lowerOuter), p.lowerRear),
    distance(at(p.toeOuter), p.toeInner),
    distance(rodEnd(), p.rodInner),
  ];
}

const REST = [0, 0, 0, 0, 0, 0];
const HAIR = 1e-6;

/** The place at which the six lengths are these: Newton with slopes by differences. */
function placeWith(state: CornerState, geometry: CornerGeometry, lengths: readonly number[]): number[] {
  let q = REST;
  for (let round = 0; round < 6; round += 1) {
    const now = lengthsAt(state, geometry, q);
    const columns = q.map((_, k) => {
      const moved = (by: number) =>
        lengthsAt(
          state,
          geometry,
          q.map((value, j) => (j === k ? value + by : value)),
        );
      const [above, below] = [moved(HAIR), moved(-HAIR)];
      return above.map((value, row) => (value - below[row]!) / (2 * HAIR));
    });
    const left = Matrix.columnVector(lengths.map((value, k) => value - now[k]!));
    const by = solve(new Matrix(columns).transpose(), left).to1DArray();
    q = q.map((value, k) => value + by[k]!);
  }
  return q;
}

const part = real(-5000, 5000);
const anyForce: fc.Arbitrary<Vec3> = fc.tuple(part, part, part);
const LONGER = 2e-5;

/** Its lengths say what it carries; a wishbone that carries the rod is more than two lengths. */
const byLength = (name: MemberName, { rodOn }: CornerGeometry): boolean =>
  rodOn === 'upright' || !name.startsWith(rodOn === 'upper wishbone' ? 'upper' : 'lower');

test('each member of any corner by virtual work: one length changed, the others kept', () => {
  let compared = 0;
  fc.assert(
    fc.property(anyCorner, real(-0.03, 0.03), anyForce, anyForce, (geometry, travel, atGround, moment) => {
      let state: CornerState;
      try {
        state = solveCorner(prepareCorner(geometry), { travel });
      } catch (error) {
        if (error instanceof Unreachable) return;
        throw error;
      }
      // where the rod has hardly any lever, its place hangs on the last digit of its length
      if (Math.abs(state.rockerAngle.perTravel) < 0.5) return;
      const p = state.points;
      const small = scale(moment, 0.1);
      const outside: readonly AppliedForce[] = [{ at: p.contact, force: atGround, moment: small }];
      const found = memberForces(state, geometry.rodOn, outside);
      const lengths = lengthsAt(state, geometry, REST);
      const largest = Math.max(...Object.values(found.tension).map(Math.abs), 100);
      MEMBERS.forEach((name, k) => {
        if (!byLength(name, geometry)) return;
        const [longer, shorter] = [LONGER, -LONGER].map((by) =>
          placeWith(
            state,
            geometry,
            lengths.map((value, j) => (j === k ? value + by : value)),
          ),
        ) as [number[], number[]];
        const moved = sub(placed(p, p.contact, longer), placed(p, p.contact, shorter));
        const spun: Vec3 = [longer[3]! - shorter[3]!, longer[4]! - shorter[4]!, longer[5]! - shorter[5]!];
        const tension = (dot(atGround, moved) + dot(small, spun)) / (2 * LONGER);
        // differences over 0.02 mm of lengths good to 1e-16 m, with a lever of a few times: 1e-7, and their third order
        near(tension, found.tension[name], 2e-6 * largest, name);
        compared += 1;
      });
    }),
    { numRuns: 60 },
  );
  assert.ok(compared > 200, `only ${compared} compared`);
});
