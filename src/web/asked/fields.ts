/** Fields of a card that are typed or chosen, in groups or as a table, and how they are kept in the address. */

export interface Field {
  readonly key: string;
  readonly name: string;
  /** What is taken where nothing is typed. */
  readonly usual?: string;
  /** How it may be written. */
  readonly such?: string;
  /** Its own line below its name, for what is long. */
  readonly long?: true;
  /** Chosen and not typed; `cases` and `sheets` are those of the car. */
  readonly of?: 'tick' | 'cases' | 'sheets' | readonly string[];
  /** A bare number is taken in this unit, as the workshop speaks; left out, a unit is typed with each. */
  readonly units?: readonly [metric: string, imperial: string];
  /** May be below nothing: keys of a number pad have no minus. */
  readonly signed?: true;
}

export interface FieldList {
  /** Left out: always on show. */
  readonly title?: string;
  readonly fields: readonly Field[];
}

export interface FieldTable {
  readonly title?: string;
  /** What is typed into it. */
  readonly caption: string;
  readonly columns: readonly string[];
  /** The names of fields are those of row and column. */
  readonly rows: readonly { readonly name: string; readonly keys: readonly string[] }[];
  readonly units: NonNullable<Field['units']>;
  readonly such: readonly string[];
  /** Columns that may be below nothing, by their place. */
  readonly signed?: readonly number[];
  /** Rows are added and taken out: so many are there at first. */
  readonly first?: number;
}

export type FieldGroup = FieldList | FieldTable;

/** Under this name the count of rows of a table that grows is kept. */
export const ROWS = 'rows';

/** All fields of a card by their full names. */
export const fieldsIn = (groups: readonly FieldGroup[]): readonly Field[] =>
  groups.flatMap((group) =>
    'fields' in group
      ? group.fields
      : group.rows.flatMap(({ name, keys }) =>
          keys.map((key, k) => ({
            key,
            name: `${name}, ${group.columns[k]}`,
            such: group.such[k]!,
            units: group.units,
            ...(group.signed?.includes(k) === true ? { signed: true as const } : {}),
          })),
        ),
  );

/** What is typed at the stops, `fuel.laps` to its text, as it stands in the address. */
export type AskedTexts = Readonly<Record<string, string>>;

/** Longer than anything that is typed here. */
const LONGEST = 160;

/** What an address holds of these cards; what is no field is passed over, whoever wrote the address. */
export const askedIn = (
  address: URLSearchParams,
  cards: Readonly<Record<string, readonly FieldGroup[]>>,
): AskedTexts =>
  Object.fromEntries(
    Object.entries(cards).flatMap(([card, groups]) =>
      [...fieldsIn(groups).map(({ key }) => key), ROWS].flatMap((key) => {
        const text = address.get(`${card}.${key}`);
        return text === null || text === '' ? [] : [[`${card}.${key}`, text.slice(0, LONGEST)]];
      }),
    ),
  );

/** The texts of one card, by the names of their fields. */
export const textsOf = (card: string, asked: AskedTexts): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(asked).flatMap(([key, text]) =>
      key.startsWith(`${card}.`) ? [[key.slice(card.length + 1), text]] : [],
    ),
  );

/** The texts with some of one card put otherwise; an empty one is taken out. */
export const textsWith = (
  card: string,
  asked: AskedTexts,
  to: Readonly<Record<string, string>>,
): AskedTexts =>
  Object.fromEntries(
    Object.entries({
      ...asked,
      ...Object.fromEntries(Object.entries(to).map(([key, text]) => [`${card}.${key}`, text])),
    }).filter(([, text]) => text !== ''),
  );
