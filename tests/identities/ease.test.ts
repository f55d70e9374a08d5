/** What would let primaries fit: each change stands the checker, undoes a planted lack, and never says less than it. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { EASED, type Eased, eased, Relaxing } from '../../src/gaspath/relax.ts';
import { readRouteProblem, solutionJson } from '../../src/gaspath/route/exchange.ts';
import type { RouteProblem } from '../../src/gaspath/route/problem.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';
import { near } from '../near.ts';

const file = new URL('../reference/routing/L1-s1.json', import.meta.url);
const read = readRouteProblem(JSON.parse(readFileSync(file, 'utf8')));
assert.ok(read.ok);
const GOOD: RouteProblem = read.problem;

function found(problem: RouteProblem, wanted: readonly Eased[]): Relaxing['found'] {
  const relaxing = new Relaxing(problem, 1, wanted);
  while (relaxing.advance());
  return relaxing.found;
}

/** The chord of a pipe with its straights is the least length of any: so much is lacking where less is asked. */
test('a length shorter than the way there: told how much longer, and not less than the geometry lacks', () => {
  const chord = Math.hypot(
    ...([0, 1, 2] as const).map((c) => {
      const { collector, ports } = GOOD;
      const to = collector.mode === 'free' ? nearest(collector, ports[0]!.p, c) : collector.origin[c]!;
      return to - ports[0]!.p[c]!;
    }),
  );
  const problem = { ...GOOD, length: { ...GOOD.length, target: chord - 40 } };
  const [longer] = found(problem, ['longer']);
  assert.ok(longer?.by !== undefined, 'something longer does');
  assert.ok(longer.by > 40 - GOOD.collector.ringRadius - GOOD.length.tol, `${longer.by}`);
  const asked = eased(problem, 'longer', longer.by)!;
  assert.deepEqual(verify(asked, solutionJson(longer.solution!)), []);
  assert.notDeepEqual(verify(problem, solutionJson(longer.solution!)), []);
});

const nearest = (
  { boxMin, boxMax }: { readonly boxMin: readonly number[]; readonly boxMax: readonly number[] },
  to: readonly number[],
  c: number,
): number => Math.min(boxMax[c]!, Math.max(boxMin[c]!, to[c]!));

test('what no step gives back is told as not found; what fits already fits with the least of the steps', () => {
  const { limits } = GOOD;
  const spoilt = { ...GOOD, limits: { ...limits, minStraightFlange: limits.minStraightFlange + 240 } };
  const [straights] = found(spoilt, ['straights']);
  assert.equal(straights!.by, undefined);
  assert.equal(straights!.tried, 20);
  const [clearance] = found(GOOD, ['clearance']);
  near(clearance!.by!, 0.5 / 4, 1e-12);
});

test('each easing changes one thing and nothing else', () => {
  const changes: Readonly<Record<Eased, readonly string[]>> = {
    longer: ['length'],
    shorter: ['length'],
    clearance: ['clearance'],
    collector: ['collector'],
    radius: ['radii'],
    straights: ['limits'],
    bends: ['limits'],
  };
  for (const what of EASED) {
    const by = what === 'bends' ? 1 : 2;
    const problem = { ...GOOD, radii: [90] };
    const after = eased(problem, what, by)!;
    const changed = (Object.keys(problem) as (keyof RouteProblem)[]).filter(
      (key) => JSON.stringify(problem[key]) !== JSON.stringify(after[key]),
    );
    assert.deepEqual(changed, changes[what], what);
  }
  assert.equal(
    eased({ ...GOOD, radii: [GOOD.tube.od + 1] }, 'radius', 2),
    undefined,
    'closer than the tube is wide',
  );
  assert.equal(eased(GOOD, 'straights', 500), undefined);
});
