/**
 * Sets of several parts as one file: each under its bank and, where the bank has several, the name of its part.
 *
 * A set in it has the exchange form of solutions. A file of one set alone is read as well.
 */

import type { BankName } from '../car/check-exhaust.ts';
import { solutionJson } from '../gaspath/route/exchange.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { readSolution } from '../gaspath/verify/read.ts';
import type { PartSet } from './primaries-parts.ts';

export const PARTS_FORMAT = 'primaries-parts/1';

export interface FiledPart {
  readonly bank: BankName;
  readonly part?: string;
  /** It is the mirror image of the other bank's: its flanges need not stand on the ports to the last tenth. */
  readonly mirrored: boolean;
  readonly solution: RouteSolution;
}

export type PartsRead =
  | { readonly ok: true; readonly parts: readonly FiledPart[] }
  | { readonly ok: false; readonly message: string };

/** @param mirrored  the bank that is the image of the other, where one is */
export const writeParts = (sets: readonly PartSet[], mirrored?: BankName): string =>
  `${JSON.stringify(
    {
      format: PARTS_FORMAT,
      units: 'mm',
      parts: sets.map(({ part: { side, name }, solution }) => ({
        bank: side,
        ...(name === undefined ? {} : { part: name }),
        ...(side === mirrored ? { mirrored: true } : {}),
        set: solutionJson(solution),
      })),
    },
    null,
    1,
  )}\n`;

/** Whether a file is of several parts; anything else is for whoever reads one set. */
export function isPartsFile(text: string): boolean {
  try {
    return (JSON.parse(text) as { format?: unknown } | null)?.format === PARTS_FORMAT;
  } catch {
    return false;
  }
}

/** @param text  for which `isPartsFile` is true */
export function readParts(text: string): PartsRead {
  const { parts } = JSON.parse(text) as { readonly parts?: unknown };
  if (!Array.isArray(parts) || parts.length === 0) {
    return { ok: false, message: 'The file has no parts.' };
  }
  const read: FiledPart[] = [];
  for (const [k, each] of (parts as readonly unknown[]).entries()) {
    const { bank, part, mirrored, set } = (each ?? {}) as Readonly<Record<string, unknown>>;
    if (bank !== 'left' && bank !== 'right') {
      return { ok: false, message: `Part ${k + 1} of the file says no bank; left or right is wanted.` };
    }
    if (part !== undefined && typeof part !== 'string') {
      return { ok: false, message: `Part ${k + 1} of the file: its name is no text.` };
    }
    const solution = readSolution(set);
    if (typeof solution === 'string') {
      return { ok: false, message: `Part ${k + 1} of the file holds no set of primaries: ${solution}.` };
    }
    read.push({
      bank,
      ...(part === undefined ? {} : { part }),
      mirrored: mirrored === true,
      // whoever reads a set checks it against its problem; the form is what is told here
      solution: set as RouteSolution,
    });
  }
  return { ok: true, parts: read };
}
