/** What was measured when the car was surveyed: arm sets, lengths, heights, and the points that fix the car axes. */
import { z } from 'zod';
import { amount, choice, words } from '../field.ts';

const place = words(
  'a point of the car by its path, such as front.left.lowerOuter, or a mark by its own name',
);

const length = (means: string, measure: string, usual: string, min = 1) =>
  amount({ means, measure, unit: 'mm', si: 'm', min, max: 8000, usual });

export const survey = z.strictObject({
  sets: z
    .record(
      z.string(),
      z.strictObject({
        file: words('name of the CSV beside the car file, with columns name, x, y, z'),
        unit: choice('unit of the co-ordinates', ['mm', 'm', 'in']),
        decimal: choice('decimal sign in the CSV', ['.', ',']).optional(),
        with: words('instrument').optional(),
        spread: words('standard uncertainty of one co-ordinate, such as 0.08 mm').optional(),
        frame: choice('axes of the co-ordinates', ['free', 'car']).optional(),
      }),
    )
    .optional(),
  lengths: z
    .array(
      z.strictObject({
        kind: choice('what was measured', ['length', 'floor length', 'height', 'offset']),
        from: place,
        to: place.optional(),
        axis: choice('offset along', ['x', 'y', 'z']).optional(),
        reading: length('measured length', 'Tape, trammel, plumb bob or height gauge.', 'tape', -8000),
      }),
    )
    .optional(),
  datum: z
    .array(
      z.strictObject({
        points: z.array(place).min(1).max(2),
        axis: choice('axis', ['x', 'y', 'z']),
        at: length(
          'where it stands, or the mean of a pair',
          'By definition of the car axes, or measured.',
          'maker',
          -8000,
        ),
      }),
    )
    .optional(),
});
