/**
 * Plain input decks solved by CalculiX (ccx), the general finite-element program of Debian's package calculix-ccx.
 *
 * In    lines of a deck, whose steps print displacements and forces of the node set TOLD
 * Out   those of each step, by node
 *
 * Where ccx is on the path it is asked afresh, and its recorded answer beside the tests must agree; else the recorded
 * answer is used. FLATPATCH_REMAKE=1 writes the record again. Keywords: *NODE, *ELEMENT, *SOLID SECTION, *BEAM SECTION,
 * *SPRING, *RIGID BODY, *BOUNDARY, *STATIC, *CLOAD, *NODE PRINT of the program's own manual.
 */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Vec3 } from '../../src/maths/vec3.ts';

const REMAKING = process.env.FLATPATCH_REMAKE === '1';

/** Of one step: by number of the node. */
export interface Step {
  readonly moved: Readonly<Record<string, Vec3>>;
  readonly force: Readonly<Record<string, Vec3>>;
}

interface Answer {
  readonly steps: readonly Step[];
  readonly from: string;
}

/** A number as the program reads it; nanometres and micronewtons are kept. */
export const plain = (value: number): string => {
  const text = value.toPrecision(10);
  return /[.e]/.test(text) ? text : `${text}.`;
};

/** A deck that grows by nodes, elements and cards. */
export class Deck {
  readonly #nodes: string[] = [];
  readonly #elements: string[] = [];
  readonly #cards: string[] = [];
  readonly #told: number[] = [];
  #element = 0;

  node([x, y, z]: Vec3, told = false): number {
    this.#nodes.push(`${this.#nodes.length + 1}, ${plain(x)}, ${plain(y)}, ${plain(z)}`);
    if (told) this.#told.push(this.#nodes.length);
    return this.#nodes.length;
  }

  element(type: string, set: string, ...nodes: readonly number[]): void {
    this.#element += 1;
    this.#elements.push(`*ELEMENT, TYPE=${type}, ELSET=${set}`, `${this.#element}, ${nodes.join(', ')}`);
  }

  card(...lines: readonly string[]): void {
    this.#cards.push(...lines);
  }

  text(): string {
    const told = this.#told.map((node) => `${node},`);
    return [
      ...['*NODE, NSET=ALL', ...this.#nodes, ...this.#elements, '*NSET, NSET=TOLD', ...told],
      ...this.#cards,
      '',
    ].join('\n');
  }
}

/** The cards of a step: load of nodes in newtons or newton metres, by direction 1 to 6; and what is told of it. */
export function step(
  loads: readonly (readonly [node: number, way: number, force: number])[],
  asked: { readonly opening?: readonly string[]; readonly told?: string } = {},
): string[] {
  const { opening = ['*STEP', '*STATIC'], told = 'RF' } = asked;
  const carried = loads.filter(([, , force]) => force !== 0);
  return [
    ...[...opening, '*CLOAD, OP=NEW'],
    ...carried.map(([node, way, force]) => `${node}, ${way}, ${plain(force)}`),
    ...['*NODE PRINT, NSET=TOLD, FREQUENCY=1000', told, '*END STEP'],
  ];
}

const STEEL = ['*MATERIAL, NAME=STEEL', '*ELASTIC', '2.06E11, 0.3'] as const;

export const steel = (): readonly string[] => STEEL;

function read(dat: string): Step[] {
  const times = new Map<string, { moved: Record<string, Vec3>; force: Record<string, Vec3> }>();
  let into: Record<string, Vec3> | undefined;
  for (const line of dat.split('\n')) {
    const title = /^ *(displacements|forces) .* time +(\S+)/.exec(line);
    if (title !== null) {
      const [, what, time] = title;
      const here = times.get(time!) ?? { moved: {}, force: {} };
      times.set(time!, here);
      into = what === 'forces' ? here.force : here.moved;
      continue;
    }
    const numbers = line.trim().split(/\s+/).map(Number);
    if (numbers.length !== 4 || numbers.some((each) => !Number.isFinite(each))) continue;
    if (into !== undefined) into[String(numbers[0])] = [numbers[1]!, numbers[2]!, numbers[3]!];
  }
  return [...times.values()];
}

function solve(deck: string): Step[] | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'flatpatch-deck-'));
  try {
    writeFileSync(join(folder, 'deck.inp'), deck);
    const env = { ...process.env, OMP_NUM_THREADS: '1' };
    const run = spawnSync('ccx', ['deck'], { cwd: folder, encoding: 'utf8', env, maxBuffer: 1e8 });
    if (run.error !== undefined) return undefined;
    const dat = join(folder, 'deck.dat');
    assert.ok(existsSync(dat) && !/\*ERROR/.test(run.stdout), `ccx: ${run.stdout.slice(-2000)}`);
    return read(readFileSync(dat, 'utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Largest difference of two answers to one deck, over the largest number in either. */
function apart(a: readonly Step[], b: readonly Step[]): number {
  assert.equal(a.length, b.length, 'steps told');
  const flat = (steps: readonly Step[]): readonly Readonly<Record<string, Vec3>>[] =>
    steps.flatMap(({ moved, force }) => [moved, force]);
  const other = flat(b);
  return Math.max(
    ...flat(a).map((set, k) => {
      const size = Math.max(...Object.values(set).flat().map(Math.abs), Number.MIN_VALUE);
      const off = Object.entries(set).map(([node, at]) =>
        Math.max(...at.map((value, i) => Math.abs(value - other[k]![node]![i]!))),
      );
      return Math.max(...off) / size;
    }),
  );
}

/**
 * What ccx says of a deck, live or as recorded.
 *
 * @param name of the record beside the tests, `<name>.ccx.json`
 * @param remade by which test file the record is written again
 */
export function solvedByCcx(name: string, deck: string, remade: string): Answer {
  const remake = `FLATPATCH_REMAKE=1 node --import tsx --test ${remade}`;
  const path = fileURLToPath(new URL(`${name}.ccx.json`, import.meta.url));
  const hash = createHash('sha256').update(deck).digest('hex');
  const live = solve(deck);
  if (REMAKING) {
    assert.ok(live !== undefined, 'no ccx on the path: the record cannot be remade');
    const short = (_: string, v: unknown) => (typeof v === 'number' ? Number(v.toPrecision(7)) : v);
    writeFileSync(path, `${JSON.stringify({ remake, deck: hash, steps: live }, short)}\n`);
  }
  const record = JSON.parse(readFileSync(path, 'utf8')) as { deck: string; steps: Step[] };
  assert.equal(record.deck, hash, `the deck is another than the recorded one: remake it with\n  ${remake}`);
  if (live === undefined) return { steps: record.steps, from: 'the record: no ccx here' };
  // seven digits are printed, of which the last is open; another release of the program sums in another order
  const off = apart(live, record.steps);
  assert.ok(off < 1e-5, `ccx says another thing than its record (by ${off}): look why, or\n  ${remake}`);
  return { steps: live, from: 'ccx, asked just now' };
}
