/** Slips in the description of a log: a unit that is none, or that does not measure what its column holds. */
import type { Problem } from '../measured/problem.ts';
import { ownUnit, sameDimension, unitNamed, unitsLike } from '../units/unit.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

/** What each column measures, by an SI unit. */
const LIKE = {
  time: 's',
  speed: 'm/s',
  longitudinal: 'm/s^2',
  lateral: 'm/s^2',
  vertical: 'm/s^2',
  rack: 'm',
  loadFrontLeft: 'N',
  loadFrontRight: 'N',
  loadRearLeft: 'N',
  loadRearRight: 'N',
} as const;

export const checkLogs = ({ logs }: Placed<RawCar>): readonly Problem[] =>
  Object.entries(logs ?? {}).flatMap(([name, { columns }]) =>
    Object.entries(columns).flatMap(([channel, column]): Problem[] => {
      if (column === undefined) return [];
      const like = LIKE[channel as keyof typeof LIKE];
      // of an acceleration the trade says g and means that of free fall, not a gram
      const unit = unitNamed(column.unit === 'g' && like === 'm/s^2' ? 'gn' : column.unit);
      if (unit !== undefined && sameDimension(unit.dimension, ownUnit(like).dimension)) return [];
      return [
        {
          code: 'log/unit',
          path: `logs.${name}.columns.${channel}.unit`,
          message: `Log ${name}: "${column.unit}" does not measure ${channel}.`,
          remedy: `Write one of ${[...unitsLike(like), ...(like === 'm/s^2' ? ['g'] : [])].join(', ')}.`,
          weight: 'error',
        },
      ];
    }),
  );
