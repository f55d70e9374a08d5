/** What is sent to the server, checked before it is used. */
import type { Change } from '../car/edit.ts';
import type { Problem } from '../measured/problem.ts';
import type { BarAsked } from '../questions/bar-for-coil.ts';
import { readBarWords } from '../questions/bar-words.ts';
import type { Position, Wheel } from '../questions/figure.ts';
import { JOINT_NAMES, type JointName } from '../questions/index.ts';
import {
  type FloorSheet,
  isCornerSheet,
  isFloorSheet,
  type LoadSheet,
  type PaperName,
  SHEET_KINDS,
  type SheetKind,
} from '../sheets/index.ts';
import { readAmount } from '../units/read.ts';
import type { Speech } from '../units/show.ts';
import type { AskedDoing } from './asked-doing.ts';
import { isMapping, wrong } from './asked-form.ts';

export type Checked<T> =
  | { readonly ok: true; readonly is: T }
  | { readonly ok: false; readonly problem: Problem };

const MOST_CHANGES = 1000;
/** Keys that would reach into the program's own objects are no keys of a car file. */
const NO_KEYS = ['__proto__', 'constructor', 'prototype'];

const isKey = (key: unknown): key is string | number =>
  (typeof key === 'string' && key !== '' && !NO_KEYS.includes(key)) ||
  (typeof key === 'number' && Number.isInteger(key) && key >= 0 && key < 10_000);

export interface AskedChanges {
  readonly version: string;
  readonly changes: readonly Change[];
}

export function askedChanges(body: unknown): Checked<AskedChanges> {
  if (!isMapping(body)) return wrong('Send { version, changes: [{ path, value }] }.');
  const { version, changes } = body;
  if (typeof version !== 'string')
    return wrong('"version" must be the version of the text that was changed.');
  if (!Array.isArray(changes) || changes.length === 0 || changes.length > MOST_CHANGES) {
    return wrong(`"changes" must be a list of 1 to ${MOST_CHANGES} changes.`);
  }
  const list: Change[] = [];
  for (const [index, change] of changes.entries()) {
    if (
      !isMapping(change) ||
      !Array.isArray(change.path) ||
      change.path.length === 0 ||
      !change.path.every(isKey)
    ) {
      return wrong(`Change ${index + 1}: "path" must be a list of keys of the car file.`);
    }
    if (!('value' in change))
      return wrong(`Change ${index + 1}: "value" is missing; null takes the key out.`);
    list.push({ path: change.path, value: change.value });
  }
  return { ok: true, is: { version, changes: list } };
}

export interface AskedCar {
  readonly id: string;
  readonly text: string;
}

export function askedCar(body: unknown): Checked<AskedCar> {
  if (!isMapping(body) || typeof body.id !== 'string' || typeof body.text !== 'string') {
    return wrong("Send { id, text }: the name of the car's folder and the text of its file.");
  }
  return { ok: true, is: { id: body.id, text: body.text } };
}

interface AskedPaper {
  readonly spec?: string;
  readonly paper: PaperName;
  readonly speech: Speech;
}

export interface AskedLoadSheet extends AskedPaper {
  readonly kind: LoadSheet;
  readonly joint?: JointName;
  /** Left out: all default cases, or the hardest of them. */
  readonly doing?: AskedDoing;
}

export interface AskedFloorSheet extends AskedPaper {
  readonly kind: FloorSheet;
}

export interface AskedCornerSheet extends AskedPaper {
  readonly kind: Exclude<SheetKind, LoadSheet | FloorSheet>;
  readonly wheel: Wheel;
  readonly at: Position;
  /** For an order: the bar that is asked for in the place of the coil. */
  readonly bar?: BarAsked;
}

export type AskedSheet = AskedCornerSheet | AskedLoadSheet | AskedFloorSheet;

export const isAskedOfCorner = (asked: AskedSheet): asked is AskedCornerSheet => isCornerSheet(asked.kind);
export const isAskedOfFloor = (asked: AskedSheet): asked is AskedFloorSheet => isFloorSheet(asked.kind);

/** A sheet as its address asks for it; travel and rack are written with their unit. */
export function askedSheet(sheet: string, query: Readonly<Record<string, string>>): Checked<AskedSheet> {
  const kind = SHEET_KINDS.find((each) => each === sheet);
  if (kind === undefined) return wrong(`There is no sheet "${sheet}"; there are ${SHEET_KINDS.join(', ')}.`);
  const { paper = 'A4', units = 'mm-N', spec } = query;
  if (paper !== 'A4' && paper !== 'Letter') return wrong('"paper" is A4 or Letter.');
  if (units !== 'mm-N' && units !== 'in-lbf') return wrong('"units" is mm-N or in-lbf.');
  const on = { paper, speech: units, ...(spec === undefined || spec === '' ? {} : { spec }) } as const;
  if (isFloorSheet(kind)) return { ok: true, is: { ...on, kind } };
  return isCornerSheet(kind) ? cornerSheet(kind, on, query) : loadSheet(kind, on, query);
}

type Query = Readonly<Record<string, string>>;

function cornerSheet(kind: AskedCornerSheet['kind'], on: AskedPaper, query: Query): Checked<AskedSheet> {
  const { end, side } = query;
  if ((end !== 'front' && end !== 'rear') || (side !== 'left' && side !== 'right')) {
    return wrong('Say the wheel: end=front or rear, side=left or right.');
  }
  const travel = readAmount(query.travel ?? '0 mm', 'm');
  if (!travel.ok) return wrong(`"travel": ${travel.why}.`);
  const rack = readAmount(query.rack ?? '0 mm', 'm');
  if (!rack.ok) return wrong(`"rack": ${rack.why}.`);
  const bar = askedBar(kind, query);
  if (bar !== undefined && !bar.ok) return bar;
  return {
    ok: true,
    is: {
      ...on,
      ...(bar === undefined ? {} : { bar: bar.is }),
      kind,
      wheel: { end, side },
      at: { travel: travel.is.value, rack: end === 'front' ? rack.is.value : 0 },
    },
  };
}

function loadSheet(kind: LoadSheet, on: AskedPaper, query: Query): Checked<AskedSheet> {
  const joint = JOINT_NAMES.find((each) => each === (query.joint ?? 'engineToTub'));
  if (joint === undefined) return wrong(`"joint" is ${JOINT_NAMES.join(' or ')}.`);
  const { doing, says } = query;
  if (doing === undefined) return { ok: true, is: { ...on, kind, joint } };
  const asked = { text: doing, ...(says === undefined ? {} : { words: says }) };
  return { ok: true, is: { ...on, kind, joint, doing: asked } };
}

/** The bar to be ordered in the place of a coil, where the address names its material. */
function askedBar(kind: SheetKind, query: Readonly<Record<string, string>>): Checked<BarAsked> | undefined {
  const { material } = query;
  if (material === undefined) return undefined;
  if (kind !== 'bar-order') return wrong('"material" is asked of a bar order only.');
  const read = readBarWords({ ...query, material });
  return read.ok ? read : wrong(`"${read.at}": ${read.why}.`);
}
