/** Member forces of any corner: equilibrium of every body, virtual work, a beam frame, and statics by hand. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { Unreachable } from '../../src/loadpath/corner/reach.ts';
import { type CornerState, solveCorner } from '../../src/loadpath/corner/solve.ts';
import { type MemberForces, memberForces } from '../../src/loadpath/loads/members.ts';
import { type AppliedForce, resultantAt } from '../../src/loadpath/loads/wrench.ts';
import {
  add,
  cross,
  distance,
  dot,
  length,
  scale,
  sub,
  triple,
  unit,
  type Vec3,
} from '../../src/maths/vec3.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';
import { anyCorner, frontLeft } from './anycorner.ts';
import { planarCorner } from './planarcorner.ts';

const part = real(-5000, 5000);
const anyForce: fc.Arbitrary<Vec3> = fc.tuple(part, part, part);

function reached(geometry: Parameters<typeof prepareCorner>[0], travel: number): CornerState | undefined {
  try {
    return solveCorner(prepareCorner(geometry), { travel });
  } catch (error) {
    if (error instanceof Unreachable) return undefined;
    throw error;
  }
}

const back = ({ at, force }: AppliedForce): AppliedForce => ({ at, force: scale(force, -1) });

function nothingLeft(forces: readonly AppliedForce[], size: number, what: string): void {
  const { force, moment } = resultantAt(forces[0]!.at, forces);
  near(length(force), 0, 1e-8 * size, `${what}, force`);
  near(length(moment), 0, 1e-8 * size, `${what}, moment`);
}

/** Every body of the corner for itself, and the whole. */
function checkBodies(
  state: CornerState,
  rodOn: string,
  outside: readonly AppliedForce[],
  found: MemberForces,
): void {
  const p = state.points;
  const { onTub, onUpright, tension } = found;
  const rodPull = { at: p.rodOuter, force: scale(unit(sub(p.rodInner, p.rodOuter)), tension.rod) };
  const size = Math.max(...Object.values(onTub).map(({ force }) => length(force)), Math.abs(tension.rod), 1);
  const joints = Object.values(onUpright);
  nothingLeft([...joints, ...outside, ...(rodOn === 'upright' ? [rodPull] : [])], size, 'upright and wheel');
  for (const name of ['upper', 'lower'] as const) {
    const inner = [onTub[`${name}Front`], onTub[`${name}Rear`]].map(back);
    const rod = rodOn === `${name} wishbone` ? [rodPull] : [];
    nothingLeft([back(onUpright[name]), ...inner, ...rod], size, `${name} wishbone`);
  }
  nothingLeft([...outside, ...Object.values(onTub).map(back), rodPull], size, 'the whole corner');
}

test('every body of any corner is in equilibrium, and the rod turns the rocker by virtual work', () => {
  let solved = 0;
  fc.assert(
    fc.property(anyCorner, real(-0.04, 0.04), anyForce, anyForce, (geometry, travel, atGround, atCentre) => {
      const state = reached(geometry, travel);
      if (state === undefined || Math.abs(state.rockerAngle.perTravel) < 0.5) return;
      solved += 1;
      const p = state.points;
      const outside = [
        { at: p.contact, force: atGround },
        { at: p.wheelCentre, force: atCentre, moment: [3, -20, 11] as const },
      ];
      const found = memberForces(state, geometry.rodOn, outside);
      near(found.residual, 0, 1e-9, 'residual');
      checkBodies(state, geometry.rodOn, outside, found);
      // a leg bends by what its inner joint does across it, over its length
      const legs = (['Front', 'Rear'] as const).map((end) => {
        const name = geometry.rodOn === 'upper wishbone' ? 'upper' : 'lower';
        const { at, force } = found.onTub[`${name}${end}`];
        return length(cross(sub(at, p[`${name}Outer`]), force));
      });
      const bends = geometry.rodOn === 'upright' ? 0 : Math.max(...legs);
      near(found.bending, bends, 1e-7 * Math.max(1, bends), 'bending');
      const spin = state.uprightTurn.perTravel;
      const centre = state.moving.wheelCentre.perTravel;
      const power = outside.reduce((sum, each) => {
        const velocity = add(centre, cross(spin, sub(each.at, p.wheelCentre)));
        return sum + dot(each.force, velocity) + dot(each.moment ?? [0, 0, 0], spin);
      }, 0);
      const torque = triple(state.rockerAxis, sub(p.rodInner, p.rockerPivot), found.onRocker.force);
      const scaleOf = Math.max(1, Math.abs(power));
      near(torque * state.rockerAngle.perTravel, power, 1e-7 * scaleOf, 'power');
    }),
    { numRuns: 150 },
  );
  assert.ok(solved > 100, `only ${solved} were within reach`);
});

test('statics by hand: level arms, a side force at the ground, moments about the other arm', () => {
  const geometry = planarCorner({
    lowerInner: { y: 0.3, z: 0.16 },
    lowerOuter: { y: 0.6, z: 0.16 },
    upperInner: { y: 0.3, z: 0.36 },
    upperOuter: { y: 0.6, z: 0.36 },
    rockerPivot: { y: 0.3, z: 0.5 },
    rodInner: { y: 0.37, z: 0.5 },
  });
  const state = solveCorner(prepareCorner(geometry), { travel: 0 });
  // 1000 N inboard at the ground, 0.16 m below the lower arm: lower arm and toe link 1800 N, upper arm 800 N
  const found = memberForces(state, geometry.rodOn, [{ at: [0, 0.66, 0], force: [0, -1000, 0] }]);
  const legs = (a: number, b: number): number => ((a + b) * 0.3) / Math.hypot(0.3, 0.15);
  near(legs(found.tension.upperFront, found.tension.upperRear), 800, 1e-6);
  near(legs(found.tension.lowerFront, found.tension.lowerRear) + found.tension.toeLink, -1800, 1e-6);
  near(found.tension.rod, 0, 1e-6);
  near(found.tension.toeLink, 0, 1e-6);
  // 1000 N up at the contact, 60 mm outboard of the kingpin: the rod carries it at its slope
  const up = memberForces(state, geometry.rodOn, [{ at: [0, 0.66, 0], force: [0, 0, 1000] }]);
  const rod = { y: 0.37 - 0.6, z: 0.5 - 0.16 };
  near(up.tension.rod, (-1000 * Math.hypot(rod.y, rod.z)) / rod.z, 1e-6);
});

/** Stiffness of a straight beam between two nodes of six, axes of the beam along x. */
function beam(from: Vec3, to: Vec3, EA: number, EI: number, GJ: number): Matrix {
  const L = distance(from, to);
  const x = unit(sub(to, from));
  const helper: Vec3 = Math.abs(x[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const y = unit(cross(helper, x));
  const z = cross(x, y);
  const k = Matrix.zeros(12, 12);
  const put = (i: number, j: number, value: number): void => {
    k.set(i, j, value);
    k.set(j, i, value);
  };
  for (const [i, value] of [
    [0, EA / L],
    [3, GJ / L],
  ] as const) {
    put(i, i, value);
    put(i + 6, i + 6, value);
    put(i, i + 6, -value);
  }
  for (const [v, r, sign] of [
    [1, 5, 1],
    [2, 4, -1],
  ] as const) {
    put(v, v, (12 * EI) / L ** 3);
    put(v + 6, v + 6, (12 * EI) / L ** 3);
    put(v, v + 6, (-12 * EI) / L ** 3);
    put(r, r, (4 * EI) / L);
    put(r + 6, r + 6, (4 * EI) / L);
    put(r, r + 6, (2 * EI) / L);
    for (const [node, at] of [
      [0, 1],
      [6, -1],
    ] as const) {
      put(v + node, r, (sign * at * 6 * EI) / L ** 2);
      put(v + node, r + 6, (sign * at * 6 * EI) / L ** 2);
    }
  }
  const turn = Matrix.zeros(12, 12);
  for (let block = 0; block < 4; block += 1) {
    [x, y, z].forEach((row, i) => {
      row.forEach((value, j) => {
        turn.set(3 * block + i, 3 * block + j, value);
      });
    });
  }
  return turn.transpose().mmul(k).mmul(turn);
}

test('the wishbone that carries the rod: a frame of beams by the direct stiffness method (Przemieniecki, from memory)', () => {
  const state = solveCorner(prepareCorner(frontLeft), { travel: 0.01 });
  const p = state.points;
  const outside = [{ at: p.contact, force: [-1500, -2500, 4000] as const }];
  const found = memberForces(state, 'lower wishbone', outside);
  // legs stiff along themselves, rigid at the outer joint; the rod stands on a bracket that is rigid with it
  const [EA, EI, GJ] = [1e12, 2e3, 2e3];
  const nodes = [p.lowerFront, p.lowerRear, p.lowerOuter, p.rodOuter];
  const all = Matrix.zeros(24, 24);
  for (const [a, b, stiff] of [
    [0, 2, 1],
    [1, 2, 1],
    [2, 3, 1e6],
  ] as const) {
    const k = beam(nodes[a]!, nodes[b]!, stiff === 1 ? EA : EA, EI * stiff, GJ * stiff);
    for (let i = 0; i < 12; i += 1) {
      for (let j = 0; j < 12; j += 1) {
        const at = (n: number): number => 6 * (n < 6 ? a : b) + (n % 6);
        all.set(at(i), at(j), all.get(at(i), at(j)) + k.get(i, j));
      }
    }
  }
  const load = Matrix.zeros(24, 1);
  const put = (node: number, force: Vec3): void => {
    force.forEach((value, i) => {
      load.set(6 * node + i, 0, load.get(6 * node + i, 0) + value);
    });
  };
  put(2, scale(found.onUpright.lower.force, -1));
  put(3, scale(unit(sub(p.rodInner, p.rodOuter)), found.tension.rod));
  // the inner joints are balls; the turn about the hinge, which the rod balances, is held by a whisper
  const free = Array.from({ length: 24 }, (_, k) => k).filter((k) => !(k < 3 || (k >= 6 && k < 9)));
  const K = all.selection(free, free);
  for (let i = 0; i < free.length; i += 1) K.set(i, i, K.get(i, i) * (1 + 1e-12) + 1e-6);
  const moved = solve(K, load.selection(free, [0]));
  const whole = Matrix.zeros(24, 1);
  free.forEach((k, i) => {
    whole.set(k, 0, moved.get(i, 0));
  });
  const reaction = all.mmul(whole);
  for (const [node, name] of [
    [0, 'lowerFront'],
    [1, 'lowerRear'],
  ] as const) {
    const onTub = found.onTub[name].force;
    onTub.forEach((value, i) => {
      // 3 N of some 8000: the frame's whisper, and legs stiff along themselves but not without end
      near(-reaction.get(6 * node + i, 0), value, 3, `${name} ${'xyz'[i]}`);
    });
  }
});
