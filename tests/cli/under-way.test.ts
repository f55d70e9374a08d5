/** The commands of the car under way: their published form, words that say the same, what is asked wrongly. */
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { z } from 'zod';
import { flatpatch } from './flatpatch.ts';

let published: z.ZodType;

before(async () => {
  const { out } = await flatpatch(['schema', '--of', 'answers']);
  published = z.fromJSONSchema(JSON.parse(out));
});

// the shape has just been held against the published form
// biome-ignore lint/suspicious/noExplicitAny: an answer of any command
async function answerOf(args: readonly string[]): Promise<any> {
  const ran = await flatpatch([...args, '--json']);
  assert.equal(ran.code, 0, `${args.join(' ')}: ${ran.err}`);
  const answer = JSON.parse(ran.out);
  const held = published.safeParse(answer);
  assert.ok(held.success, `${args.join(' ')}: ${held.error?.message.slice(0, 2000)}`);
  return answer;
}

const CAR = 'fenwold-201';

test('every command keeps its form, with a working as well', async () => {
  for (const args of [
    ['pressures', CAR, '--air', '14 degC', '--working', 'front.coldPressure'],
    [
      'ratios',
      CAR,
      '--working',
      'car.topSpeed',
      '--targets',
      '105, 140, 175, 210, 245, 285 km/h',
      '--finals',
    ],
    ['transfer', CAR, '--lateral', '1 g', '--no-spread', '--against', 'as run', '--working', 'front.lateral'],
    ['heights', CAR, '--speeds', '0, 200 km/h', '--no-spread'],
    ['brakes', CAR, '--no-spread', '--working', 'car.frontShare'],
    ['fuel', CAR, '--laps', '10', '--working', 'session.needed'],
  ]) {
    const answer = await answerOf(args);
    assert.ok(answer.is.reached);
    assert.ok(answer.is.figures.length > 3);
    assert.ok(answer.is.cautions.length > 1);
    if (args.includes('--working')) assert.ok(answer.is.working.steps.length > 0, args[0]);
  }
});

test('words and JSON are one answer: a cold pressure', async () => {
  const args = ['pressures', CAR, '--air', '14 degC', '--barometer', '1000 mbar'];
  const { is } = await answerOf(args);
  // biome-ignore lint/suspicious/noExplicitAny: held against the form above
  const cold = is.figures.find((each: any) => each.of === 'front' && each.id === 'coldPressure').value / 1e5;
  const { out } = await flatpatch(args);
  const said = Number(/cold pressure to set +([\d.]+) ±/.exec(out)![1]);
  // printed to a millibar
  assert.ok(Math.abs(said - cold) < 0.0006, `${said} bar, ${cold} bar`);
  const psi = Number(
    /cold pressure to set +([\d.]+) ±/.exec((await flatpatch([...args, '--units', 'in-lbf'])).out)![1],
  );
  // NIST SP 811, appendix B.8: 1 psi = 6894.757 Pa; printed to 0.01 psi
  assert.ok(Math.abs(psi - (cold * 1e5) / 6894.757) < 0.006, `${psi} psi`);
});

test('a temperature within a spread is a difference: no zero of a scale in it', async () => {
  const { out } = await flatpatch([
    'pressures',
    CAR,
    '--air',
    '14 degC ± 2 K',
    '--run',
    'front-left 1.2 bar, 15 degC, 1.7 bar',
    '--shares',
  ]);
  const line = /temperature of the gas hot, from that run +([\d.]+) ± ([\d.]+) °C/.exec(out)!;
  assert.ok(Number(line[1]) > 60 && Number(line[1]) < 110 && Number(line[2]) < 15, line[0]);
  const share = /gas when read cold {2}\[[^\]]+\], ([\d.]+) °C/.exec(out)!;
  assert.ok(Number(share[1]) < 5, share[0]);
});

test('what is asked wrongly is told, and ends with exit code 2', async () => {
  for (const [args, words] of [
    [['pressures', CAR, '--air', '14'], 'has no unit'],
    [['pressures', CAR, '--air', '14 degC', '--hot', 'middle 1.5 bar'], 'is not a tyre and an amount'],
    [['pressures', CAR, '--air', '14 degC', '--run', 'front-left 1.2 bar, 15 degC'], '3 amounts'],
    [['ratios', CAR, '--pairs', '13-35'], 'is no pair'],
    [['ratios', CAR, '--targets', '100 bananas'], 'is not a unit'],
    [['fuel', CAR, '--laps', '12', '--power', '300 kW'], 'takes all three'],
    [['brakes', CAR, '--working', 'car.frontShar'], 'Did you mean "car.frontShare"?'],
    [['transfer', CAR, '--against', 'no such spec', '--no-spread'], 'no such spec'],
  ] as const) {
    const { code, err } = await flatpatch(args);
    assert.equal(code, 2, `${args.join(' ')}: ${err}`);
    assert.ok(err.includes(words), err);
  }
});

test('what cannot be ends with exit code 3', async () => {
  for (const args of [
    ['brakes', 'pellmoor-7b'],
    ['fuel', 'pellmoor-7b', '--laps', '3'],
    ['ratios', 'ashgarth-501'],
    ['transfer', CAR, '--kerb', 'rear-left 2', '--no-spread'],
  ]) {
    assert.equal((await flatpatch(args)).code, 3, args.join(' '));
  }
});
