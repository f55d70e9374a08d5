/** `fuel --json`. */
import { z } from 'zod';
import { floorAnswered } from './floor-figures.ts';
import { about } from './form.ts';

export const fuelForm = z.strictObject({ ...about('fuel'), is: floorAnswered });
