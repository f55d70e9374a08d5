/**
 * Shigley's Mechanical Engineering Design, 8th ed., instructor's solutions, ch. 6 (P: read), and Miner's rule.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { barLife, cyclesBorne, stressCycleLine } from '../../src/loadpath/spring/bar-life.ts';
import { Working } from '../../src/working/working.ts';
import { near } from '../near.ts';

test('Prob. 6-15: S_ut 551, S_e 276, f 0.9: b = −0.084828 and 45 800 cycles at 358.5 MPa', () => {
  const working = new Working();
  const line = { thousand: 0.9 * 551e6, million: 276e6 };
  near(cyclesBorne(line, 358.5e6, working), 45800, 50); // three printed figures
  near(working.steps.find((step) => step.symbol === 'b')!.value, -0.084828, 5e-7);
});

test('table 6-2 and eq. 6-20: surface and size factors within the line of a bar', () => {
  const of = { tensileStrength: 1000e6, diameter: 0.02 };
  const turned = stressCycleLine({ ...of, surface: 'as turned' }).million;
  const ground = stressCycleLine({ ...of, surface: 'ground' }).million;
  // machined 4.51·S^−0.265 against ground 1.58·S^−0.085
  near(turned / ground, (4.51 * 1000 ** -0.265) / (1.58 * 1000 ** -0.085), 1e-12);
  near(ground, 0.59 * 1.58 * 1000 ** -0.085 * 1.24 * 20 ** -0.107 * 500e6, 1);
});

test('equal damage (Palmgren and Miner): two half duties do as much as one whole', () => {
  const bar = {
    tensileStrength: 1900e6,
    diameter: 0.02,
    surface: 'ground and peened' as const,
    residualAtSkin: 0,
  };
  const block = { what: 'lap', low: 100e6, high: 700e6, cycles: 10 };
  const whole = barLife({ ...bar, duty: [block] });
  const halves = barLife({
    ...bar,
    duty: [
      { ...block, cycles: 5 },
      { ...block, cycles: 5 },
    ],
  });
  near(halves.repeats.middle / whole.repeats.middle, 1, 1e-12);
  assert.ok(whole.repeats.low < whole.repeats.middle && whole.repeats.middle < whole.repeats.high);
  near(halves.blocks[0]!.share, 0.5, 1e-12);
});

test('presetting towards bump lengthens the life, a turned skin shortens it, a reversal is told', () => {
  const of = {
    tensileStrength: 1900e6,
    diameter: 0.02,
    duty: [{ what: 'lap', low: 100e6, high: 700e6, cycles: 1 }],
  };
  const life = (surface: 'as turned' | 'ground' | 'ground and peened', residualAtSkin: number): number =>
    barLife({ ...of, surface, residualAtSkin }).repeats.middle;
  assert.ok(life('as turned', 0) < life('ground', 0));
  assert.ok(life('ground', 0) < life('ground and peened', 0));
  assert.ok(life('ground', -300e6) > life('ground', 0));
  const back = barLife({
    ...of,
    surface: 'ground',
    residualAtSkin: -300e6,
    duty: [{ what: 'droop', low: -50e6, high: 300e6, cycles: 1 }],
  });
  assert.equal(back.reversed, true);
  assert.equal(back.notes.length, 2);
});
