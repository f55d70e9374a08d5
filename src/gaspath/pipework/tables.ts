/** The tables of the room as columns: one description for CSV and for whoever shows them. */
import type { BendRow } from './bend-table.ts';
import { type Column, csvOf } from './csv.ts';
import type { BendCut, Cut, CutList, StockUse } from './cut-list.ts';
import type { JigPoint } from './jig.ts';
import type { Weld } from './welds.ts';

const MM = { unit: 'mm', digits: 2 } as const;
const DEG = { unit: 'deg', digits: 2 } as const;

const ofBend =
  <T>(get: (cut: BendCut) => T) =>
  (cut: Cut): T | undefined =>
    cut.kind === 'bend' ? get(cut) : undefined;

export const CUT_COLUMNS: readonly Column<Cut>[] = [
  { head: 'pipe', of: (cut) => cut.pipe },
  { head: 'piece', of: (cut) => cut.place },
  { head: 'kind', of: (cut) => (cut.kind === 'straight' && cut.filler !== undefined ? 'filler' : cut.kind) },
  { head: 'radius', ...MM, of: ofBend((cut) => cut.radius) },
  { head: 'angle', ...DEG, of: ofBend((cut) => cut.angle) },
  { head: 'length', ...MM, of: (cut) => (cut.kind === 'bend' ? cut.middle : cut.length) },
  { head: 'outside', ...MM, of: ofBend((cut) => cut.outside) },
  { head: 'inside', ...MM, of: ofBend((cut) => cut.inside) },
  { head: 'clock', ...DEG, of: ofBend((cut) => cut.clock) },
  { head: 'clock round the skin', ...MM, of: ofBend((cut) => cut.clockArc) },
  { head: 'leg before', ...MM, of: ofBend((cut) => cut.legs[0]) },
  { head: 'leg behind', ...MM, of: ofBend((cut) => cut.legs[1]) },
  { head: 'stock', of: (cut) => cut.from?.stock.name },
  { head: 'stock no.', of: (cut) => cut.from?.number },
  { head: 'in bend from', ...DEG, of: ofBend((cut) => cut.from?.from) },
  { head: 'in bend to', ...DEG, of: ofBend((cut) => cut.from?.to) },
  { head: 'tube', ...MM, of: (cut) => cut.tube.od },
  { head: 'of it lap', ...MM, of: (cut) => (cut.kind === 'straight' && cut.lap > 0 ? cut.lap : undefined) },
];

export const BEND_COLUMNS: readonly Column<BendRow>[] = [
  { head: 'pipe', of: (row) => row.pipe },
  { head: 'bend', of: (row) => row.bend },
  { head: 'feed', ...MM, of: (row) => row.feed },
  { head: 'rotation', ...DEG, of: (row) => row.rotation },
  { head: 'angle', ...DEG, of: (row) => row.angle },
  { head: 'radius', ...MM, of: (row) => row.radius },
  { head: 'wall outside', unit: 'mm', digits: 3, of: (row) => row.wall.outside },
  { head: 'thinned', unit: '%', digits: 1, of: (row) => row.wall.thinned },
  { head: 'tube', ...MM, of: (row) => row.od },
];

export const JIG_COLUMNS: readonly Column<JigPoint>[] = [
  { head: 'pipe', of: (point) => point.pipe },
  { head: 'point', of: (point) => point.what },
  ...(['x', 'y', 'z'] as const).map((head, k) => ({ head, ...MM, of: (point: JigPoint) => point.at[k] })),
  { head: 'radius', ...MM, of: (point) => point.radius },
];

export const STOCK_COLUMNS: readonly Column<StockUse>[] = [
  { head: 'stock', of: (use) => use.name },
  { head: 'number', of: (use) => use.count },
  { head: 'price each', digits: 2, of: (use) => use.price },
  { head: 'price', digits: 2, of: (use) => (use.price === undefined ? undefined : use.price * use.count) },
];

export const WELD_COLUMNS: readonly Column<Weld>[] = [
  { head: 'pipe', of: (weld) => weld.pipe },
  { head: 'weld', of: (weld) => weld.what },
  { head: 'from the flange', ...MM, of: (weld) => weld.s },
];

export const cutListCsv = (list: CutList): string => csvOf(CUT_COLUMNS, list.rows);
export const bendTableCsv = (rows: readonly BendRow[]): string => csvOf(BEND_COLUMNS, rows);
export const jigCsv = (points: readonly JigPoint[]): string => csvOf(JIG_COLUMNS, points);
export const stockCsv = (list: CutList): string => csvOf(STOCK_COLUMNS, list.stock);
export const weldCsv = (list: CutList): string => csvOf(WELD_COLUMNS, list.welds);
