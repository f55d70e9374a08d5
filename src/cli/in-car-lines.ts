/** A set in its car as a terminal shows it. */
import {
  type CarPart,
  hotTold,
  inCarTold,
  type PrimariesHot,
  type PrimariesInCar,
  partSection,
  type ToldAsked,
  type ToldSection,
} from '../questions/index.ts';
import type { Speech } from '../units/show.ts';
import { plainSpaces, table, wrapped } from './print.ts';

/** No more rows of gaps than a screen has room for; the rest stands in the answer as JSON. */
const MOST_ROWS = 12;

const lines = (text: string): readonly string[] => wrapped(text, 98);

export const inCarLines = (inCar: PrimariesInCar, asked: Omit<ToldAsked, 'most'>): string[] =>
  sectionLines(inCarTold(inCar, { ...asked, most: MOST_ROWS }));

/** Of secondaries and tail. */
export const hotLines = (part: CarPart, hot: PrimariesHot, speech: Speech): string[] =>
  sectionLines([partSection(part, hotTold(hot, { speech, most: MOST_ROWS }))]);

const sectionLines = (sections: readonly ToldSection[]): string[] =>
  sections
    .flatMap(({ title, lead, table: of, after }, k) => [
      ...(k === 0 ? [] : ['']),
      title,
      ...lead.flatMap(lines),
      ...(of === undefined || of.rows.length === 0
        ? []
        : ['', ...table([of.columns.map((each) => each.title), ...of.rows.map(({ cells }) => cells)]), '']),
      ...after.flatMap(lines),
    ])
    .map(plainSpaces);
