/** What is moved by hand, kept and mended in a bank's primaries, as it is typed. */
import type { Command } from 'commander';
import type { HandAsk, HandKeep, HandTold, PrimariesByHand } from '../questions/index.ts';
import { readPoint } from '../units/read.ts';
import type { Speech } from '../units/show.ts';
import { askedAmount } from './asked.ts';
import { badAsk, NotReached } from './outcome.ts';
import { placeText } from './pipe-words.ts';

export interface HandOptions {
  readonly move?: readonly string[];
  readonly keep?: readonly string[];
  readonly mend?: boolean;
}

const each = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];

export const byHand = (of: Command): Command =>
  of
    .option(
      '--move <what and where>',
      'moves by hand, the length held: "cylinder 3 bend 2 by 0, 5, -10 mm" (or "to" a place in the axes of the car), "collector by 10, 0, 0 mm", "collector turned 3 deg about z" (x, y, z or itself); may be given again',
      each,
    )
    .option(
      '--keep <what>',
      'keeps as it is whatever else moves: "cylinder 3 bend 2", "cylinder 4", "collector"; may be given again',
      each,
    )
    .option('--mend', 'lets the finder move the rest where what was moved comes too near');

/** Whether anything of it was typed. */
export const isHandAsked = ({ move, keep, mend }: HandOptions): boolean =>
  move !== undefined || keep !== undefined || mend === true;

export interface HandDone {
  readonly told: HandTold;
  /** What was asked cannot be. */
  readonly refusal?: string;
  readonly done: readonly string[];
}

/**
 * Keeps, then moves, one after the other; the rest is mended after a move that has no room, or at the end.
 *
 * @throws BadInput where what is typed cannot be read or the set has no such bend
 */
export async function handDone(
  set: PrimariesByHand,
  options: HandOptions,
  seed: number,
  seconds: number,
): Promise<HandDone> {
  const done: string[] = [];
  for (const text of options.keep ?? []) {
    set.keep(keepOf(text, set.told()), true);
    done.push(`Kept: ${text}.`);
  }
  const mend = (): Promise<boolean> => mended(set, seed, seconds);
  for (const text of options.move ?? []) {
    const ask = askOf(text, set.told());
    set.pull(ask);
    const told = set.letGo();
    const room = told.asked;
    if (told.stop !== undefined && !(options.mend === true && room))
      return {
        told,
        done,
        refusal: `--move "${text}": ${told.stop}${room ? ' --mend lets the rest give way.' : ''}`,
      };
    if (told.stop !== undefined && !(await mend()))
      return {
        told,
        done,
        refusal: `--move "${text}": ${told.stop} The finder did not find how the rest could give way.`,
      };
    // what comes after it, and its mending, leaves it where it was put
    if (options.mend === true) set.keep(ask, true);
    done.push(told.stop === undefined ? `Moved: ${text}.` : `Moved, the rest gave way: ${text}.`);
  }
  if (options.mend === true && options.move === undefined) {
    if (!(await mend())) throw new NotReached('The finder did not find more room round what is kept.');
    done.push('The rest was laid round what is kept.');
  }
  return { told: set.told(), done };
}

async function mended(set: PrimariesByHand, seed: number, seconds: number): Promise<boolean> {
  const until = performance.now() + 1000 * seconds;
  const advance = set.mend(seed);
  for (let stands = advance(); ; stands = advance()) {
    if (stands !== 'mending') return stands === 'stands';
    if (performance.now() > until) return false;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

const BEND = /^cylinder (\d+) bend (\d+)$/;
const PIPE = /^cylinder (\d+)$/;
const MOVED = /^(cylinder \d+ bend \d+|collector) (by|to) (.+)$/;
const TURNED = /^collector turned (.+) about (x|y|z|itself)$/;

function keepOf(text: string, told: HandTold): HandKeep {
  if (text === 'collector') return { what: 'collector' };
  const pipe = PIPE.exec(text)?.[1];
  if (pipe === undefined) return { what: 'bend', ...bendOf('--keep', text, told) };
  cylinderOf('--keep', pipe, told);
  return { what: 'pipe', cylinder: Number(pipe) };
}

function askOf(text: string, told: HandTold): HandAsk {
  const still = { what: 'collector', shift: [0, 0, 0], turn: [0, 0, 0], clock: 0 } as const;
  const [, angle, about] = TURNED.exec(text) ?? [];
  if (angle !== undefined) {
    const turn = askedAmount('--move', angle, 'rad');
    if (about === 'itself') return { ...still, clock: turn };
    return { ...still, turn: [about === 'x' ? turn : 0, about === 'y' ? turn : 0, about === 'z' ? turn : 0] };
  }
  const [, what, way, where] = MOVED.exec(text) ?? [];
  if (what === undefined) {
    throw badAsk(
      'asked/move',
      `--move "${text}" is not understood.`,
      'Write "cylinder 3 bend 2 by 0, 5, -10 mm", "collector by 10, 0, 0 mm" or "collector turned 3 deg about z".',
    );
  }
  const read = readPoint(where!);
  if (!read.ok) throw badAsk('asked/amount', `--move "${text}": ${read.why}.`);
  const [x, y, z] = read.is.value;
  const from = (at: readonly [number, number, number]): [number, number, number] =>
    way === 'by' ? [x, y, z] : [x - at[0], y - at[1], z - at[2]];
  if (what === 'collector') return { ...still, shift: from(told.set.collector.mouth) };
  const bend = bendOf('--move', what, told);
  const { at } = told.bends.find((each) => each.cylinder === bend.cylinder && each.bend === bend.bend)!;
  const by = from(at);
  return { what: 'bend', ...bend, to: [at[0] + by[0], at[1] + by[1], at[2] + by[2]] };
}

function cylinderOf(option: string, cylinder: string, { set }: HandTold): void {
  if (set.pipes.some((pipe) => String(pipe.cylinder) === cylinder)) return;
  const there = set.pipes.map((pipe) => pipe.cylinder).join(', ');
  throw badAsk('asked/cylinder', `${option}: this bank has no cylinder ${cylinder}; it has ${there}.`);
}

function bendOf(
  option: string,
  text: string,
  told: HandTold,
): { readonly cylinder: number; readonly bend: number } {
  const [, cylinder, bend] = BEND.exec(text) ?? [];
  if (cylinder === undefined) {
    throw badAsk(
      'asked/bend',
      `${option} "${text}" is not understood.`,
      'Write "cylinder 3 bend 2", counted from the flange, "cylinder 4" or "collector".',
    );
  }
  cylinderOf(option, cylinder, told);
  const bends = told.bends.filter((each) => String(each.cylinder) === cylinder);
  if (!bends.some((each) => String(each.bend) === bend))
    throw badAsk(
      'asked/bend',
      `${option}: the pipe of cylinder ${cylinder} has ${bends.length} bends, counted from the flange.`,
    );
  return { cylinder: Number(cylinder), bend: Number(bend) };
}

/** Where the bends are, and what of them is kept. */
export function handLines({ told, done }: HandDone, speech: Speech): string[] {
  const kept = (is: boolean): string => (is ? ', kept' : '');
  return [
    ...done,
    '',
    'Bends, where the straights before and after them meet, from the flange:',
    ...told.set.pipes.map(({ cylinder }) => {
      const own = told.bends.filter((bend) => bend.cylinder === cylinder);
      const places = own.map((bend) => `${bend.bend} at ${placeText(bend.at, speech)}${kept(bend.kept)}`);
      return `  cylinder ${cylinder}${kept(told.keptPipes.includes(cylinder))}: ${places.join('; ')}`;
    }),
  ];
}
