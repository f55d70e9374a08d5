/** `pressures --json`. */
import { z } from 'zod';
import { floorAnswered } from './floor-figures.ts';
import { about } from './form.ts';

export const pressuresForm = z.strictObject({ ...about('pressures'), is: floorAnswered });
