/** What the commands of readings by hand have in common: a place and its amounts behind an option, and the answer as a table. */
import {
  type GaugedAnswer,
  type GaugeName,
  type GaugeQuestion,
  gaugeAnswer,
  readGauge,
  type Texts,
} from '../questions/index.ts';
import { WHEELS, wheelName } from './asked.ts';
import { carOut, header, headLines, type MannerOptions, tailLines } from './command.ts';
import { badAsk } from './outcome.ts';
import { amountText, table } from './print.ts';
import { type Found, refusalOf, type Telling } from './tell.ts';

export const each = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];

/** Fields by their names, as options fill them: one is filled once. */
export class OptionTexts {
  readonly texts: Record<string, string> = {};

  /** An option that is one amount. @throws BadInput where nothing stands behind it */
  put(option: string, key: string, text: string | undefined): void {
    if (text === undefined) return;
    if (text.trim() === '') throw badAsk('asked/amount', `${option} has nothing behind it.`);
    this.texts[key] = text;
  }

  /**
   * A place and the amounts behind it, such as `front-left 152.4 mm, 150.9 mm`.
   *
   * @param places  fields that the amounts go into, by the name of the place
   * @param least  amounts that must be there
   * @throws BadInput where the place is none of these, there are fewer or more amounts, or it is given twice
   */
  place(
    option: string,
    text: string,
    places: Readonly<Record<string, readonly string[]>>,
    least: number,
  ): void {
    const [, name = '', rest = ''] = /^\s*([a-z-]+)\s+(.*)$/s.exec(text) ?? [];
    const amounts = rest.split(/\s*,\s*/).filter((part) => part !== '');
    const keys = Object.hasOwn(places, name) ? places[name] : undefined;
    const most = Object.values(places)[0]!.length;
    if (keys === undefined || amounts.length < least || amounts.length > most) {
      const count = least === most ? `${least}` : `${least} to ${most}`;
      throw badAsk(
        'asked/place',
        `${option} "${text}" is not a place and ${count} amounts with commas between.`,
        `The place is one of ${Object.keys(places).join(', ')}.`,
      );
    }
    if (keys[0]! in this.texts) throw badAsk('asked/twice', `${option} is given twice for ${name}.`);
    amounts.forEach((amount, k) => {
      this.texts[keys[k]!] = amount;
    });
  }
}

/** Fields at each wheel by the name of the wheel: `front-left` to `rim.frontLeft.front`. */
export const atWheels = (
  ...fields: readonly ((wheel: string) => string)[]
): Readonly<Record<string, readonly string[]>> =>
  Object.fromEntries(
    WHEELS.map((wheel) => {
      const key = `${wheel.end}${wheel.side === 'left' ? 'Left' : 'Right'}`;
      return [wheelName(wheel), fields.map((field) => field(key))];
    }),
  );

/** What the options ask. @throws BadInput where one cannot be read, or what belongs together is not all there */
export function askedByGauge<N extends GaugeName>(
  name: N,
  texts: Texts,
  says: {
    /** The option of a field. */
    readonly option: (key: string) => string;
    /** Where nothing was read. */
    readonly nothing: string;
    /** Where something was begun. */
    readonly half?: { readonly code: string; readonly words: (key: string) => string };
  },
  sheets?: readonly string[],
): Extract<GaugeQuestion, { name: N }> {
  const { question, wrong, codes, half } = readGauge(name, texts, sheets);
  const [bad] = Object.keys(wrong);
  if (bad !== undefined)
    throw badAsk(`asked/${codes[bad] ?? 'amount'}`, `${says.option(bad)}: ${wrong[bad]}.`);
  if (half.length > 0 && says.half !== undefined)
    throw badAsk(`asked/${says.half.code}`, says.half.words(half[0]!));
  if (question === undefined) throw badAsk('asked/nothing', says.nothing);
  return question as Extract<GaugeQuestion, { name: N }>;
}

export function gaugedTelling(
  name: Exclude<GaugeName, 'weighing'>,
  { car, file }: Found,
  means: string,
  question: GaugeQuestion,
  options: MannerOptions,
): Telling {
  const is = gaugeAnswer(car, question) as GaugedAnswer;
  return {
    json: { ...header(name), car: carOut(car, file), is },
    lines: () =>
      is.reached
        ? [...headLines(car, means), ...gaugedLines(is.figures, options), ...tailLines(is.notes, is.cautions)]
        : [],
    refusal: refusalOf(is),
  };
}

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
