/** `transfer --json` and `heights --json`. */
import { z } from 'zod';
import { floorAnswered } from './floor-figures.ts';
import { about } from './form.ts';

const against = z
  .strictObject({ spec: z.string(), is: floorAnswered })
  .optional()
  .meta({ description: 'the same of another spec, where that was asked for' });

export const transferForm = z.strictObject({ ...about('transfer'), is: floorAnswered, against });
export const heightsForm = z.strictObject({ ...about('heights'), is: floorAnswered, against });
