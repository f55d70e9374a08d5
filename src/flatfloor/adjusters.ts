/**
 * Every adjuster of the car, with what one unit of it changes and how far it may go.
 *
 * In    the car file: threads with pitch and hand, platforms, anchors, splines, shims, tyres, ballast
 * Out   for each its name, its unit, the choices that thread, stops and stock leave, and how to turn it
 * Axes  positive: rod or link longer, platform or anchor tighter, shims thicker, wishbone to more caster, more
 *       pressure, more ballast
 *
 * A tube between a left and a right thread goes two pitches a turn.  [FF-18 to FF-21]
 */
import type { CarForm } from '../car/read.ts';
import { endOf, sideOf, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import { nearestSetting, vernierStep } from '../loadpath/spring/spline.ts';
import { plain, spokenAmount } from '../units/show.ts';
import type { ChangeNames } from './changes.ts';
import { WHEEL_WORDS } from './reading-words.ts';
import { type StackChange, shiftChanges, stackChanges } from './shims.ts';
import { type CornerStacks, SHIM_UNIT, type SheetMoves, stacksNow } from './stacks.ts';
import { type LinkThread, tubeWords, wayRound } from './way-round.ts';

export type AdjusterKind =
  | 'rod'
  | 'track rod'
  | 'platform'
  | 'anchor'
  | 'splines'
  | 'camber shims'
  | 'caster shims'
  | 'drop link'
  | 'pressure'
  | 'ballast';

/** One place that an adjuster can be brought to. */
export interface Choice {
  /** In the adjuster's own units from where it stands. */
  readonly units: number;
  /** What it adds to the change, SI. */
  readonly change: number;
  /** What it costs in work: flats, pieces, teeth. */
  readonly effort: number;
  readonly stack?: StackChange;
}

export interface Adjuster {
  /** `front left pushrod`: the name in the file's `moved`. */
  readonly name: string;
  readonly kind: AdjusterKind;
  readonly at: WheelName | 'front' | 'rear' | 'car';
  /** Number of the change that it moves. */
  readonly change: number;
  /** Name of one unit: `flat`, `half turn`, `slot`. */
  readonly unit: string;
  /** Units in one turn, of a rod or link. */
  readonly perTurn?: number;
  /** What one unit adds to the change, SI. */
  readonly step: number;
  readonly stepUnit: string;
  /** Sorted by `change`, nothing among them. */
  readonly choices: readonly Choice[];
  /** How a number of units is carried out, in words. */
  readonly words: (units: number) => string;
  /** What stops it, in words, at either end. */
  readonly stops: { readonly up: string; readonly down: string };
  readonly notes: readonly string[];
}

type Corner = CarForm['front']['left'];

/** @param moves  of each sheet since the survey: units by which adjusters were moved, by name */
export function adjustersOf(
  car: CarForm,
  names: ChangeNames,
  numbers: Numbers,
  moves: readonly SheetMoves[] = [],
): readonly Adjuster[] {
  const all: Adjuster[] = [];
  const stacks = stacksNow(car, numbers, moves);
  const moved: Record<string, number> = {};
  for (const sheet of moves)
    for (const [name, by] of Object.entries(sheet)) moved[name] = (moved[name] ?? 0) + by;
  for (const wheel of WHEEL_NAMES) {
    const corner = car[endOf(wheel)][sideOf(wheel)];
    all.push(...cornerAdjusters(wheel, corner, { names, numbers, moved, stacks }));
  }
  for (const end of ['front', 'rear'] as const) {
    const bar = car[end].antiRollBar;
    for (const side of ['left', 'right'] as const) {
      const link = side === 'left' ? bar?.leftLink : bar?.rightLink;
      if (link === undefined) continue;
      const name = `${end} ${side} drop link`;
      all.push({
        ...threaded(name, link.thread, numbers, moved[name] ?? 0),
        kind: 'drop link',
        at: end,
        change: names.end[end][`${side}Link`],
      });
    }
  }
  for (const [place, { fitted, most, step }] of Object.entries(car.floor?.ballast ?? {})) {
    const name = `ballast ${place}`;
    const piece = numbers.of(step);
    const [now, top] = [numbers.of(fitted) + (moved[name] ?? 0) * piece, numbers.of(most)];
    all.push({
      name,
      kind: 'ballast',
      at: 'car',
      change: names.masses.get(place)!,
      unit: 'piece',
      step: piece,
      stepUnit: 'kg',
      choices: counted(-whole(now / piece), whole((top - now) / piece), piece),
      words: (units) =>
        `${units > 0 ? 'put in' : 'take out'} ${pieces(units, 'piece')} of ${spokenAmount(piece, 'kg', 1)}`,
      stops: { up: `${spokenAmount(top, 'kg', 1)} is the most there`, down: 'none is left there' },
      notes: [],
    });
  }
  return all;
}

interface Given {
  readonly names: ChangeNames;
  readonly numbers: Numbers;
  readonly moved: Readonly<Record<string, number>>;
  readonly stacks: ReturnType<typeof stacksNow>;
}

function cornerAdjusters(wheel: WheelName, corner: Corner, given: Given): Adjuster[] {
  const { names, numbers, moved } = given;
  const at = names.wheel[wheel];
  const of = (what: string): string => `${WHEEL_WORDS[wheel]} ${what}`;
  const all: Adjuster[] = [];
  const rod = of(corner.rod.kind);
  if (corner.rod.thread !== undefined) {
    all.push({
      ...threaded(rod, corner.rod.thread, numbers, moved[rod] ?? 0),
      kind: 'rod',
      at: wheel,
      change: at.rod,
    });
  }
  const link = of(endOf(wheel) === 'front' ? 'track rod' : 'toe link');
  if (corner.toeLink?.thread !== undefined) {
    all.push({
      ...threaded(link, corner.toeLink.thread, numbers, moved[link] ?? 0),
      kind: 'track rod',
      at: wheel,
      change: at.toe,
    });
  }
  const { adjusters } = corner;
  const { platform, anchor } = adjusters ?? {};
  if (platform !== undefined && corner.coil !== undefined) {
    const name = of('spring platform');
    const step = numbers.of(platform.pitch) / numbers.of(platform.perTurn);
    all.push({
      ...wound(name, step, platform, numbers, moved[name] ?? 0),
      kind: 'platform',
      at: wheel,
      change: at.platform,
      unit: 'slot',
      step,
      stepUnit: 'm',
      words: (units) =>
        `${units > 0 ? 'up' : 'down'} ${pieces(units, 'slot')} (${spokenAmount(Math.abs(units) * step, 'm', 2)} ${units > 0 ? 'more' : 'less'} preload)`,
    });
  }
  if (anchor !== undefined && corner.bar !== undefined) {
    const name = of('anchor screw');
    const step = numbers.of(anchor.pitch) / 6 / numbers.of(anchor.lever);
    all.push({
      ...wound(name, numbers.of(anchor.pitch) / 6, anchor, numbers, moved[name] ?? 0, step),
      kind: 'anchor',
      at: wheel,
      change: at.anchor,
      unit: 'flat',
      step,
      stepUnit: 'rad',
      words: (units) =>
        `${units > 0 ? 'tighter' : 'slacker'} ${pieces(units, 'flat')} (${spokenAmount(Math.abs(units) * step, 'rad', 2)} of bar)`,
    });
  }
  all.push(...splineAdjuster(of('bar splines'), wheel, corner, given));
  all.push(...shimAdjusters(wheel, given.stacks.corners.get(WHEEL_WORDS[wheel])!, corner, given));
  const tyre = adjusters?.tyre;
  if (tyre !== undefined) {
    const name = of('tyre');
    const step = 1e4;
    const now = numbers.of(tyre.pressure) + (moved[name] ?? 0) * step;
    const [least, most] = [numbers.of(tyre.least), numbers.of(tyre.most)];
    all.push({
      name,
      kind: 'pressure',
      at: wheel,
      change: at.pressure,
      unit: '0.1 bar',
      step,
      stepUnit: 'Pa',
      choices: counted(-whole((now - least) / step), whole((most - now) / step), step),
      words: (units) =>
        `${units > 0 ? 'up' : 'down'} ${plain(Math.abs(units) / 10, 1)} bar to ${plain((now + units * step) / 1e5, 2)} bar`,
      stops: { up: 'highest pressure allowed', down: 'lowest pressure allowed' },
      notes: [],
    });
  }
  return all;
}

/** Whole units, with a hair's breadth for what rounding leaves of a whole number. */
const whole = (units: number): number => Math.max(0, Math.floor(units + 1e-9));

const pieces = (units: number, unit: string): string =>
  `${Math.abs(units)} ${Math.abs(units) === 1 ? unit : `${unit}s`}`;

const counted = (down: number, up: number, step: number): readonly Choice[] =>
  Array.from({ length: up - down + 1 }, (_, i) => {
    const units = down + i;
    return { units, change: units * step, effort: Math.abs(units) };
  });

/** A rod or link set by its threads.  [FF-18, FF-19] */
function threaded(
  name: string,
  thread: LinkThread,
  numbers: Numbers,
  moved: number,
): Omit<Adjuster, 'kind' | 'at' | 'change'> {
  const both = thread.hands === 'left and right';
  const perTurn = numbers.or(thread.perTurn, both ? 6 : 2);
  const ends = [
    { pitch: thread.pitch, visible: thread.visible, engaged: thread.engaged, least: thread.least },
    ...(both ? [thread.other ?? thread] : []),
  ].map((end) => {
    const per = numbers.of(end.pitch) / perTurn;
    return {
      per,
      out: whole((numbers.of(end.engaged) - numbers.of(end.least)) / per - moved),
      in: whole(numbers.of(end.visible) / per + moved),
    };
  });
  const step = ends.reduce((sum, end) => sum + end.per, 0);
  const unit = perTurn === 6 ? 'flat' : perTurn === 2 ? 'half turn' : `1/${perTurn} turn`;
  const turn = (units: number): string => {
    const longer = units > 0;
    const by = `${pieces(units, unit)} ${longer ? 'longer' : 'shorter'} (${spokenAmount(Math.abs(units) * step, 'm', 2)})`;
    const way = wayRound(thread.hands, longer);
    if (way === undefined) return by;
    return both
      ? `${by}: ${tubeWords(way, thread.rightHandAt)}`
      : `${by}: screw the end ${longer ? 'out' : 'in'}, ${way} seen from its eye`;
  };
  return {
    name,
    unit,
    perTurn,
    step,
    stepUnit: 'm',
    choices: counted(-Math.min(...ends.map((end) => end.in)), Math.min(...ends.map((end) => end.out)), step),
    words: turn,
    stops: { up: 'least thread engaged', down: 'no thread left to screw in' },
    notes:
      thread.hands === undefined
        ? [
            `${name}: the file does not say the hands of its threads (thread, hands); one thread turned by halves is taken.`,
          ]
        : [],
  };
}

/** A platform or an anchor screw: what thread is left either way. */
function wound(
  name: string,
  pitchStep: number,
  of: { readonly tighter: LinkThread['pitch']; readonly slacker: LinkThread['pitch'] },
  numbers: Numbers,
  moved: number,
  step: number = pitchStep,
): Pick<Adjuster, 'name' | 'choices' | 'stops' | 'notes'> {
  const up = whole(numbers.of(of.tighter) / pitchStep - moved);
  const down = whole(numbers.of(of.slacker) / pitchStep + moved);
  return {
    name,
    choices: counted(-down, up, step),
    stops: { up: 'no thread left to tighten', down: 'no thread left to slacken' },
    notes: [],
  };
}

/** Vernier steps of the bar's two splines that are offered either way. */
const MOST_VERNIER = 20;

/** A bar of two different spline counts, taken out and put back some teeth on.  [FF-20] */
function splineAdjuster(name: string, wheel: WheelName, corner: Corner, given: Given): Adjuster[] {
  const { numbers, names } = given;
  const [rocker, held] = [corner.bar?.rockerEnd.splines, corner.bar?.anchorEnd.splines];
  if (rocker === undefined || held === undefined) return [];
  const splines = { first: numbers.of(rocker), second: numbers.of(held) };
  const step = vernierStep(splines);
  const setting = (units: number) => nearestSetting(splines, units * step);
  const teeth = (n: number): string =>
    `${pieces(n, 'tooth').replace('tooths', 'teeth')} ${n > 0 ? 'on' : 'back'}`;
  return [
    {
      name,
      kind: 'splines',
      at: wheel,
      change: names.wheel[wheel].anchor,
      unit: 'vernier step',
      step,
      stepUnit: 'rad',
      choices: Array.from({ length: 2 * MOST_VERNIER + 1 }, (_, i) => {
        const units = i - MOST_VERNIER;
        const { moveFirst, moveSecond } = setting(units);
        return { units, change: units * step, effort: Math.abs(moveFirst) + Math.abs(moveSecond) };
      }),
      words: (units) => {
        const { moveFirst, moveSecond, angle } = setting(units);
        return `bar out, ${teeth(moveFirst)} at the rocker and ${teeth(moveSecond)} at the anchor, in the way that winds it (${spokenAmount(angle, 'rad', 2)})`;
      },
      stops: { up: 'more is a new setting of the bar', down: 'more is a new setting of the bar' },
      notes: [],
    },
  ];
}

/** Camber shims from the box, caster shims from one side of the joints to the other.  [FF-21] */
function shimAdjusters(
  wheel: WheelName,
  { camber, caster }: CornerStacks,
  corner: Corner,
  { names, stacks }: Given,
): Adjuster[] {
  const at = names.wheel[wheel];
  const unit = SHIM_UNIT;
  const choices = (of: readonly StackChange[]): readonly Choice[] =>
    of.map((stack) => ({ units: stack.change / unit, change: stack.change, effort: stack.handled, stack }));
  const all: Adjuster[] = [];
  const common = { at: wheel, unit: '0.1 mm', step: unit, stepUnit: 'm', notes: [] } as const;
  if (camber !== undefined) {
    const made = choices(stackChanges(camber.fitted, stacks.box, camber.most));
    all.push({
      ...common,
      name: `${WHEEL_WORDS[wheel]} camber shims`,
      kind: 'camber shims',
      change: at.camber,
      choices: made,
      words: (units) => stackWords(made, units),
      stops: {
        up: 'thickest stack that the bolts allow, or the box is empty',
        down: 'no shims left to take out',
      },
    });
  }
  if (caster !== undefined) {
    const made = choices(shiftChanges(caster.first, caster.second));
    const upper = corner.adjusters?.casterShims?.moves === 'upper wishbone';
    const [from, to] = upper ? ['behind', 'in front of'] : ['in front of', 'behind'];
    all.push({
      ...common,
      name: `${WHEEL_WORDS[wheel]} caster shims`,
      kind: 'caster shims',
      change: at.caster,
      choices: made,
      words: (units) =>
        `shift ${spokenAmount(Math.abs(units) * unit, 'm', 2)} of shims from ${units > 0 ? from : to} the joints to ${(units > 0 ? to : from).replace(' of', '')}`,
      stops: { up: 'no shims left to shift', down: 'no shims left to shift' },
    });
  }
  return all;
}

function stackWords(choices: readonly Choice[], units: number): string {
  const stack = choices.find((each) => Math.abs(each.units - units) < 1e-6)?.stack;
  if (stack === undefined) return `${spokenAmount(units * 1e-4, 'm', 2)} of shims`;
  const part = (sign: 1 | -1): string =>
    [...stack.pieces]
      .filter(([, n]) => sign * n > 0)
      .map(([thickness, n]) => `${Math.abs(n)} × ${spokenAmount(thickness, 'm', 2)}`)
      .join(', ');
  const [inside, out] = [part(1), part(-1)];
  return [inside === '' ? '' : `put in ${inside}`, out === '' ? '' : `take out ${out}`]
    .filter((each) => each !== '')
    .join(', ');
}
