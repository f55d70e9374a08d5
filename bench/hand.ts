/**
 * How fast a set follows the hand: a pull (pipes bent anew, least room, the set for the drawing) of each bend and of the
 * collector, on the demo car's own finding; against one adding up of all residuals and their slopes in the same run.
 *
 *   node --import tsx bench/hand.ts [--pulls 40]
 */
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { layoutFrom } from '../src/gaspath/route/from-elements.ts';
import { putLayout } from '../src/gaspath/route/layout.ts';
import { Rig } from '../src/gaspath/route/rig.ts';
import { siteOf } from '../src/gaspath/route/site.ts';
import { add, type Vec3 } from '../src/maths/vec3.ts';
import {
  findPrimaries,
  type HandAsk,
  openCar,
  PrimariesByHand,
  primariesProblem,
} from '../src/questions/index.ts';

const at = process.argv.indexOf('--pulls');
const pulls = at < 0 ? 40 : Number(process.argv[at + 1]);
const file = new URL('../cars/fenwold-201/car.yaml', import.meta.url);
const opened = openCar({ text: readFileSync(file, 'utf8') });
if (!opened.ok) throw new Error('the demo car does not open');
const put = primariesProblem(opened.car, 'left', []);
if (!put.reached) throw new Error(put.message);
const finding = findPrimaries(put, { seed: 1 });
while (finding.advance() !== 'done');
const solution = finding.solution()!;
const site = siteOf(put.problem);

const rig = new Rig(site);
putLayout(rig, layoutFrom(solution, site.radii[0]!));
rig.moves.fill(true);
rig.poseMoves = true;
rig.exact = true;
rig.spacing = 7;
rig.enter();
rig.layAll(true);
const one: number[] = [];
for (let k = 0; k < 200; k++) {
  const began = performance.now();
  rig.layAll(true);
  rig.weigh(true);
  one.push(performance.now() - began);
}

/** So many pulls there and back by some 20 mm, each from a hand that has just taken hold. */
function pulled(ask: (share: number) => HandAsk): number[] {
  const hand = new PrimariesByHand(put as typeof put & { reached: true }, solution, undefined, site);
  return Array.from({ length: pulls }, (_, k) => {
    const share = Math.sin((2 * Math.PI * (k + 1)) / pulls);
    const began = performance.now();
    hand.pull(ask(share));
    return performance.now() - began;
  });
}

const WAY: Vec3 = [0.01, -0.012, 0.012];
const bends = new PrimariesByHand(put, solution, undefined, site)
  .told()
  .bends.flatMap(({ cylinder, bend, at: from }) =>
    pulled((share) => ({
      what: 'bend',
      cylinder,
      bend,
      to: add(from, [share * WAY[0], share * WAY[1], share * WAY[2]]),
    })),
  );
const collector = pulled((share) => ({
  what: 'collector',
  shift: [0.02 * share, 0, 0],
  turn: [0, 0, 0],
  clock: 0,
}));

const part = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))]!;
const base = part(one, 0.5);
console.log(`one adding up of all residuals and slopes: median ${base.toFixed(2)} ms`);
for (const [name, list] of [
  ['bend', bends],
  ['collector', collector],
] as const)
  console.log(
    `${name}: ${list.length} pulls, median ${part(list, 0.5).toFixed(2)} ms (${(part(list, 0.5) / base).toFixed(1)} of that), 95 % within ${part(list, 0.95).toFixed(1)} ms, worst ${Math.max(...list).toFixed(1)} ms`,
  );
