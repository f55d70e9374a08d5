/**
 * How the stiffness of an axle at its wheels is put together, for its working: springs of the two corners, anti-roll
 * bar, heave element.
 */
import { formula, type Working } from '../../working/working.ts';
import type { AxleStiffness } from '../axle/pair.ts';
import type { AxleState } from '../axle-of-car.ts';
import { noteSolved } from './note.ts';

const summed = (symbol: string, means: string, part: string) =>
  formula({
    symbol,
    means,
    is: `k_${part} + B_${part} + H_${part}`,
    unit: 'N/m',
    terms: {
      [`k_${part}`]: { unit: 'N/m', means: 'springs of the corner' },
      [`B_${part}`]: { unit: 'N/m', means: 'anti-roll bar' },
      [`H_${part}`]: { unit: 'N/m', means: 'heave element' },
    },
    source: 'LP-31',
  });

const ROWS = [
  { part: 'll', entry: 'leftLeft', of: summed('K_ll', 'stiffness of the left wheel', 'll') },
  { part: 'lr', entry: 'leftRight', of: summed('K_lr', 'stiffness between left and right', 'lr') },
  { part: 'rr', entry: 'rightRight', of: summed('K_rr', 'stiffness of the right wheel', 'rr') },
] as const;

const NONE: AxleStiffness = { leftLeft: 0, leftRight: 0, rightRight: 0 };

/** The 2 × 2 stiffness, each entry as the sum of its parts. */
export function stiffnessAtWheels(state: AxleState, working?: Working): AxleStiffness {
  const { left, right, bar, heave } = state;
  const springs: AxleStiffness = {
    leftLeft: left.now.elastic + left.now.byForce,
    leftRight: 0,
    rightRight: right.now.elastic + right.now.byForce,
  };
  const bars = bar?.stiffness ?? NONE;
  const heaves = heave?.stiffness ?? NONE;
  const entry = ({ part, entry: at, of }: (typeof ROWS)[number]): number => {
    const terms = { [`k_${part}`]: springs[at], [`B_${part}`]: bars[at], [`H_${part}`]: heaves[at] };
    noteSolved(working, 'derivatives of the closed linkage by the two travels', 'LP-31', () => [
      { symbol: `k_${part}`, means: 'wheel rate of the springs', value: springs[at], unit: 'N/m' },
      {
        symbol: `B_${part}`,
        means: 'anti-roll bar, rate and force × change of ratio',
        value: bars[at],
        unit: 'N/m',
      },
      {
        symbol: `H_${part}`,
        means: 'heave element, rate and force × change of ratio',
        value: heaves[at],
        unit: 'N/m',
      },
    ]);
    return of(terms, working);
  };
  return { leftLeft: entry(ROWS[0]), leftRight: entry(ROWS[1]), rightRight: entry(ROWS[2]) };
}
