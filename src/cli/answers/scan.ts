/** Form of a scan's answer. */
import { z } from 'zod';
import { about } from './form.ts';

export const scanForm = z.strictObject({
  ...about('scan'),
  scan: z.string().meta({ description: 'name of the scan in the car file' }),
  triangles: z.number(),
  corners: z.number(),
  unit: z.string().meta({ description: 'of sides and rims' }),
  sides: z.array(z.number()).meta({ description: 'of the upright box as it was scanned' }),
  rims: z.array(z.number()).meta({ description: 'length round each, longest first; the outer edge is one' }),
  turnedEdges: z.number(),
  crowdedEdges: z.number(),
  slivers: z.number(),
  datums: z.array(z.strictObject({ name: z.string(), off: z.number().meta({ description: 'm' }) })),
  rms: z.number().meta({ description: 'm' }),
  doubts: z.array(z.string()),
});
