/** `tightening --json`. */
import { z } from 'zod';
import type { TighteningAnswer } from '../../questions/index.ts';
import { about } from './form.ts';

const band = z
  .strictObject({ low: z.number(), middle: z.number(), high: z.number() })
  .meta({ description: 'N, as a band' });

const torqueFigure = z.strictObject({
  atNut: z.number().meta({ description: 'N m' }),
  setting: z.number().meta({ description: 'N m on the wrench, with the crowfoot where there is one' }),
  rounds: z.array(z.number()).meta({ description: 'N m on the wrench in each round' }),
  lubricant: z.string(),
  preload: band,
  yieldShare: z.number().meta({ description: 'stress over yield while the wrench turns, high end' }),
  text: z.string().meta({ description: 'as written in the file' }),
});

export const tighteningForm = z.strictObject({
  ...about('tightening'),
  joint: z.enum(['caseToEngine', 'engineToTub']),
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      reached: z.literal(true),
      studs: z.array(
        z.strictObject({
          number: z.number().meta({ description: '1 for the first' }),
          name: z.string(),
          sort: z.string(),
          y: z.number().meta({ description: 'm on the face, to the left, from the centre of the studs' }),
          z: z.number().meta({ description: 'm on the face, up' }),
          pad: z.number(),
          hole: z.number(),
        }),
      ),
      rounds: z.array(z.number()).meta({ description: 'parts of the value' }),
      sorts: z.array(
        z.strictObject({
          name: z.string(),
          studs: z.array(z.string()),
          thread: z.string(),
          material: z.string(),
          materialMeans: z.string(),
          parent: z.string(),
          engaged: z.number().meta({ description: 'm' }),
          running: z.number().meta({ description: 'N m' }),
          wrench: z.number().optional().meta({ description: 'm' }),
          crowfoot: z.number().optional().meta({ description: 'm' }),
          file: torqueFigure.optional(),
          builder: z
            .strictObject({
              atNut: z.number(),
              text: z.string(),
              source: z.string(),
              lubricant: z.string().optional(),
              figure: torqueFigure.optional(),
            })
            .optional(),
          toSet: z.enum(['file', 'builder', 'choose']).meta({
            description:
              "whose figure is to be set; choose: they differ, or the builder's names no lubricant, and a person decides",
          }),
          compared: z.string(),
        }),
      ),
      holdPoints: z.array(z.string()),
      afterwards: z.array(z.string()),
      rule: z.string(),
      notes: z.array(z.string()),
      cautions: z.array(z.string()),
    }),
    z.strictObject({ reached: z.literal(false), message: z.string() }),
  ]),
});

/** The answer without the joint, which stands beside it. */
export function tighteningOut(of: TighteningAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  const { joint: _, dowels: __, ...is } = of;
  return is;
}
