/** What the commands of readings by hand have in common: a place and its amounts behind an option, and the answer as a table. */
import type { GaugedAnswer } from '../questions/index.ts';
import { readWithSpread } from '../units/read.ts';
import { carOut, header, headLines, type MannerOptions, tailLines } from './command.ts';
import { badAsk } from './outcome.ts';
import { amountText, table } from './print.ts';
import { type Found, refusalOf, type Telling } from './tell.ts';

export interface Gauge {
  readonly value: number;
  readonly u: number;
}

export const each = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];

/** An amount with its ±; without one it is taken as usual for this kind of reading. @throws BadInput */
export function askedGauge(option: string, text: string, like: string, usual: number): Gauge {
  const read = readWithSpread(text, like);
  if (!read.ok) throw badAsk('asked/amount', `${option}: ${read.why}.`);
  return { value: read.is.value, u: read.is.u ?? usual };
}

/**
 * A place and the amounts behind it: `front-left 152.4 mm, 150.9 mm`.
 *
 * @throws BadInput where the place is none of these, or there are fewer or more amounts
 */
export function placedGauges<T>(
  option: string,
  text: string,
  places: Readonly<Record<string, T>>,
  how: { readonly least: number; readonly most: number; readonly like: string; readonly usual: number },
): { readonly place: T; readonly amounts: readonly Gauge[] } {
  const [, name = '', rest = ''] = /^\s*([a-z-]+)\s+(.*)$/s.exec(text) ?? [];
  const amounts = rest.split(/\s*,\s*/).filter((part) => part !== '');
  const place = Object.hasOwn(places, name) ? places[name] : undefined;
  if (place === undefined || amounts.length < how.least || amounts.length > how.most) {
    const count = how.least === how.most ? `${how.least}` : `${how.least} to ${how.most}`;
    throw badAsk(
      'asked/place',
      `${option} "${text}" is not a place and ${count} amounts with commas between.`,
      `The place is one of ${Object.keys(places).join(', ')}.`,
    );
  }
  return { place, amounts: amounts.map((each) => askedGauge(option, each, how.like, how.usual)) };
}

type Name = 'strings' | 'bump-steer' | 'scales' | 'levels';

export const gaugedTelling = (
  name: Name,
  { car, file }: Found,
  means: string,
  is: GaugedAnswer,
  options: MannerOptions,
): Telling => ({
  json: { ...header(name), car: carOut(car, file), is },
  lines: () =>
    is.reached
      ? [...headLines(car, means), ...gaugedLines(is.figures, options), ...tailLines(is.notes, is.cautions)]
      : [],
  refusal: refusalOf(is),
});

/** Those that belong to several wheels, pads or rows stand in columns; the rest below. */
function gaugedLines(
  figures: Extract<GaugedAnswer, { reached: true }>['figures'],
  { units }: MannerOptions,
): string[] {
  const owners = [...new Set(figures.map(({ of }) => of))];
  const idsOf = (owner: string): string =>
    figures
      .filter(({ of }) => of === owner)
      .map(({ id }) => id)
      .join();
  const groups = [...new Set(owners.map(idsOf))];
  return groups.flatMap((group) => {
    const members = owners.filter((owner) => idsOf(owner) === group);
    const own = figures.filter(({ of }) => members.includes(of));
    const ids = [...new Set(own.map(({ id }) => id))];
    return [
      '',
      ...table([
        ['', ...ids.map((id) => own.find((one) => one.id === id)!.words)],
        ...members.map((of) => [
          of,
          ...ids.map((id) => {
            const { value, unit, u } = own.find((one) => one.of === of && one.id === id)!;
            return amountText(value, unit, units, u);
          }),
        ]),
      ]).map((line) => `  ${line}`),
    ];
  });
}
