/** A log of the car at work: a CSV beside the car file, and what its columns are. */
import { z } from 'zod';
import { choice, stated, words, yesNo } from '../field.ts';

const named = {
  heading: words('heading of the column as it stands in the file'),
  unit: words('unit of the column'),
  reversed: yesNo('its sign is the other way round').optional(),
};

const column = (means: string) => z.strictObject(named).meta({ title: means }).optional();

/** A column whose sensor does not read nothing at rest. */
const zeroed = (means: string, unit: string, si: string, most: number) =>
  z
    .strictObject({
      ...named,
      rest: stated({
        means: 'what it reads while the car stands still on level ground',
        measure: 'From the log, before the car moves, with the sign that it has there.',
        unit,
        si,
        min: -most,
        max: most,
      }).optional(),
    })
    .meta({ title: means })
    .optional();

const acceleration = (means: string) => zeroed(means, 'gn', 'm/s^2', 1.5);
const load = (wheel: string) =>
  zeroed(`load of the ${wheel} tyre, where the logger works it out`, 'N', 'N', 5000);

export const log = z.strictObject({
  file: words('name of the CSV beside the car file'),
  decimal: choice('decimal sign in the CSV', ['.', ',']).optional(),
  note: words('note').optional(),
  columns: z.strictObject({
    time: column('time'),
    speed: column('speed'),
    longitudinal: acceleration('fore and aft acceleration, forward positive'),
    lateral: acceleration('sideways acceleration, positive in a left-hand turn'),
    vertical: acceleration('upward acceleration'),
    rack: zeroed('rack travel, to the left positive', 'mm', 'm', 150),
    loadFrontLeft: load('front left'),
    loadFrontRight: load('front right'),
    loadRearLeft: load('rear left'),
    loadRearRight: load('rear right'),
  }),
});
