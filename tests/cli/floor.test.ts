/** `floor`, `adjusters`, `set-up` and `weighing`: the published form, what the words say, and bad input. */
import assert from 'node:assert/strict';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { z } from 'zod';
import { flatpatch, ROOT } from './flatpatch.ts';

let published: z.ZodType;
let folder: string;

before(async () => {
  const { out } = await flatpatch(['schema', '--of', 'answers']);
  published = z.fromJSONSchema(JSON.parse(out));
  folder = await mkdtemp(join(tmpdir(), 'flatpatch-floor-'));
});
after(() => rm(folder, { recursive: true, force: true }));

// biome-ignore lint/suspicious/noExplicitAny: held against the published form
async function answerOf(args: readonly string[], code = 0): Promise<any> {
  const ran = await flatpatch([...args, '--json']);
  assert.equal(ran.code, code, `${args.join(' ')}: ${ran.err}`);
  const answer = JSON.parse(ran.out);
  const held = published.safeParse(answer);
  assert.ok(held.success, `${args.join(' ')}: ${held.error?.message.slice(0, 2000)}`);
  return answer;
}

/** The demo car with something in its file changed. */
async function changed(from: string, to: string): Promise<string> {
  const car = join(
    folder,
    String(Math.abs([...to].reduce((sum, each) => sum * 31 + each.charCodeAt(0), 7) % 1e9)),
  );
  await cp(join(ROOT, 'cars', 'fenwold-201'), car, { recursive: true });
  const path = join(car, 'car.yaml');
  const text = await readFile(path, 'utf8');
  assert.ok(text.includes(from));
  await writeFile(path, text.replace(from, to));
  return car;
}

test('floor, adjusters, set-up and weighing keep their published form', async () => {
  const floor = await answerOf(['floor', 'ashgarth-501', '--bars', 'connected', '--no-spread']);
  assert.ok(floor.is.readings.some(({ id }: { id: string }) => id === 'barTorque.front'));
  const table = await answerOf(['adjusters', 'fenwold-201']);
  for (const { effects } of table.is.adjusters) assert.equal(effects.length, table.is.readings.length);
  const setUp = await answerOf(['set-up', 'fenwold-201']);
  assert.ok(setUp.is.moves.length > 0);
  const weighed = await answerOf(['weighing', 'fenwold-201', '--sheet', 'as found, 11 May']);
  assert.equal(weighed.is.figures[0].id, 'total');
});

test('set-up says what to turn, what will be read, and the cautions', async () => {
  const { out, code } = await flatpatch(['set-up', 'fenwold-201']);
  assert.equal(code, 0);
  assert.match(
    out,
    /flats? (longer|shorter).*turn the tube (clockwise|anticlockwise), seen from the (rocker|outboard) end/,
  );
  assert.match(out, /this floor will show/);
  assert.match(out, /jam nut/);
  assert.doesNotMatch(out, /\bsafe\b/i);
});

test('an adjuster that is left stays, and kinds that are not asked for are not moved', async () => {
  const { is } = await answerOf([
    'set-up',
    'fenwold-201',
    '--move',
    'rod, track rod, camber shims, caster shims',
    '--leave',
    'front right pushrod',
  ]);
  for (const { adjuster, kind } of is.moves) {
    assert.notEqual(adjuster, 'front right pushrod');
    assert.notEqual(kind, 'platform');
  }
});

test('slips end in exit code 2 with where and what', async () => {
  for (const [args, code] of [
    [['floor', 'fenwold-201', '--sheet', 'no such'], 'asked/sheet'],
    [['floor', 'fenwold-201', '--bars', 'on'], 'asked/bars'],
    [['adjusters', 'fenwold-201', '--of', 'colour'], 'asked/of'],
    [['set-up', 'fenwold-201', '--move', 'wheels'], 'asked/move'],
    [['weighing', 'fenwold-201', '--lift', '400 mm'], 'asked/raised'],
    [['weighing', 'fenwold-201', '--front-raised', '280 kg', '--lift', '20 mm'], 'asked/lift'],
  ] as const) {
    const { problems } = await answerOf(args, 2);
    assert.equal(problems[0].code, code, args.join(' '));
  }
  const empty = await answerOf(['set-up', await changed('rearRight: 172.7 kg', 'rearRight: 0 kg')], 2);
  assert.equal(empty.problems[0].code, 'sheet/empty-pad');
  const past = await answerOf(
    [
      'set-up',
      await changed(
        '      state: as found\n',
        '      state: as found\n      moved: { front left pushrod: 80 }\n',
      ),
    ],
    2,
  );
  assert.equal(past.problems[0].code, 'sheet/past-thread');
  const weighed = await changed('rearRight: 172.7 kg', 'rearRight: 0 kg ');
  const pad = await answerOf(['weighing', weighed, '--sheet', 'as found, 11 May'], 2);
  assert.equal(pad.problems[0].code, 'sheet/empty-pad');
  const shims = await answerOf(
    [
      'set-up',
      await changed(
        '      state: as found\n',
        '      state: as found\n      moved: { front left camber shims: 3.3 }\n',
      ),
    ],
    2,
  );
  assert.equal(shims.problems[0].code, 'sheet/no-such-stack');
  const height = await answerOf(['check', await changed('front left: 37.6 mm', 'front lefd: 37.6 mm')], 2);
  const told = JSON.stringify(height);
  assert.match(told, /floor\/unknown-height/);
  assert.match(told, /Did you mean/);
});

test('what may be a slip of the pen is told above the moves, with what to look at', async () => {
  for (const [from, to, words] of [
    ['rearRight: 172.7 kg', 'rearRight: 152.7 kg', /add up to 626\.7 kg/],
    ['rearLeft: 2.4 mm', 'rearLeft: -2.4 mm', /toe at the rim, rear left has a sign that neither/],
    [
      'frontLeft: 130.1 kg, frontRight: 150.7 kg',
      'frontLeft: 150.7 kg, frontRight: 130.1 kg',
      /weight, front left and weight, front right would suit .* changed over/,
    ],
  ] as const) {
    const { out, code } = await flatpatch(['set-up', await changed(from, to)]);
    assert.equal(code, 0);
    const text = out.replaceAll(/\s+/g, ' ');
    assert.match(text, words);
    assert.ok(text.search(words) < text.indexOf('Moves, all in one go'), to);
  }
});

test('a car without a body or without sheets is told what to measure, exit code 3', async () => {
  const floor = await flatpatch(['floor', 'pellmoor-7b', '--no-spread']);
  assert.equal(floor.code, 3);
  assert.match(floor.err, /raised axle/);
  const setUp = await flatpatch(['set-up', 'ashgarth-501']);
  assert.equal(setUp.code, 3);
  assert.match(setUp.err, /floor, sheet/);
});
