/**
 * What the members of the demo cars' corners carry, against the same corners as trusses and as frames of beams in a
 * general finite-element program, and against virtual work from lengths alone.
 *
 * Trusses: legs, track rod and rod as bars with hinges; the upright, and the wishbone that carries the rod, as bars
 * between every two of their points. One deck holds every corner at every travel; three load cases are three steps.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { add, dot, length, scale, sub, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { Deck, solvedByCcx, steel, step } from './ccx.ts';
import { type Corner, carrierOf, corners, LOADS } from './loaded-corners.ts';

const FILE = 'tests/reference/corner-trusses.test.ts';

const FIXED = ['upperFront', 'upperRear', 'lowerFront', 'lowerRear', 'toeInner', 'rodInner'] as const;
type Fixed = (typeof FIXED)[number];

/** Lever of the couples that stand for a shaft's moment, m. */
const LEVER = 0.1;

/** One corner of trusses put into the deck; answers its fixed nodes and how a load is put on it. */
function putTrusses(deck: Deck, { state, rodOn }: Corner) {
  const p = state.points;
  const fixed = Object.fromEntries(FIXED.map((name) => [name, deck.node(p[name], true)])) as Record<
    Fixed,
    number
  >;
  const [upper, lower, toe, rod] = [p.upperOuter, p.lowerOuter, p.toeOuter, p.rodOuter].map((at) =>
    deck.node(at),
  ) as [number, number, number, number];
  const contact = deck.node(p.contact);
  const centre = deck.node(p.wheelCentre);
  const tips = [0, 1, 2].map((i) =>
    deck.node(add(p.wheelCentre, [0, 1, 2].map((k) => (k === i ? LEVER : 0)) as unknown as Vec3)),
  );
  const bar = (a: number, b: number): void => deck.element('T3D2', 'BARS', a, b);
  const stiff = (nodes: readonly number[]): void =>
    nodes.forEach((a, k) => {
      for (const b of nodes.slice(k + 1)) bar(a, b);
    });
  stiff([upper, lower, toe, contact, centre, ...tips, ...(rodOn === 'upright' ? [rod] : [])]);
  const carrier = carrierOf(rodOn);
  for (const [side, outer] of [
    ['upper', upper],
    ['lower', lower],
  ] as const) {
    const inner = [fixed[`${side}Front`], fixed[`${side}Rear`]];
    if (side === carrier) stiff([...inner, outer, rod]);
    else for (const each of inner) bar(each, outer);
  }
  bar(fixed.toeInner, toe);
  bar(fixed.rodInner, rod);
  const put = ([force, atCentre, moment]: readonly [Vec3, Vec3, Vec3]) => {
    const couples = [0, 1, 2].flatMap((axis) => {
      const [arm, way] = [(axis + 1) % 3, (axis + 2) % 3];
      const pair = moment[axis]! / LEVER;
      return [
        [tips[arm]!, way + 1, pair],
        [centre, way + 1, -pair],
      ] as const;
    });
    return [
      ...force.map((value, k) => [contact, k + 1, value] as const),
      ...atCentre.map((value, k) => [centre, k + 1, value] as const),
      ...couples,
    ];
  };
  return { fixed, put };
}

/** Loads on one node and way must be one line each. */
function summed(
  loads: readonly (readonly [number, number, number])[],
): readonly (readonly [number, number, number])[] {
  const sums = new Map<string, [number, number, number]>();
  for (const [node, way, value] of loads) {
    const at = sums.get(`${node} ${way}`) ?? [node, way, 0];
    at[2] += value;
    sums.set(`${node} ${way}`, at);
  }
  return [...sums.values()];
}

test('six members of every demo corner, at three travels under three loads, as trusses by finite elements', (t) => {
  const deck = new Deck();
  const models = corners.map((corner) => putTrusses(deck, corner));
  deck.card(...steel(), '*SOLID SECTION, ELSET=BARS, MATERIAL=STEEL', '1.E-4', '*BOUNDARY');
  for (const { fixed } of models) deck.card(...Object.values(fixed).map((node) => `${node}, 1, 3`));
  LOADS.forEach((load) => {
    deck.card(...step(summed(models.flatMap(({ put }) => put(load)))));
  });
  const { steps, from } = solvedByCcx('corner-trusses', deck.text(), FILE);
  t.diagnostic(`compared with ${from}`);
  assert.equal(steps.length, LOADS.length);
  const carried = new Set<string>();
  let worst = 0;
  corners.forEach(({ what, state, rodOn, found }, c) => {
    const p = state.points;
    const carrier = carrierOf(rodOn);
    carried.add(rodOn);
    found.forEach((ours, k) => {
      const held = (name: Fixed): Vec3 => scale(steps[k]!.force[models[c]!.fixed[name]]!, -1);
      const told: Record<Fixed, Vec3> = {
        upperFront: ours.onTub.upperFront.force,
        upperRear: ours.onTub.upperRear.force,
        lowerFront: ours.onTub.lowerFront.force,
        lowerRear: ours.onTub.lowerRear.force,
        toeInner: ours.onTub.toeLink.force,
        rodInner: ours.onRocker.force,
      };
      const largest = Math.max(...FIXED.map((name) => length(told[name])));
      const off = (a: Vec3, b: Vec3, name: string): void => {
        const gap = length(sub(a, b)) / largest;
        worst = Math.max(worst, gap);
        // the program prints seven digits, and its bars give a hair sideways where they are tied together
        assert.ok(gap < 2e-6, `${what}, load ${k + 1}, ${name}: ${a} and ${b} by finite elements`);
      };
      for (const name of FIXED) {
        if (carrier === undefined || !name.startsWith(carrier)) off(told[name], held(name), name);
      }
      // the rod's wishbone: how its two joints share the force along their hinge hangs on how its legs bend, which
      // is the beams' test; the rest hangs on equilibrium alone
      if (carrier === undefined) return;
      const pair = [`${carrier}Front`, `${carrier}Rear`] as const;
      const hinge = unit(sub(p[pair[1]], p[pair[0]]));
      const across = (force: Vec3): Vec3 => sub(force, scale(hinge, dot(force, hinge)));
      for (const name of pair) off(across(told[name]), across(held(name)), name);
      const both = (of: (name: Fixed) => Vec3): Vec3 => add(of(pair[0]), of(pair[1]));
      off(
        both((name) => told[name]),
        both(held),
        `${carrier} wishbone`,
      );
    });
  });
  assert.deepEqual([...carried].sort(), ['lower wishbone', 'upper wishbone', 'upright']);
  t.diagnostic(`${corners.length} corners, worst difference ${worst.toExponential(1)} of the largest force`);
});
