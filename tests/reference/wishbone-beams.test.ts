/**
 * The wishbone that carries the rod as a frame of beams in a general finite-element program: its joints' forces, the
 * pull along each leg and the greatest bending, for every demo corner that has one.
 *
 * Each wishbone lies in its own plane, x along its hinge; its legs are round steel rods of 8 mm radius, welded to each
 * other at the outer joint, their inner ends free to turn. The rod pulls there by its force and by its moment, as
 * through a stiff bracket. Off the plane the outer joint is held: that this takes nothing is the equilibrium.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { add, cross, dot, length, scale, sub, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { Deck, plain, solvedByCcx, steel, step } from './ccx.ts';
import { type Corner, carrierOf, corners, LOADS } from './loaded-corners.ts';

const FILE = 'tests/reference/wishbone-beams.test.ts';
const RADIUS = 0.008;
/** Elements along a leg. */
const PARTS = 6;
/**
 * Of the largest force. Ours has legs that are stiff along themselves; these give as much along as r²/4L² = 1e-4 of what
 * they give in bending, and that part of the bending, itself a part of the force, goes another way.
 */
const CLOSE = 5e-5;

const carrying = corners.filter(({ rodOn }) => carrierOf(rodOn) !== undefined);

/** One wishbone put into the deck, the axes of its plane, and its told nodes. */
function putFrame(deck: Deck, { state, rodOn }: Corner, set: string) {
  const side = carrierOf(rodOn)!;
  const p = state.points;
  const [front, rear, outer] = [p[`${side}Front`], p[`${side}Rear`], p[`${side}Outer`]];
  const x = unit(sub(rear, front));
  const z = unit(cross(x, sub(outer, front)));
  const axes = [x, cross(z, x), z] as const;
  const turned = (way: Vec3): Vec3 => axes.map((each) => dot(each, way)) as unknown as Vec3;
  const local = (at: Vec3): Vec3 => turned(sub(at, front));
  const end = deck.node(local(outer), true);
  const inner = [front, rear].map((at) => {
    const root = deck.node(local(at), true);
    const along = (part: number): Vec3 =>
      add(local(at), scale(sub(local(outer), local(at)), part / (2 * PARTS)));
    let last = root;
    for (let k = 0; k < PARTS; k += 1) {
      const middle = deck.node(along(2 * k + 1));
      const next = k === PARTS - 1 ? end : deck.node(along(2 * k + 2));
      deck.element('B32R', set, last, middle, next);
      last = next;
    }
    return root;
  });
  return { side, axes, turned, end, inner, front, rear, outer };
}

test('the wishbone that carries the rod as a frame of beams: both inner joints, legs along and across', (t) => {
  const deck = new Deck();
  const frames = carrying.map((corner) => putFrame(deck, corner, 'LEGS'));
  deck.card(...steel(), '*BEAM SECTION, ELSET=LEGS, MATERIAL=STEEL, SECTION=CIRC');
  deck.card(`${plain(RADIUS)}, ${plain(RADIUS)}`, '0., 0., 1.', '*BOUNDARY');
  for (const { inner, end } of frames) deck.card(...inner.map((node) => `${node}, 1, 3`), `${end}, 3, 3`);
  const put = LOADS.map((_, k) =>
    carrying.map(({ state, found }, c) => {
      const { side, turned, outer } = frames[c]!;
      const { rodInner, rodOuter } = state.points;
      const pull = scale(unit(sub(rodInner, rodOuter)), found[k]!.tension.rod);
      return {
        force: turned(sub(pull, found[k]!.onUpright[side].force)),
        moment: turned(cross(sub(rodOuter, outer), pull)),
      };
    }),
  );
  for (const each of put) {
    const load = each.flatMap(({ force, moment }, c) =>
      [...force, ...moment].map((value, way) => [frames[c]!.end, way + 1, value] as const),
    );
    deck.card(...step(load));
  }
  const { steps, from } = solvedByCcx('wishbone-beams', deck.text(), FILE);
  t.diagnostic(`compared with ${from}`);
  let worst = 0;
  carrying.forEach(({ what, found }, c) => {
    const { side, turned, inner, end, front, rear, outer } = frames[c]!;
    found.forEach((ours, k) => {
      const forces = inner.map((node) => scale(steps[k]!.force[node]!, -1));
      const names = [`${side}Front`, `${side}Rear`] as const;
      const told = names.map((name) => turned(ours.onTub[name].force));
      const largest = Math.max(...told.map(length), Math.abs(ours.tension.rod));
      const legs = [front, rear].map((at) => turned(sub(at, outer)));
      const same = (gap: number, kind: string): void => {
        worst = Math.max(worst, gap);
        assert.ok(gap < CLOSE, `${what}, load ${k + 1}, ${kind}: ${gap} of the largest force`);
      };
      forces.forEach((force, i) => {
        same(length(sub(force, told[i]!)) / largest, names[i]!);
        same(Math.abs(-dot(unit(legs[i]!), force) - ours.tension[names[i]!]) / largest, 'along');
      });
      const bends = Math.max(...legs.map((leg, i) => length(cross(leg, forces[i]!))));
      same(Math.abs(bends - ours.bending) / (largest * Math.max(...legs.map(length))), 'bending');
      const held = steps[k]!.force[end]![2]! - put[k]![c]!.force[2]!;
      same(Math.abs(held) / largest, 'held off the plane');
    });
  });
  assert.deepEqual([...new Set(carrying.map(({ rodOn }) => rodOn))].sort(), [
    'lower wishbone',
    'upper wishbone',
  ]);
  t.diagnostic(
    `${carrying.length} wishbones, worst difference ${worst.toExponential(1)} of the largest force`,
  );
});
