/** Which of several sets is beaten: against the definition of Pareto's order, on draws by chance. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Chance } from '../../src/gaspath/route/chance.ts';
import { beats, type Weighed } from '../../src/questions/index.ts';

const drawn = (chance: Chance): Weighed => ({
  spare: chance.below(4) / 1000,
  passed: chance.below(2),
  bends: 10 + chance.below(3),
  turned: 8 + chance.below(3) / 4,
  welds: 30 + chance.below(3),
  mass: 4 + chance.below(3) / 10,
});

test('beaten is who is nowhere better and somewhere worse; nobody beats himself, no two one another', () => {
  const chance = new Chance(5);
  let beaten = 0;
  for (let k = 0; k < 2000; k += 1) {
    const [a, b] = [drawn(chance), drawn(chance)];
    // the more the better of each
    const worth = ({ spare, passed, bends, turned, welds, mass }: Weighed) => [
      spare!,
      -passed,
      -bends,
      -turned,
      -welds,
      -mass,
    ];
    const [wa, wb] = [worth(a), worth(b)];
    const expected = wa.every((w, n) => w >= wb[n]!) && wa.some((w, n) => w > wb[n]!);
    assert.equal(beats(a, b), expected);
    assert.equal(beats(a, a), false);
    assert.ok(!(beats(a, b) && beats(b, a)));
    beaten += Number(expected);
  }
  assert.ok(beaten > 50, `${beaten}`);
});

test('what no shop could tell apart beats nobody; no wall near is more room than any', () => {
  const one: Weighed = { spare: 0.003, passed: 0, bends: 12, turned: 9, welds: 30, mass: 5 };
  assert.equal(beats({ ...one, spare: 0.00305, turned: 8.99, mass: 4.995 }, one), false);
  const { spare: _, ...free } = one;
  assert.equal(beats(free, one), true);
});
