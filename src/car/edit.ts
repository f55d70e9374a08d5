/**
 * Changing a car file as a careful hand would: only what is changed is touched, letter for letter; comments,
 * order and spacing stay.
 *
 * In    the text, and what is to stand at which path
 * Out   the new text; the caller checks it by reading it
 * Not   a file that is no YAML: that is mended by hand first
 */
import {
  Document,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  stringify,
  type YAMLMap,
} from 'yaml';
import type { Path } from './schema.ts';

export interface Change {
  readonly path: Path;
  /** The text of the reading as it is to stand in the file, a mapping, or null to take the key out. */
  readonly value: unknown;
}

export function edited(text: string, changes: readonly Change[]): string {
  return changes.reduce(apply, text);
}

/** The text between two places, put in the place of what stood there. */
interface Splice {
  readonly from: number;
  readonly to: number;
  readonly put: string;
}

function apply(text: string, change: Change): string {
  const document = parseDocument(text);
  if (document.errors.length > 0) throw new Error('a file that is no YAML cannot be changed at a path');
  const { path, value } = resolved(document, change);
  const wanted = document.clone();
  if (value === null) wanted.deleteIn(path);
  else wanted.setIn(path, value);
  const { from, to, put } =
    value === null ? removal(text, document, path) : setting(text, document, path, value);
  const result = text.slice(0, from) + put + text.slice(to);
  // should the text be of a form that was not thought of here, the meaning still comes first and the spacing second
  return sameMeaning(result, wanted)
    ? result
    : wanted.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function sameMeaning(text: string, wanted: Document): boolean {
  const read = parseDocument(text);
  return read.errors.length === 0 && JSON.stringify(read.toJS()) === JSON.stringify(wanted.toJS());
}

/** Where the change really lands: in the number of a stamped reading, or on a side that was `mirrored` so far. */
function resolved(document: Document, { path, value }: Change): { path: Path; value: unknown } {
  for (let length = 1; length < path.length; length += 1) {
    if (document.getIn(path.slice(0, length)) === 'mirrored')
      return unmirrored(document, path, length, value);
  }
  const old = document.getIn(path);
  // a reading that says who measured it keeps its mapping: only the number is new
  return { path: typeof value === 'string' && isMap(old) && old.has('is') ? [...path, 'is'] : path, value };
}

/** One reading of a mirrored part gets a value of its own; its neighbours go on being mirrored, one by one. */
function unmirrored(
  document: Document,
  path: Path,
  length: number,
  value: unknown,
): { path: Path; value: unknown } {
  const build = (at: number): unknown => {
    if (at === path.length) return value;
    const left = document.getIn(path.slice(0, at).map((key, index) => (index === 1 ? 'left' : key)));
    const keys = isMap(left)
      ? left.items.map((pair) => String(isScalar(pair.key) ? pair.key.value : pair.key))
      : [];
    const parts = Object.fromEntries(keys.map((key) => [key, 'mirrored' as unknown]));
    const own = build(at + 1);
    if (own === null) delete parts[String(path[at])];
    else parts[String(path[at])] = own;
    return parts;
  };
  return { path: path.slice(0, length), value: build(length) };
}

/** Where a node ends, without the comment and the blank lines behind it. */
function endOf(node: Node): number {
  if (isCollection(node) && node.flow !== true && node.items.length > 0) {
    const last = node.items.at(-1) as Node | Pair<Node, Node | null>;
    if ('key' in last) return last.value === null || isEmpty(last.value) ? node.range![1] : endOf(last.value);
    return endOf(last);
  }
  return node.range![1];
}

const isEmpty = (node: Node): boolean => node.range![0] === node.range![1];

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;
const lineEnd = (text: string, at: number): number => {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
};
const newline = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

const pairOf = (map: YAMLMap, key: string | number): Pair<Node, Node | null> | undefined =>
  map.items.find((pair) => String(isScalar(pair.key) ? pair.key.value : pair.key) === String(key)) as
    | Pair<Node, Node | null>
    | undefined;

/** The value on one line. */
function inline(value: unknown, within: 'block' | 'flow'): string {
  if (typeof value === 'string' && within === 'flow' && /[,[\]{}]/.test(value)) return JSON.stringify(value);
  const document = new Document(value);
  if (isCollection(document.contents)) document.contents.flow = true;
  return document.toString({ lineWidth: 0, flowCollectionPadding: true }).trimEnd();
}

function setting(text: string, document: Document, path: Path, value: unknown): Splice {
  let depth = path.length - 1;
  while (depth > 0 && !isCollection(document.getIn(path.slice(0, depth)))) depth -= 1;
  const above = (depth === 0 ? document.contents : document.getIn(path.slice(0, depth))) as Node;
  const key = path[depth]!;
  const nested = path.slice(depth + 1).reduceRight<unknown>((inner, each) => ({ [each]: inner }), value);
  const within = isCollection(above) && above.flow === true ? 'flow' : 'block';
  if (isMap(above)) {
    const pair = pairOf(above, key);
    if (pair === undefined) return addition(text, above, key, nested, document.contents === above);
    const old = pair.value;
    const colon = text.indexOf(':', pair.key.range![1]) + 1;
    if (old === null || isEmpty(old)) return { from: colon, to: colon, put: ` ${inline(nested, within)}` };
    if (isCollection(old) && old.flow !== true)
      return { from: colon, to: endOf(old), put: ` ${inline(nested, within)}` };
    return { from: old.range![0], to: old.range![1], put: like(text, old, inline(nested, within)) };
  }
  if (isSeq(above)) {
    const old = above.items[Number(key)] as Node | undefined;
    if (old !== undefined) return { from: old.range![0], to: endOf(old), put: inline(nested, within) };
  }
  // what is left is a list that grows, or an empty file: seldom, and the meaning is what counts
  return { from: 0, to: 0, put: '' };
}

/** A reading that stood in quotes goes on standing in the same quotes. */
function like(text: string, old: Node, put: string): string {
  const quote = text[old.range![0]];
  const plain = !/^["'{[|>]/.test(put);
  return plain && (quote === '"' || quote === "'") && !put.includes(quote) && !put.includes('\\')
    ? quote + put + quote
    : put;
}

function addition(text: string, map: YAMLMap, key: string | number, value: unknown, top: boolean): Splice {
  if (map.flow === true) {
    const end = map.range![1] - 1;
    const before = text.slice(0, end).trimEnd().length;
    const comma = map.items.length > 0 ? ', ' : ' ';
    return { from: before, to: end, put: `${comma}${inline(key, 'flow')}: ${inline(value, 'flow')} ` };
  }
  const first = (map.items[0] as Pair<Node, Node | null>).key.range![0];
  const indent = ' '.repeat(first - lineStart(text, first));
  const at = lineEnd(text, endOf(map));
  const eol = newline(text);
  const block = stringify({ [key]: value }, { lineWidth: 0, flowCollectionPadding: true })
    .trimEnd()
    .split('\n')
    .map((line) => eol + indent + line)
    .join('');
  // the carriage return of the line before stays with that line
  const from = text[at - 1] === '\r' ? at - 1 : at;
  return {
    from,
    to: from,
    put: top && !text.slice(0, from).endsWith('\n') && from === text.length ? block + eol : block,
  };
}

function removal(text: string, document: Document, path: Path): Splice {
  const above = (path.length === 1 ? document.contents : document.getIn(path.slice(0, -1))) as Node;
  const pair = isMap(above) ? pairOf(above, path.at(-1)!) : undefined;
  if (!isMap(above) || pair === undefined) return { from: 0, to: 0, put: '' };
  const start = pair.key.range![0];
  const end =
    pair.value === null || isEmpty(pair.value)
      ? text.indexOf(':', pair.key.range![1]) + 1
      : endOf(pair.value);
  if (above.items.length === 1) return emptied(text, document, path, above);
  if (above.flow === true) {
    const next = above.items[above.items.indexOf(pair) + 1] as Pair<Node, Node | null> | undefined;
    if (next !== undefined) return { from: start, to: next.key.range![0], put: '' };
    return { from: text.lastIndexOf(',', start), to: end, put: '' };
  }
  return { from: lineStart(text, start), to: Math.min(text.length, lineEnd(text, end) + 1), put: '' };
}

/** The last key of a mapping gone leaves an empty mapping, not nothing. */
function emptied(text: string, document: Document, path: Path, map: YAMLMap): Splice {
  if (map.flow === true) return { from: map.range![0], to: map.range![1], put: '{}' };
  if (path.length === 1) return { from: 0, to: 0, put: '' };
  const above = path.length === 2 ? document.contents : document.getIn(path.slice(0, -2));
  const holder = isMap(above) ? pairOf(above, path.at(-2)!) : undefined;
  if (holder === undefined) return { from: 0, to: 0, put: '' };
  const colon = text.indexOf(':', holder.key.range![1]) + 1;
  return { from: colon, to: endOf(map), put: ' {}' };
}
