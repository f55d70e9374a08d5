/** A set in its car as a terminal shows it: hot beside cold, the nuts, the way off. */
import type { BankName } from '../car/check-exhaust.ts';
import {
  hotGapWords,
  hotRows,
  hotVerdict,
  hotWords,
  nutsVerdict,
  type PrimariesInCar,
  removalWords,
  socketWords,
  spannerWords,
} from '../questions/index.ts';
import type { Speech } from '../units/show.ts';
import { plainSpaces, table, wrapped } from './print.ts';

/** No more rows of gaps than a screen has room for; the rest stands in the answer as JSON. */
const MOST_ROWS = 12;

const lines = (text: string): readonly string[] => wrapped(text, 98);

export function inCarLines({ hot, nuts, removal }: PrimariesInCar, bank: BankName, speech: Speech): string[] {
  const rows = hotRows(hot);
  return [
    'Hot',
    ...[hotVerdict(hot, speech), ...hotWords(hot, speech)].flatMap(lines),
    ...(rows.length === 0
      ? []
      : [
          '',
          ...table([
            ['Cylinder', 'to', 'asked hot', 'cold', 'hot', 'change'],
            ...rows.slice(0, MOST_ROWS).map((gap) => {
              const said = hotGapWords(gap, hot, speech);
              return [String(gap.cylinder), gap.against, said.asked, said.cold, said.hot, said.closes];
            }),
          ]),
        ]),
    '',
    'Nuts of the flanges',
    ...(nuts.reached
      ? [
          ...lines(nutsVerdict(nuts, speech)),
          '',
          ...table([
            ['Cylinder', 'nut, seen from the tube', 'socket', 'open spanner'],
            ...nuts.nuts.map((each) => [
              String(each.cylinder),
              each.where,
              socketWords(each, speech),
              spannerWords(each, speech),
            ]),
          ]),
        ]
      : lines(nuts.message)),
    '',
    'Taking it off',
    ...removalWords(removal, bank, speech).flatMap(lines),
  ].map(plainSpaces);
}
