/** What was said of primaries, said of the part that it is about: the pipes of secondaries are no cylinders. */

import type { ToldSection } from './in-car-told.ts';
import type { CarPart } from './parts-of-car.ts';
import type { PrimariesSet } from './primaries-set.ts';

export function partWords({ stage }: Pick<CarPart, 'stage'>, text: string): string {
  if (stage === 'primaries') return text;
  const own = text.replace(/\bthe flange\b/g, 'its collector');
  if (stage === 'tail') {
    return own
      .replace(/\bpipe of cylinder 1\b/g, 'tail')
      .replace(/\bCylinder 1\b/g, 'Tail')
      .replace(/\bcylinder 1\b/g, 'tail');
  }
  return own
    .replace(/\bpipe of cylinder (\d+)/g, 'secondary $1')
    .replace(/\bCylinder (\d+)/g, 'Secondary $1')
    .replace(/\bcylinder (\d+)/g, 'secondary $1');
}

/** What is told of a part's pipes in the car, under their own names. */
export function partSection(
  part: Pick<CarPart, 'stage'>,
  { lead, table, after, ...section }: ToldSection,
): ToldSection {
  const words = (text: string): string =>
    partWords(part, text)
      .replace('from its flange on', 'from where it begins on')
      .replace('Hardest on its studs', 'Hardest where it begins')
      .replace(
        'The collector hangs on its pipes and goes with them',
        part.stage === 'tail'
          ? 'Its end is taken to be free, and moves'
          : 'Their collector hangs on them and goes with them',
      )
      .replace('; the pipes bow as they hold one another', part.stage === 'tail' ? '' : '$&');
  const name = part.stage === 'tail' ? () => 'T' : (cell: string) => `S${cell}`;
  return {
    ...section,
    lead: lead.map(words),
    after: after.map(words),
    ...(table === undefined
      ? {}
      : {
          table: {
            ...table,
            columns: table.columns.map((each, k) =>
              k === 0 ? { ...each, title: 'Pipe', brief: 'pipe' } : each,
            ),
            rows: table.rows.map(({ cells: [first, ...rest], lacks }) => ({
              cells: [name(first!), ...rest.map(words)],
              lacks,
            })),
          },
        }),
  };
}

/** The set of a part under the names that its pipes have in the shop: `3` of cylinder 3, `S1` of the first secondary, `T` of the tail. */
export function setOfPart(part: CarPart, set: PrimariesSet): PrimariesSet {
  if (part.stage === 'primaries') return set;
  return {
    ...set,
    pipes: set.pipes.map((each) => ({
      ...each,
      pipe: { ...each.pipe, name: part.stage === 'tail' ? 'T' : `S${each.cylinder}` },
      ...(each.tightest === undefined
        ? {}
        : { tightest: { ...each.tightest, against: partWords(part, each.tightest.against) } }),
    })),
    breaches: set.breaches.map((each) => partWords(part, each)),
  };
}

/** What the others call its collector: `collector 1+4 of the left bank`. */
export const collectorName = ({ side, name, stage }: CarPart): string =>
  stage === 'tail'
    ? `end of the tail of the ${side} bank`
    : stage === 'secondaries'
      ? `last collector of the ${side} bank`
      : `collector${name === undefined ? '' : ` ${name}`} of the ${side} bank`;

/** What the others call one of its pipes. */
export const pipeName = ({ side, stage }: CarPart, cylinder: number): string =>
  stage === 'tail'
    ? `tail of the ${side} bank`
    : stage === 'secondaries'
      ? `secondary ${cylinder} of the ${side} bank`
      : `pipe of cylinder ${cylinder}`;
