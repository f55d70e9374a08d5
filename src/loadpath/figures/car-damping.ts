/**
 * Damping ratios of the body's modes: roll, bounce, pitch, below and above the knee of the dampers.
 *
 * Each is the ratio of a lightly damped mode: the undamped shape with its own modal damping and mass. Where the ratio
 * comes near one or above, as with stiff low-speed damping, the mode no longer swings and the number says only that.
 * The tyre in series takes its part of the movement: the damper sees q = k_y/(k_w + k_y) of it.
 */
import { formula, type Working } from '../../working/working.ts';
import type { DamperSlopes } from './damper-slopes.ts';
import { noteSolved, notesOf, type Put } from './note.ts';

const tyre = notesOf('tyre');
const SPEEDS = [
  { speed: 'low', mark: 'l', words: 'below' },
  { speed: 'high', mark: 'h', words: 'above' },
] as const;
const MODES = [
  { name: 'bounce', mark: '1', words: 'the lower mode of bounce and pitch' },
  { name: 'pitch', mark: '2', words: 'the higher mode of bounce and pitch' },
] as const;

const HOLDS = 'for a ratio well below one; the damper sees the part of the movement that the tyre leaves it';

const MODE_TERMS = {
  C_1: { unit: 'N s/m', means: 'damping of the front axle at its wheels' },
  q_1: { unit: '1', means: 'part of the front movement that the dampers see' },
  C_2: { unit: 'N s/m', means: 'damping of the rear axle at its wheels' },
  q_2: { unit: '1', means: 'part of the rear movement that the dampers see' },
  x_n: { unit: 'm', means: 'point that stands still, ahead of the centre of gravity' },
  a: { unit: 'm', means: 'centre of gravity behind the front axle' },
  b: { unit: 'm', means: 'centre of gravity ahead of the rear axle' },
  ω_n: { unit: 'rad/s', means: 'circular frequency of the mode' },
  m_s: { unit: 'kg', means: 'sprung mass' },
  I_y: { unit: 'kg m^2', means: 'moment of inertia in pitch' },
} as const;

const modes = MODES.flatMap(({ name, mark, words }) =>
  SPEEDS.map((at) => ({
    name,
    at,
    note: tyre({
      id: `${name}Damping${at.speed === 'low' ? 'Low' : 'High'}`,
      means: `damping ratio of ${words}, ${at.words} the knee`,
      symbol: `ζ_${mark}${at.mark}`,
      unit: '1',
      rank: at.speed === 'low' ? 2 : 3,
    }),
    of: formula({
      symbol: `ζ_${mark}${at.mark}`,
      means: `damping ratio of ${words}, ${at.words} the knee`,
      is: '(C_1*q_1^2*(x_n - a)^2 + C_2*q_2^2*(x_n + b)^2)/(2*ω_n*(m_s*x_n^2 + I_y))',
      unit: '1',
      terms: MODE_TERMS,
      source: 'LP-59',
      holds: HOLDS,
    }),
  })),
);

const rolls = SPEEDS.map((at) => ({
  at,
  note: tyre({
    id: `rollDamping${at.speed === 'low' ? 'Low' : 'High'}`,
    means: `damping ratio in roll, ${at.words} the knee`,
    symbol: `ζ_φ${at.mark}`,
    unit: '1',
    rank: at.speed === 'low' ? 2 : 3,
  }),
  of: formula({
    symbol: `ζ_φ${at.mark}`,
    means: `damping ratio in roll, ${at.words} the knee`,
    is: '(C_1*p_1^2*t_1^2 + C_2*p_2^2*t_2^2)/(16*π*f_φ*I_r)',
    unit: '1',
    terms: {
      C_1: { unit: 'N s/m', means: 'damping of the front axle at its wheels' },
      p_1: { unit: '1', means: 'part of the front roll that the dampers see' },
      t_1: { unit: 'm', means: 'front track' },
      C_2: { unit: 'N s/m', means: 'damping of the rear axle at its wheels' },
      p_2: { unit: '1', means: 'part of the rear roll that the dampers see' },
      t_2: { unit: 'm', means: 'rear track' },
      f_φ: { unit: 'Hz', means: 'frequency in roll' },
      I_r: { unit: 'kg m^2', means: 'moment of inertia about the roll axis' },
    },
    source: 'LP-60',
    holds: HOLDS,
  }),
}));

/** One axle as the damping of the body needs it. */
export interface DampedAxle {
  readonly damping: DamperSlopes;
  /** Parts of the movement that the dampers see, in heave and in roll. */
  readonly heavePart: number;
  readonly rollPart: number;
  readonly track: number;
}

export interface Damped {
  readonly front: DampedAxle;
  readonly rear: DampedAxle;
}

function noteAxles({ front, rear }: Damped, speed: keyof DamperSlopes, working?: Working): void {
  noteSolved(
    working,
    'damper curves as two straight lines, times spring per wheel squared, left and right',
    'LP-55',
    () => [
      {
        symbol: 'C_1',
        means: 'damping of the front axle at its wheels',
        value: front.damping[speed],
        unit: 'N s/m',
      },
      {
        symbol: 'C_2',
        means: 'damping of the rear axle at its wheels',
        value: rear.damping[speed],
        unit: 'N s/m',
      },
    ],
  );
}

export function putModeDamping(
  axles: Damped,
  body: { readonly a: number; readonly b: number; readonly mass: number; readonly inertia: number },
  found: readonly [
    { readonly omega: number; readonly node: number },
    { readonly omega: number; readonly node: number },
  ],
  put: Put,
  working?: Working,
): void {
  const [q_1, q_2] = [axles.front.heavePart, axles.rear.heavePart];
  for (const { name, at, note, of } of modes) {
    const mode = found[name === 'bounce' ? 0 : 1];
    noteAxles(axles, at.speed, working);
    noteSolved(working, 'rate of the tyres over that of springs and tyres together', 'LP-59', () => [
      { symbol: 'q_1', means: 'part of the front movement that the dampers see', value: q_1, unit: '1' },
      { symbol: 'q_2', means: 'part of the rear movement that the dampers see', value: q_2, unit: '1' },
    ]);
    noteSolved(working, 'the two modes of body heave and pitch', 'LP-57', () => [
      {
        symbol: 'x_n',
        means: 'point that stands still, ahead of the centre of gravity',
        value: mode.node,
        unit: 'm',
      },
      { symbol: 'ω_n', means: 'circular frequency of the mode', value: mode.omega, unit: 'rad/s' },
    ]);
    noteSolved(working, 'masses on the scales and wheel centres', 'LP-56', () => [
      { symbol: 'a', means: 'centre of gravity behind the front axle', value: body.a, unit: 'm' },
      { symbol: 'b', means: 'centre of gravity ahead of the rear axle', value: body.b, unit: 'm' },
      { symbol: 'I_y', means: 'moment of inertia in pitch, as given', value: body.inertia, unit: 'kg m^2' },
    ]);
    const C = { C_1: axles.front.damping[at.speed], C_2: axles.rear.damping[at.speed] };
    put(
      note,
      of(
        {
          ...C,
          q_1,
          q_2,
          x_n: mode.node,
          a: body.a,
          b: body.b,
          ω_n: mode.omega,
          m_s: body.mass,
          I_y: body.inertia,
        },
        working,
      ),
    );
  }
}

export function putRollDamping(
  axles: Damped,
  roll: { readonly frequency: number; readonly inertia: number },
  put: Put,
  working?: Working,
): void {
  const [p_1, p_2] = [axles.front.rollPart, axles.rear.rollPart];
  const [t_1, t_2] = [axles.front.track, axles.rear.track];
  for (const { at, note, of } of rolls) {
    noteAxles(axles, at.speed, working);
    noteSolved(working, 'roll rate of the tyres over that of springs and tyres together', 'LP-60', () => [
      { symbol: 'p_1', means: 'part of the front roll that the dampers see', value: p_1, unit: '1' },
      { symbol: 'p_2', means: 'part of the rear roll that the dampers see', value: p_2, unit: '1' },
      { symbol: 't_1', means: 'front track', value: t_1, unit: 'm' },
      { symbol: 't_2', means: 'rear track', value: t_2, unit: 'm' },
      { symbol: 'I_r', means: 'moment of inertia about the roll axis', value: roll.inertia, unit: 'kg m^2' },
    ]);
    const C = { C_1: axles.front.damping[at.speed], C_2: axles.rear.damping[at.speed] };
    put(note, of({ ...C, p_1, p_2, t_1, t_2, f_φ: roll.frequency, I_r: roll.inertia }, working));
  }
}
