/** A case as it is written into the car file: texts with their units, nothing that is nought. */
import { type Doing, STANDING } from '../../questions/index.ts';
import { fromSI } from '../../units/unit.ts';

const text = (value: number, unit: string, word: string, digits: number): string =>
  `${Number(fromSI(value, unit).toFixed(digits))} ${word}`;

const force = (value: number | undefined, key: string): Record<string, string> =>
  value === undefined ? {} : { [key]: text(value, 'N', 'N', 0) };

export function caseForFile(doing: Doing): Record<string, unknown> {
  const number = (
    key: 'longitudinal' | 'lateral' | 'vertical' | 'speed' | 'rack',
    unit: string,
    word: string,
    digits: number,
  ) => (doing[key] === STANDING[key] ? {} : { [key]: text(doing[key], unit, word, digits) });
  const strikes = Object.entries(doing.strikes).filter(([, loads]) => loads !== 0);
  const contacts = Object.entries(doing.contacts).map(([wheel, { up, forward, left, by }]) => [
    wheel,
    {
      ...force(up, 'up'),
      ...force(forward, 'forward'),
      ...force(left, 'left'),
      ...(by === undefined ? {} : { by }),
    },
  ]);
  return {
    ...number('longitudinal', 'gn', 'g', 3),
    ...number('lateral', 'gn', 'g', 3),
    ...number('vertical', 'gn', 'g', 3),
    ...number('speed', 'km/h', 'km/h', 1),
    ...number('rack', 'mm', 'mm', 2),
    ...(doing.frontBrakes === undefined ? {} : { frontBrakes: text(doing.frontBrakes, '%', '%', 1) }),
    ...(strikes.length === 0 ? {} : { kerb: Object.fromEntries(strikes) }),
    ...(contacts.length === 0 ? {} : { contacts: Object.fromEntries(contacts) }),
  };
}
