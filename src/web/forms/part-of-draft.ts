/** A new part as the file is to have it, from what was typed; or what is wrong with that. */
import { readWithSpread } from '../../units/read.ts';
import type { Draft } from './draft.ts';
import { columnsOf, type Leaf, type Path, wordOf } from './fields.ts';
import { stamped, withUnit, wrongWith } from './stamp.ts';

export type PartRead =
  | { readonly ok: true; readonly is: unknown }
  | { readonly ok: false; readonly wrong: readonly string[] };

export const leafKey = ({ path }: Leaf): string => `at ${path.join('.')}`;

type LeafRead = { readonly is: unknown } | { readonly wrong: string };

export function partOf(leaves: readonly Leaf[], draft: Draft): PartRead {
  const read = leaves.map((leaf) => ({ leaf, read: leafRead(leaf, draft) }));
  const wrong = read.flatMap((each) => ('wrong' in each.read ? [each.read.wrong] : []));
  if (wrong.length > 0) return { ok: false, wrong };
  return {
    ok: true,
    is: read.reduce<unknown>(
      (part, each) => ('is' in each.read ? put(part, each.leaf.path, each.read.is) : part),
      {},
    ),
  };
}

function leafRead(leaf: Leaf, draft: Draft): LeafRead {
  const { node } = leaf;
  const text = draft[leafKey(leaf)]?.trim() ?? '';
  const means = node.title ?? leaf.path.join(' ');
  if (text === '') return { wrong: `${means}: nothing was typed.` };
  if (node.items !== undefined) return tableRead(leaf, text);
  if (node.reading === undefined) return wordOf(node) === undefined ? { wrong: `${means}?` } : { is: text };
  const { kind, ...notes } = node.reading;
  const whole = withUnit(text, notes.unit);
  const wrong = wrongWith(whole, kind, notes);
  return wrong === undefined ? { is: stamped(whole, draft) } : { wrong };
}

/** A line for each row, its figures in the order of the columns: `2, 420`. */
function tableRead({ node }: Leaf, text: string): LeafRead {
  const columns = columnsOf(node);
  const rows: Record<string, string>[] = [];
  for (const [k, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue;
    const cells = line.split(/[,;\t]/);
    const head = `${node.title}, line ${k + 1}`;
    if (cells.length !== columns.length)
      return { wrong: `${head}: ${columns.length} figures stand in a line.` };
    const row: Record<string, string> = {};
    for (const [at, { key, notes }] of columns.entries()) {
      const cell = withUnit(cells[at]!, notes.unit);
      const read = readWithSpread(cell, notes.si);
      if (!read.ok) return { wrong: `${head}, ${notes.means}: ${read.why}.` };
      row[key] = cell;
    }
    rows.push(row);
  }
  return { is: rows };
}

function put(part: unknown, [key, ...rest]: Path, value: unknown): unknown {
  const whole = (part ?? {}) as Record<string, unknown>;
  const name = String(key);
  return { ...whole, [name]: rest.length === 0 ? value : put(whole[name], rest, value) };
}
