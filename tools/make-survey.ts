/**
 * Makes the demo car's survey again: what an arm, a tape and a plumb bob would have read on a car whose points
 * are known, since it is invented.
 *
 * In    tools/ashgarth-501-truth.csv: name, x, y, z in millimetres, car axes
 * Out   the two arm lists beside the car file, and the lengths as they stand in its survey, to be pasted
 * Not   a measurement: the scatter is drawn from a generator with a fixed start, and one tape reading is put
 *       10 mm wrong on purpose, which the adjustment has to find
 *
 *   node --import tsx tools/make-survey.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Vec3 } from '../src/maths/vec3.ts';

const ROOT = new URL('..', import.meta.url);
const CAR = 'cars/ashgarth-501/';
const START = 501;

/** Standard uncertainty of what is drawn, mm: as the instrument classes have it. */
const SPREAD = { arm: 0.07, tape: 0.7, trammel: 0.3, 'plumb bob': 0.9, 'height gauge': 0.15 } as const;

/** Read 10 mm short: the hook of the tape lay on the wrong side of the bolt. */
export const WRONG = { from: 'front.left.lowerOuter', to: 'rear.right.lowerOuter', by: -10 };

/** Two stands of the arm; each reaches its own end of the car and the marks between. */
const STANDS = [
  {
    file: 'arm-front.csv',
    sees: (name: string) => name.startsWith('front.') || /^(tub|floor)/.test(name),
    origin: [812.4, -1341.7, 402.9],
    turn: { yaw: 38.2, tilt: 0.7 },
    separator: ',',
    decimal: '.',
  },
  {
    file: 'arm-rear.csv',
    sees: (name: string) =>
      name.startsWith('rear.') || /^(tub|floor)/.test(name) || /^front\.\w+\.lowerRear$/.test(name),
    origin: [-4121.3, 1288.8, 377.2],
    turn: { yaw: -141.6, tilt: -0.4 },
    separator: ';',
    decimal: ',',
  },
] as const;

interface Length {
  readonly kind: 'length' | 'floor length' | 'height';
  readonly from: string;
  readonly to?: string;
  readonly with: Exclude<keyof typeof SPREAD, 'arm'>;
}

const LENGTHS: readonly Length[] = [
  { kind: 'floor length', from: 'front.left.wheelCentre', to: 'rear.left.wheelCentre', with: 'plumb bob' },
  { kind: 'floor length', from: 'front.right.wheelCentre', to: 'rear.right.wheelCentre', with: 'plumb bob' },
  { kind: 'length', from: 'front.left.lowerOuter', to: 'rear.right.lowerOuter', with: 'tape' },
  { kind: 'length', from: 'front.right.lowerOuter', to: 'rear.left.lowerOuter', with: 'tape' },
  { kind: 'length', from: 'front.left.lowerOuter', to: 'rear.left.lowerOuter', with: 'tape' },
  { kind: 'length', from: 'front.right.lowerOuter', to: 'rear.right.lowerOuter', with: 'tape' },
  { kind: 'length', from: 'front.left.rodOuter', to: 'front.left.rodInner', with: 'trammel' },
  { kind: 'length', from: 'front.right.rodOuter', to: 'front.right.rodInner', with: 'trammel' },
  { kind: 'length', from: 'rear.left.rodOuter', to: 'rear.left.rodInner', with: 'trammel' },
  { kind: 'length', from: 'rear.right.rodOuter', to: 'rear.right.rodInner', with: 'trammel' },
  { kind: 'length', from: 'front.left.toeInner', to: 'front.right.toeInner', with: 'trammel' },
  { kind: 'height', from: 'front.left.wheelCentre', with: 'height gauge' },
  { kind: 'height', from: 'front.right.wheelCentre', with: 'height gauge' },
  { kind: 'height', from: 'rear.left.wheelCentre', with: 'height gauge' },
  { kind: 'height', from: 'rear.right.wheelCentre', with: 'height gauge' },
];

/** Uniform numbers in (0, 1): a linear congruential generator (Knuth's constants, from memory), good enough for scatter. */
function uniform(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
}

/** Normal scatter of standard deviation 1 (Box and Muller). */
const normal = (draw: () => number) => () =>
  Math.sqrt(-2 * Math.log(draw())) * Math.cos(2 * Math.PI * draw());

/** Where the points of the invented car are, mm, by their survey names. */
export function truth(): ReadonlyMap<string, Vec3> {
  const rows = readFileSync(new URL('tools/ashgarth-501-truth.csv', ROOT), 'utf8')
    .trim()
    .split('\n')
    .slice(1);
  return new Map(
    rows.map((row) => {
      const [name, x, y, z] = row.split(',');
      return [name!, [Number(x), Number(y), Number(z)]];
    }),
  );
}

/** A point of the car as this stand of the arm has it in its own axes. */
function seenFrom(stand: (typeof STANDS)[number], p: Vec3): Vec3 {
  const yaw = (stand.turn.yaw * Math.PI) / 180;
  const tilt = (stand.turn.tilt * Math.PI) / 180;
  const [dx, dy, dz] = [p[0] - stand.origin[0], p[1] - stand.origin[1], p[2] - stand.origin[2]];
  const x = Math.cos(yaw) * dx + Math.sin(yaw) * dy;
  const y = -Math.sin(yaw) * dx + Math.cos(yaw) * dy;
  return [x, Math.cos(tilt) * y + Math.sin(tilt) * dz, -Math.sin(tilt) * y + Math.cos(tilt) * dz];
}

export interface MadeSurvey {
  /** Texts of the arm lists by file name. */
  readonly lists: Readonly<Record<string, string>>;
  /** The lengths as they stand under `lengths:` in the car file. */
  readonly lengths: readonly string[];
}

export function makeSurvey(): MadeSurvey {
  const points = truth();
  const scatter = normal(uniform(START));
  const lists = STANDS.map((stand) => {
    const rows = [...points]
      .filter(([name]) => stand.sees(name))
      .map(([name, p]) => {
        const numbers = seenFrom(stand, p).map((each) =>
          (each + SPREAD.arm * scatter()).toFixed(2).replace('.', stand.decimal),
        );
        return [name, ...numbers].join(stand.separator);
      });
    return [stand.file, `${[['name', 'x', 'y', 'z'].join(stand.separator), ...rows].join('\n')}\n`] as const;
  });
  return {
    lists: Object.fromEntries(lists),
    lengths: LENGTHS.map((each) => lengthLine(each, points, scatter)),
  };
}

function lengthLine(each: Length, points: ReadonlyMap<string, Vec3>, scatter: () => number): string {
  const a = points.get(each.from)!;
  const b = each.to === undefined ? undefined : points.get(each.to)!;
  const flat = each.kind === 'floor length' ? 0 : 1;
  const exact = b === undefined ? a[2] : Math.hypot(a[0] - b[0], a[1] - b[1], flat * (a[2] - b[2]));
  const slip = each.from === WRONG.from && each.to === WRONG.to ? WRONG.by : 0;
  const read = exact + slip + SPREAD[each.with] * scatter();
  const digits = each.with === 'height gauge' ? 2 : each.with === 'trammel' ? 1 : 0;
  const ends = each.to === undefined ? `from: ${each.from}` : `from: ${each.from}, to: ${each.to}`;
  return `    - { kind: ${each.kind}, ${ends}, reading: { is: ${read.toFixed(digits)} mm, with: ${each.with} } }`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { lists, lengths } = makeSurvey();
  for (const [file, text] of Object.entries(lists)) writeFileSync(new URL(CAR + file, ROOT), text);
  console.log(lengths.join('\n'));
}
