/** A named number of an answer that is not a figure of a corner: how it is handed out and how it is printed. */
import { z } from 'zod';
import type { Speech } from '../units/show.ts';
import { amountText, table } from './print.ts';

export const quantity = z
  .strictObject({
    id: z.string(),
    means: z.string(),
    value: z.number().nullable().meta({ description: 'SI; null where there is none' }),
    unit: z.string(),
    u: z.number().optional().meta({ description: 'one standard uncertainty, where it is known' }),
  })
  .meta({ id: 'quantity' });

export type Quantity = z.infer<typeof quantity>;

interface Named {
  readonly id: string;
  readonly means: string;
  readonly unit: string;
}

/** Quantities in the order in which they are declared; those that an answer does not have are left out. */
export const quantities = <T extends string>(
  declared: Readonly<Record<T, readonly [means: string, unit: string]>>,
  values: Readonly<Partial<Record<NoInfer<T>, number | undefined>>>,
): Quantity[] =>
  (Object.entries(declared) as [T, readonly [string, string]][]).flatMap(([id, [means, unit]]) => {
    const value = values[id];
    return value === undefined ? [] : [quantityOf({ id, means, unit }, value)];
  });

export const quantityOf = (of: Named, value: number, u?: number): Quantity => ({
  ...of,
  value: Number.isFinite(value) ? value : null,
  ...(u === undefined ? {} : { u }),
});

/** Amounts whose sign is a word to the trade: what is said above nothing, and below. */
const SIGN_WORDS: Readonly<Record<string, readonly [above: string, below: string]>> = {
  standsHigher: ['higher by', 'lower by'],
};

function quantityText({ id, value, unit, u }: Quantity, speech: Speech): string {
  const ways = SIGN_WORDS[id];
  if (ways === undefined || value === null || value === 0) return amountText(value, unit, speech, u);
  return `${ways[value > 0 ? 0 : 1]} ${amountText(Math.abs(value), unit, speech, u)}`;
}

export const quantityLines = (of: readonly Quantity[], speech: Speech): string[] =>
  table(of.map((each) => [each.means, quantityText(each, speech)])).map((line) => `  ${line}`);

/** One column a member: what all have in common on the left. */
export const sideBySide = (
  members: readonly { readonly name: string; readonly of: readonly Quantity[] }[],
  speech: Speech,
): string[] => {
  const ids = [...new Set(members.flatMap((each) => each.of.map((one) => one.id)))];
  const rows = ids.map((id) => {
    const found = members.map((each) => each.of.find((one) => one.id === id));
    const means = found.find((each) => each !== undefined)!.means;
    return [means, ...found.map((each) => (each === undefined ? '' : quantityText(each, speech)))];
  });
  return table([['', ...members.map((each) => each.name)], ...rows]).map((line) => `  ${line}`);
};
