/**
 * What is typed field by field, read one by one: each amount with its unit.
 *
 * In    texts by the name of their field
 * Out   amounts in SI, or by the name of the field what is wrong with it
 */
import { readTeeth, type Teeth } from '../car/teeth.ts';
import type { AskedAmount } from '../measured/asked-reading.ts';
import { readAmount, readList, readWithSpread } from '../units/read.ts';

export type Texts = Readonly<Record<string, string>>;

/** What the fields of a form come to. */
export interface FieldsRead<Q> {
  readonly question?: Q;
  /** By the name of the field. */
  readonly wrong: Readonly<Record<string, string>>;
  /** Names of fields without which nothing can be asked. */
  readonly missing: readonly string[];
}

/** Reads fields one by one and keeps what is wrong with them. */
export class Fields {
  readonly wrong: Record<string, string> = {};
  readonly missing: string[] = [];
  readonly #texts: Texts;

  constructor(texts: Texts) {
    this.#texts = texts;
  }

  text(key: string): string | undefined {
    const text = this.#texts[key]?.trim();
    return text === '' ? undefined : text;
  }

  no(key: string, why: string): undefined {
    this.wrong[key] = why;
    return undefined;
  }

  #kept<T>(
    key: string,
    read: (
      text: string,
    ) => { readonly ok: true; readonly is: T } | { readonly ok: false; readonly why: string },
  ): T | undefined {
    const text = this.text(key);
    if (text === undefined) return undefined;
    const found = read(text);
    return found.ok ? found.is : this.no(key, found.why);
  }

  /** A plain value, SI. */
  value(key: string, like: string): number | undefined {
    return this.#kept(key, (text) => readAmount(text, like))?.value;
  }

  /** An amount with its ± where one is typed. */
  amount(key: string, like: string): AskedAmount | undefined {
    return this.#kept(key, (text) => amountIn(text, like));
  }

  /** Several amounts with commas between, each of its own kind. */
  amounts(key: string, likes: readonly string[]): readonly AskedAmount[] | undefined {
    return this.#kept(key, (text) => {
      const parts = text.split(',').map((part) => part.trim());
      if (parts.length !== likes.length) {
        return { ok: false, why: `"${text}" is not ${likes.length} amounts with commas between` };
      }
      const read = parts.map((part, k) => amountIn(part, likes[k]!));
      const bad = read.find((each) => !each.ok);
      return bad?.ok === false ? bad : { ok: true, is: read.flatMap((each) => (each.ok ? [each.is] : [])) };
    });
  }

  list(key: string, like: string): readonly number[] | undefined {
    return this.#kept(key, (text) => {
      const read = readList(text, like);
      return read.ok && read.is.some((each) => each < 0)
        ? { ok: false, why: 'none of them may be below nothing' }
        : read;
    });
  }

  count(key: string, least: number, most: number): number | undefined {
    return this.#kept(key, (text) => {
      const count = /^\d+$/.test(text) ? Number(text) : Number.NaN;
      return count >= least && count <= most
        ? { ok: true, is: count }
        : { ok: false, why: `"${text}" must be a whole number from ${least} to ${most}` };
    });
  }

  teeth(key: string): readonly Teeth[] | undefined {
    return this.#kept(key, (text) => {
      const read = text.split(',').map(readTeeth);
      return read.includes(undefined)
        ? { ok: false, why: `"${text}" holds what is no pair; write two counts of teeth, such as 13/35` }
        : { ok: true, is: read as readonly Teeth[] };
    });
  }
}

export function amountIn(text: string, like: string) {
  const read = readWithSpread(text, like);
  if (!read.ok) return read;
  const { value, u } = read.is;
  return { ok: true as const, is: { value, text, ...(u === undefined ? {} : { u }) } satisfies AskedAmount };
}

type Loose<T> = { [K in keyof T]: T[K] | undefined };

/** What was typed and is there, without what was not. */
export const told = <T extends object>(of: Loose<T>): T =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as T;
