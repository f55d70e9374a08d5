/** A bank's primaries on the command line: found, read back, cut, drawn; what does not suit any more is refused. */
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { answerForm } from '../../src/cli/answers/index.ts';
import { near } from '../near.ts';
import { COMMAND, flatpatch, HOME, ROOT } from './flatpatch.ts';

const BANK = ['--bank', 'left'];
let folder: string;
let solution: string;
// biome-ignore lint/suspicious/noExplicitAny: held against its form below
let found: any;

before(async () => {
  folder = await mkdtemp(join(tmpdir(), 'flatpatch-primaries-'));
  solution = join(folder, 'left.json');
  found = await answerOf(['primaries', 'ashgarth-501', ...BANK, '--solution', solution]);
});
after(() => rm(folder, { recursive: true, force: true }));

// biome-ignore lint/suspicious/noExplicitAny: held against the form of answers
async function answerOf(args: readonly string[], code = 0): Promise<any> {
  const ran = await flatpatch([...args, '--json']);
  assert.equal(ran.code, code, `${args.join(' ')}: ${ran.err}`);
  return answerForm.parse(JSON.parse(ran.out));
}

/**
 * By hand from the car file: 655 mm from the port face, less 8 mm of flange, is 647 mm. Weight by Pappus: pi (47.6 - 1)
 * 1 mm times 647 mm at 8440 kg/m3 (alloy 625, from memory). Circular orders are the firing order's: from each inlet to
 * the next one goes the same step round the ring of five.
 */
test('primaries: five of one length, in firing order round the ring, none nearer than it may', () => {
  const { set } = found;
  assert.equal(set.pipes.length, 5);
  for (const pipe of set.pipes) {
    near(pipe.length, 0.647, 5e-5);
    near(pipe.mass, Math.PI * 0.0466 * 0.001 * 0.647 * 8440, 1e-3);
    assert.ok(pipe.tightest.spare > -1e-5);
  }
  const inlets: number[] = set.order.map(({ inlet }: { inlet: number }) => inlet);
  const steps = inlets.map((inlet, k) => (inlets[(k + 1) % 5]! - inlet + 10) % 5);
  assert.equal(new Set(steps).size, 1, inlets.join(' '));
  assert.ok(steps[0] === 1 || steps[0] === 4);
  assert.match(found.cautions.join(' '), /prove it on the car/);
  // hot beside cold, ten nuts, one welded set: 14.0e-6 1/K over 647 mm and 700 K
  const { hot, nuts, removal } = found.inCar;
  near(hot.pipes[0].grows, 14.0e-6 * 0.647 * 700, 1e-6);
  assert.equal(nuts.length, 10);
  assert.equal(removal.off.length + removal.held.length, 1);
  // the file says what must hold, and the set does
  assert.deepEqual(
    found.holds.map(({ kind, asked, holds }: Record<string, unknown>) => [kind, asked, holds]),
    ['hot', 'tools', 'removal'].map((kind) => [kind, true, true]),
  );
});

test('what must hold is asked by its word; what is none, or what the file tells nothing of, is refused', async () => {
  const asked = ['primaries', 'ashgarth-501', ...BANK, '--from', solution, '--hold'];
  assert.equal((await answerOf([...asked, 'hot,brakes'], 2)).problems[0].code, 'asked/hold');
  const untold = (await answerOf([...asked, 'slip'], 2)).problems[0];
  assert.equal(untold.code, 'asked/hold-untold');
  assert.match(untold.remedy, /joins: slip/);
  const none = await answerOf([...asked, 'none']);
  assert.ok(none.holds.every(({ asked: was, holds }: Record<string, boolean>) => !was && holds));
});

test('cuts: the pieces of each pipe come to its length, and no stock bend gives more than it has', async () => {
  const cuts = await answerOf(['cuts', 'ashgarth-501', ...BANK, '--solution', solution]);
  const used = new Map<string, number>();
  for (const { cylinder } of found.set.pipes) {
    const own = cuts.pieces.filter(({ pipe }: { pipe: string }) => pipe === String(cylinder));
    const sum = own.reduce(
      (all: number, each: { length: number; legs?: number[] }) =>
        all + each.length + (each.legs ?? []).reduce((a, b) => a + b, 0),
      0,
    );
    near(sum, 0.647, 1e-9);
    // one weld more than pieces: the ends are welded too
    const welds = cuts.welds.filter(({ pipe }: { pipe: string }) => pipe === String(cylinder));
    assert.equal(welds.length, own.length + 1);
    for (const each of own) {
      const key = `${each.stock} ${each.number}`;
      if (each.kind === 'bend') used.set(key, (used.get(key) ?? 0) + each.angle);
    }
  }
  for (const [key, angle] of used) assert.ok(angle <= (key.startsWith('U') ? Math.PI : Math.PI / 2), key);
  const { out } = await flatpatch([
    'cuts',
    'ashgarth-501',
    ...BANK,
    '--solution',
    solution,
    '--csv',
    'bends',
  ]);
  assert.match(out, /^pipe,bend,feed \(mm\),rotation \(deg\),angle \(deg\)/);
  assert.equal(out.trim().split(/\r\n/).length, 1 + cuts.bends.length);
});

test('wraps and solids: files that are what they are called', async () => {
  const out = join(folder, 'templates');
  const args = ['ashgarth-501', ...BANK, '--solution', solution];
  const wraps = await answerOf(['wraps', ...args, '--out', out, '--form', 'svg']);
  assert.deepEqual((await readdir(out)).sort(), [...wraps.files].sort());
  assert.ok(wraps.templates.includes('flange') && wraps.templates.includes('collector, merge cut'));
  const step = join(folder, 'left.step');
  await answerOf(['solids', ...args, '--out', step]);
  assert.match(await readFile(step, 'utf8'), /^ISO-10303-21;[\s\S]*primary 1/);
  assert.equal((await answerOf(['solids', ...args, '--out', 'left.dwg'], 2)).problems[0].code, 'asked/out');
});

/**
 * By hand: a cord of 647 + 23.8 Σθ along the outside of pipe 1 is 647 mm on its middle; 648.5 beside it is 1.5 mm more.
 * The wave goes there and back: 2 × 1.5 mm at 550 m/s is 5.4545 µs, and 15000 rpm turns 90 000° a second: 0.4909°.
 */
test('as-built: a cord on the outside over-reads, and what the difference is at the crank', async () => {
  const [one, two] = found.set.pipes;
  const cord = 647 + (47.6 / 2) * one.turned;
  const file = join(folder, 'made.csv');
  await writeFile(file, `pipe,length mm,along,u mm\n1,${cord},outside,0.3\n2,648.5,middle,0.4\n`);
  const asked = ['as-built', 'ashgarth-501', ...BANK, '--solution', solution, '--measured', file];
  const made = await answerOf([...asked, '--speed', '15000 rpm', '--sound', '550 m/s']);
  near(made.pipes[0].made, 0.647, 1e-9);
  near(made.pipes[1].difference, 0.0015 + 0.647 - two.length, 1e-9);
  near(made.within, 0.0015, 1e-9);
  near(made.u, 0.0005, 1e-9);
  assert.equal(made.told, true);
  near((made.crank * 180) / Math.PI, 0.4909, 1e-4);
  await writeFile(file, 'pipe,length mm,along\n7,640,round\n');
  assert.equal((await answerOf(asked, 2)).problems[0].code, 'made/along');
});

test('a set that does not suit the car file any more is told and not cut; without a rack no stock is named', async () => {
  const car = join(folder, 'car');
  await cp(join(ROOT, 'cars/ashgarth-501'), car, { recursive: true });
  const text = await readFile(join(car, 'car.yaml'), 'utf8');
  const file = (of: string): Promise<void> => writeFile(join(car, 'car.yaml'), of);
  const ask = ['cuts', car, ...BANK, '--solution', solution];
  await file(text.replace('length: 655 mm, from: port face', 'length: 665 mm, from: port face'));
  assert.match((await answerOf(ask, 3)).message, /Cylinder 1: .*length/i);
  await file(text.replace(/ {2}rack:[\s\S]*?leastPiece: .*\n/, ''));
  const bare = await answerOf(ask);
  assert.equal(bare.racked, false);
  assert.match(bare.notes[0], /tells no rack/);
  assert.ok(bare.pieces.every((each: { stock?: string }) => each.stock === undefined));
  // 655 mm cannot span from a port to a collector 3 m away: told with its cause, and no search
  await file(
    text.replace('"-1950, 262, 178 mm"', '"-4950, 262, 178 mm"').replace('"-2150, 262', '"-5150, 262'),
  );
  const never = await answerOf(['primaries', car, ...BANK, '--seconds', '2'], 3);
  assert.equal(never.stands, 'impossible');
  assert.ok(never.causes.length > 0);
  // three metres away nothing of what is tried brings it back, and that is said
  for (const { by } of never.wouldDo) assert.equal(by, undefined);
});

test('two sets to choose from: each written, each checked, best first; the same from one thread', async () => {
  const files = ['', '-2'].map((tail) => join(folder, `choice${tail}.json`));
  const asked = ['primaries', 'fenwold-201', '--bank', 'left', '--sets', '2', '--seconds', '100'];
  const answer = await answerOf([...asked, '--threads', '2', '--solution', files[0]!]);
  assert.equal(answer.sets.length, 2);
  const written = await Promise.all(files.map((each) => readFile(each, 'utf8')));
  assert.equal(new Set(written).size, 2);
  // each is read back and checked by the next command, and weighs what was told of it
  for (const [k, file] of files.entries()) {
    const read = await answerOf(['primaries', 'fenwold-201', '--bank', 'left', '--from', file]);
    assert.equal(
      read.set.pipes.reduce((sum: number, { bends }: { bends: number }) => sum + bends, 0),
      answer.sets[k].bends,
    );
  }
  assert.equal(answer.sets[0].beaten, false);
  await answerOf([...asked, '--threads', '1', '--solution', files[0]!]);
  assert.equal(await readFile(files[0]!, 'utf8'), written[0]);
});

test('primaries shorter than the way: told by how much they would have to be longer, and by nothing less', async () => {
  const asked = ['primaries', 'fenwold-201', '--bank', 'left', '--spec', 'short primaries'];
  const { causes, wouldDo } = await answerOf([...asked, '--seconds', '60'], 3);
  assert.match(causes[0], /Cylinder/);
  const longer = wouldDo.find(({ what }: { what: string }) => what === 'longer');
  // the cause tells the least length that anything could have: what is found is longer than that
  const [, least, target] = /(\d+\.\d) mm already.*?(\d+\.\d) mm is asked/s.exec(causes.join(' '))!;
  assert.ok(1000 * longer.by > Number(least) - Number(target), longer.words);
  assert.ok(longer.by < 0.3);
  assert.match(longer.words, /^A set was found with primaries/);
});

test('Ctrl-C ends the looking; what was kept goes on to the same set; of another seed it is left alone', async () => {
  const kept = join(folder, 'left.kept');
  const again = join(folder, 'again.json');
  const args = ['primaries', 'ashgarth-501', ...BANK, '--saved', kept, '--solution', again];
  const child = spawn(process.execPath, [COMMAND, ...args], {
    cwd: ROOT,
    env: { ...process.env, FLATPATCH_HOME: HOME },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  // the scan has been read once it is doubted: then the finding begins
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    if (text.includes('Mind: scan')) setTimeout(() => child.kill('SIGINT'), 250);
  });
  const code = await new Promise((resolve) => child.on('close', resolve));
  assert.ok(code === 0 || code === 3, `ended with ${code}`);
  assert.equal((await flatpatch(args)).code, 0);
  assert.equal(await readFile(again, 'utf8'), await readFile(solution, 'utf8'));
  assert.equal((await answerOf([...args, '--seed', '2'], 2)).problems[0].code, 'asked/saved-other');
});

/**
 * The set of before moved by hand. Bends are places where two straights meet, so that the moved one must lie by so much
 * from where it lay, and its pipe as long as before; what is kept must be found where it was.
 */
test('primaries by hand: moved with the rest giving way, kept, written, and refused with its reason', async () => {
  const moved = join(folder, 'moved.json');
  const bank = ['primaries', 'ashgarth-501', ...BANK, '--from', solution];
  const before = await answerOf([...bank, '--keep', 'cylinder 5']);
  const place = (of: typeof before, cylinder: number, bend: number): number[] =>
    of.byHand.bends.find(
      (each: { cylinder: number; bend: number }) => each.cylinder === cylinder && each.bend === bend,
    ).at;
  const after = await answerOf([
    ...bank,
    '--keep',
    'cylinder 5',
    '--move',
    'cylinder 2 bend 2 by 0, 2, 1.5 mm',
    '--mend',
    '--solution',
    moved,
  ]);
  const [from, to] = [place(before, 2, 2), place(after, 2, 2)];
  [0, 0.002, 0.0015].forEach((by, axis) => {
    near(to[axis]! - from[axis]!, by, 1e-6);
  });
  place(after, 5, 1).forEach((value, axis) => {
    near(value, place(before, 5, 1)[axis]!, 1e-6);
  });
  for (const pipe of after.set.pipes) {
    near(pipe.length, 0.647, 5e-5);
    assert.ok(pipe.tightest.spare > -1e-5);
  }
  // what was written suits the car
  await answerOf(['cuts', 'ashgarth-501', ...BANK, '--solution', moved]);
  const refused = await answerOf([...bank, '--keep', 'collector', '--move', 'collector by 1, 0, 0 mm'], 3);
  assert.match(refused.byHand.refused, /The collector is kept where it is/);
  const far = await answerOf([...bank, '--move', 'cylinder 2 bend 2 by 0, 0, 700 mm'], 3);
  assert.match(far.byHand.refused, /cannot be held beyond this place|too near/);
  const wrong = await flatpatch([...bank, '--move', 'cylinder 2 bend 9 by 0, 0, 1 mm']);
  assert.equal(wrong.code, 2);
  assert.match(wrong.err, /bends, counted from the flange/);
});
