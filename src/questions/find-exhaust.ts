/**
 * The parts of one bank or of both found together: each bank for itself, or the one found and the other its image.
 *
 * In    the parts as they were put, of both banks where one is mirrored
 * Out   as `FindingParts`, and once all stand the sets with the image, or what is in the way of it
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { FindingParts } from './find-parts.ts';
import { type MirroredBank, mirroredBank } from './mirrored-bank.ts';
import { writeParts } from './parts-file.ts';
import type { PartPut } from './parts-put.ts';
import type { PartSet } from './primaries-parts.ts';

export interface FoundExhaust {
  /** Of all parts that stand: of one bank alone where its image does not suit the other. Undefined until all do. */
  readonly sets: readonly PartSet[] | undefined;
  /** Of whom the other bank is to be the image, and what came of it. */
  readonly mirrored?: MirroredBank;
  /** The image suits the other bank, and its sets are among those above. */
  readonly isImage: boolean;
  /** All sets as one file. */
  readonly file?: string;
}

/** The parts that are looked for: of one bank where the other is its image. */
export const lookedFor = (parts: readonly PartPut[], mirror: BankName | undefined): readonly PartPut[] =>
  mirror === undefined
    ? parts
    : parts
        .filter(({ part }) => part.side === mirror)
        // what begins at others counts them anew
        .map(({ gas, part, ...of }) => ({
          ...of,
          part,
          gas: { ...gas, ...(part.from === undefined ? {} : { from: part.from }) },
        }));

/** @param parts  all of them, as they were put */
export function foundExhaust(
  parts: readonly PartPut[],
  finding: Pick<FindingParts, 'solutions' | 'sets'>,
  mirror: BankName | undefined,
): FoundExhaust {
  const solutions = finding.solutions();
  if (solutions === undefined) return { sets: undefined, isImage: false };
  const mirrored = mirror === undefined ? undefined : mirroredBank(parts, solutions, mirror);
  const image = mirrored?.reached === true && mirrored.inTheWay.length === 0 ? mirrored : undefined;
  const sets = image?.sets ?? finding.sets()!;
  const other = mirror === 'left' ? 'right' : 'left';
  return {
    sets,
    ...(mirrored === undefined ? {} : { mirrored }),
    isImage: image !== undefined,
    file: writeParts(sets, image === undefined ? undefined : other),
  };
}
