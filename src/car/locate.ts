/** Where in the file something stands: line and column of a path, also when a spec or a mirrored side put it there. */
import { type Document, isMap, isNode, isPair, type LineCounter } from 'yaml';
import type { Path } from './schema.ts';
import type { Mirrored } from './spec.ts';

export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface Locator {
  /** The value at this path, or the nearest thing above it that is there. */
  readonly valueAt: (path: Path) => Place | undefined;
  /** The key at the end of this path. */
  readonly keyAt: (path: Path) => Place | undefined;
}

export function locator(
  document: Document,
  lines: LineCounter,
  specs: readonly string[],
  taken: Mirrored['taken'],
): Locator {
  const roots: Path[] = [...specs].reverse().map((name) => ['specs', name, 'changes']);
  roots.push([]);
  /** The places in the text where this path may have been written, likeliest first. */
  const candidates = (path: Path): Path[] => {
    const mirror = taken.find((each) => each.path.every((key, index) => key === path[index]));
    const twin = mirror === undefined ? [] : [[...mirror.from, ...path.slice(mirror.path.length)]];
    return [path, ...twin].flatMap((each) => roots.map((root) => [...root, ...each]));
  };
  const place = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line, column: col };
  };
  const startOf = (path: Path): Place | undefined => {
    const node = path.length === 0 ? document.contents : document.getIn(path, true);
    return isNode(node) && node.range ? place(node.range[0]) : undefined;
  };
  const valueAt = (path: Path): Place | undefined => {
    for (let length = path.length; length >= 0; length -= 1) {
      for (const candidate of candidates(path.slice(0, length))) {
        const found = startOf(candidate);
        if (found !== undefined) return found;
      }
    }
    return undefined;
  };
  const keyAt = (path: Path): Place | undefined => {
    for (const candidate of candidates(path)) {
      const above = candidate.length === 1 ? document.contents : document.getIn(candidate.slice(0, -1), true);
      if (!isMap(above)) continue;
      const pair = above.items.find(
        (item) =>
          isPair(item) &&
          String((item.key as { value?: unknown })?.value ?? item.key) === String(candidate.at(-1)),
      );
      const key = pair?.key;
      if (isNode(key) && key.range) return place(key.range[0]);
    }
    return valueAt(path.slice(0, -1));
  };
  return { valueAt, keyAt };
}
