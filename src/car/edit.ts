/**
 * Changing a car file as a careful hand would: only what is changed is touched; comments, order and the rest of
 * the spacing stay.
 */
import { parseDocument } from 'yaml';
import type { Path } from './schema.ts';

export interface Change {
  readonly path: Path;
  /** The text of the reading as it is to stand in the file, a mapping, or null to take the key out. */
  readonly value: unknown;
}

/** The text with these changes made. The caller checks the result by reading it. */
export function edited(text: string, changes: readonly Change[]): string {
  const document = parseDocument(text);
  for (const { path, value } of changes) {
    if (value === null) {
      document.deleteIn(path);
      continue;
    }
    const old = document.getIn(path);
    // a reading that says who measured it keeps its mapping: only the number is new
    const target = typeof value === 'string' && isStamped(old) ? [...path, 'is'] : path;
    document.setIn(target, value);
  }
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

const isStamped = (node: unknown): boolean =>
  typeof node === 'object' && node !== null && 'has' in node && (node as { has: (key: string) => boolean }).has('is');
