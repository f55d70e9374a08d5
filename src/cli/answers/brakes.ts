/** `brakes --json`. */
import { z } from 'zod';
import { floorAnswered } from './floor-figures.ts';
import { about } from './form.ts';

export const brakesForm = z.strictObject({ ...about('brakes'), is: floorAnswered });
