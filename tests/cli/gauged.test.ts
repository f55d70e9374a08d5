/** `strings`, `bump-steer`, `scales` and `levels`: the published form, facts of the trade, and what is asked wrongly. */
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { z } from 'zod';
import { SET_UP_CAUTION, STANDING_CAUTION } from '../../src/questions/cautions.ts';
import { near } from '../near.ts';
import { flatpatch } from './flatpatch.ts';

const CAR = 'fenwold-201';
const DEG = Math.PI / 180;

interface Figure {
  readonly id: string;
  readonly of: string;
  readonly value: number;
  readonly u: number;
}

interface Is {
  readonly figures: readonly Figure[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

let published: z.ZodType;

before(async () => {
  const { out } = await flatpatch(['schema', '--of', 'answers']);
  published = z.fromJSONSchema(JSON.parse(out));
});

async function answerOf(args: readonly string[]): Promise<Is> {
  const ran = await flatpatch([...args, '--json']);
  assert.equal(ran.code, 0, `${args.join(' ')}: ${ran.err}`);
  const answer = JSON.parse(ran.out) as { is: Is };
  const held = published.safeParse(answer);
  assert.ok(held.success, `${args.join(' ')}: ${held.error?.message.slice(0, 2000)}`);
  assert.ok(answer.is.cautions.includes(STANDING_CAUTION));
  return answer.is;
}

const figure = ({ figures }: Is, of: string, id: string): Figure => {
  const found = figures.find((each) => each.of === of && each.id === id);
  assert.ok(found, `${of} ${id}`);
  return found;
};

/** Common practice, no source: over a 330 mm rim a millimetre is 0.17 degrees, and an axle points where its wheels do in the mean. */
test('a millimetre over 330 mm is 0.17 degrees; left in and right out by as much points the axle to the right', async () => {
  const is = await answerOf([
    'strings',
    CAR,
    '--rim',
    'front-left 151 mm, 150 mm',
    '--rim',
    'front-right 150 mm, 151 mm',
    '--across',
    '330 mm',
  ]);
  near(figure(is, 'front left', 'toe').value / DEG, 0.1736, 1e-4);
  near(figure(is, 'front left', 'toeAtRim').value, 1e-3, 1e-12);
  near(figure(is, 'front axle', 'total').value, 0, 1e-12);
  near(figure(is, 'front axle', 'points').value / DEG, -0.1736, 1e-4);
  assert.ok(is.cautions.includes(SET_UP_CAUTION));
  // the sheet of this car wants front wheels that toe out
  assert.ok(is.notes.some((note) => note.includes('other way') && note.includes('front left')));
});

test('plates count the other way from strings: nearer together in front is toe-in', async () => {
  const is = await answerOf(['strings', CAR, '--plates', 'front 1500 mm, 1502 mm', '--across', '330 mm']);
  near(figure(is, 'front plates', 'toe').value / DEG, 0.1736, 1e-4);
});

test('the geometry of bump steer is the toe of flatpatch corner over the same travel', async () => {
  const toeAt = async (travel: string): Promise<number> => {
    const ran = await flatpatch(['corner', CAR, '--wheel', 'front-left', '--travel', travel, '--json']);
    const figures = JSON.parse(ran.out).corners[0].figures as readonly { id: string; value: number }[];
    return figures.find(({ id }) => id === 'toe')!.value;
  };
  const change = (await toeAt('20 mm')) - (await toeAt('0 mm'));
  const read = 10 - 280 * Math.sin(change);
  const rows = (front: number) => [
    'bump-steer',
    CAR,
    '--wheel',
    'front-left',
    '--apart',
    '280 mm',
    '--row',
    '0 mm, 10 mm, 10 mm',
    '--row',
    `20 mm, ${front.toFixed(6)} mm, 10 mm`,
  ];
  const is = await answerOf(rows(read));
  near(figure(is, '+20.0 mm', 'geometry').value, change, 1e-12);
  near(figure(is, '+20.0 mm', 'apart').value, 0, 1e-7);
  assert.ok(figure(is, '+20.0 mm', 'geometry').u > 0);
  assert.ok(is.notes.some((note) => note.includes('agree')));
  // a whole degree out is no spread of anything
  const off = await answerOf(rows(read - 5));
  assert.ok(off.notes.some((note) => note.startsWith('Further apart') && note.includes('+20.0 mm')));
});

/** By hand: 61.3 − 0.2 = 61.1 kg for 60 kg is 1.83 % too much, so 181.4 − 0.2 kg is 177.94 kg. */
test('a pad that shows too much under a known mass is told, and its reading put right', async () => {
  const is = await answerOf([
    'scales',
    CAR,
    '--known',
    '60 kg ± 0.05 kg',
    '--pad',
    'rear-left 61.3 kg, 0.2 kg',
    '--pad',
    'rear-right 60.0 kg',
    '--read',
    'rear-left 181.4 kg',
  ]);
  near(figure(is, 'rear left', 'factor').value, 61.1 / 60, 1e-12);
  near(figure(is, 'rear left', 'weight').value, 177.94, 5e-3);
  assert.ok(is.notes.some((note) => note.includes('rear left') && !note.includes('rear right')));
});

/** By hand: a pad 0.4 mm nearer to the water is 0.4 mm higher. */
test('a pad nearer to the water is higher; packing brings all to the highest', async () => {
  const pads = ['front-left 212.0', 'front-right 211.6', 'rear-left 212.3', 'rear-right 212.1'];
  const is = await answerOf(['levels', CAR, ...pads.flatMap((pad) => ['--pad', `${pad} mm ± 0.2 mm`])]);
  near(figure(is, 'front right', 'height').value, 0.4e-3, 1e-12);
  near(figure(is, 'front right', 'packing').value, 0, 1e-12);
  near(figure(is, 'rear left', 'packing').value, 0.7e-3, 1e-12);
  // right front and left rear stand 0.4 − 0.3 mm over, the other two −0.1 mm: half of 0.2 mm
  near(figure(is, 'all pads', 'warp').value, 0.1e-3, 1e-12);
  near(figure(is, 'all pads', 'warp').u, 0.2e-3, 1e-12);
});

test('what is asked wrongly is told before it is used', async () => {
  const wrong: readonly (readonly [args: readonly string[], code: string])[] = [
    [['strings', CAR], 'asked/nothing'],
    [['strings', CAR, '--rim', 'front 150 mm, 151 mm'], 'asked/place'],
    [['strings', CAR, '--rim', 'constructor 150 mm, 151 mm'], 'asked/place'],
    [['strings', CAR, '--rim', 'front-left 150 mm'], 'asked/place'],
    [['strings', CAR, '--rim', 'front-left 150, 151 mm'], 'asked/amount'],
    [
      ['strings', CAR, '--rim', 'front-left 150 mm, 151 mm', '--rim', 'front-left 150 mm, 151 mm'],
      'asked/twice',
    ],
    [['bump-steer', CAR, '--wheel', 'front-left', '--apart', '280 mm'], 'asked/nothing'],
    [['bump-steer', CAR, '--wheel', 'front-left', '--apart', '280 mm', '--row', '0 mm, 1 mm'], 'asked/row'],
    [
      ['bump-steer', CAR, '--wheel', 'front-left', '--apart', '28 mm', '--row', '0 mm, 1 mm, 1 mm'],
      'asked/apart',
    ],
    [['scales', CAR, '--known', '20 kg'], 'asked/nothing'],
    [
      ['scales', CAR, '--known', '20 kg', '--pad', 'front-left 20 kg', '--read', 'rear-left 180 kg'],
      'asked/pad',
    ],
    [['levels', CAR, '--pad', 'front-left 212 mm'], 'asked/nothing'],
  ];
  for (const [args, code] of wrong) {
    const ran = await flatpatch([...args, '--json']);
    assert.equal(ran.code, 2, args.join(' '));
    assert.equal(JSON.parse(ran.out).problems[0].code, code, args.join(' '));
  }
  for (const args of [
    ['strings', CAR, '--rim', 'front-left 150 mm, 250 mm'],
    ['scales', CAR, '--known', '20 kg', '--pad', 'front-left 0 kg'],
    [
      'bump-steer',
      CAR,
      '--wheel',
      'front-left',
      '--apart',
      '280 mm',
      '--row',
      '0 mm, 1 mm, 1 mm',
      '--row',
      '900 mm, 1 mm, 1 mm',
    ],
  ]) {
    const ran = await flatpatch(args);
    assert.equal(ran.code, 3, `${args.join(' ')}: ${ran.err}`);
  }
});
