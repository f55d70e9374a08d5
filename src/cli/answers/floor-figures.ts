/** What the questions of the flat floor answer under --json: figures, and the working of one of them. */
import { z } from 'zod';
import type { ToldAnswer, ToldFigure } from '../../questions/index.ts';
import { readingForm, readingOut, stepForm, stepOut } from './corner.ts';
import { finite, number, remarks, spread } from './form.ts';

const floorFigure = z
  .strictObject({
    id: z.string(),
    of: z.string().meta({ description: 'what it belongs to: front, rear left, gear 3, car' }),
    means: z.string(),
    symbol: z.string(),
    value: number('in SI; null where the figure does not exist here'),
    unit: z.string().meta({ description: 'SI unit; 1 for a pure number' }),
    spread: spread.optional(),
    say: z.string().optional().meta({ description: 'what must be said beside the figure' }),
  })
  .meta({ id: 'floor-figure' });

export const floorAnswered = z.discriminatedUnion('reached', [
  z.strictObject({
    reached: z.literal(true),
    figures: z.array(floorFigure),
    working: z
      .strictObject({
        figure: z.string(),
        steps: z.array(stepForm),
        readings: z.record(z.string(), readingForm),
      })
      .optional(),
    ...remarks,
  }),
  z.strictObject({ reached: z.literal(false), message: z.string() }),
]);

function figureOut({ id, of, means, symbol, value, unit, say, spread: s }: ToldFigure) {
  return {
    id,
    of,
    means,
    symbol,
    value: finite(value),
    unit,
    ...(s === undefined ? {} : { spread: structuredClone(s) as z.input<typeof spread> }),
    ...(say === undefined ? {} : { say }),
  };
}

export function floorOut(of: ToldAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  const { figures, notes, cautions, working } = of;
  return {
    reached: true as const,
    figures: figures.map(figureOut),
    notes: [...notes],
    cautions: [...cautions],
    ...(working === undefined
      ? {}
      : {
          working: {
            figure: `${working.figure.of}.${working.figure.id}`,
            steps: working.steps.map(stepOut),
            readings: Object.fromEntries(
              Object.entries(working.readings).map(([path, each]) => [path, readingOut(each)]),
            ),
          },
        }),
  };
}
