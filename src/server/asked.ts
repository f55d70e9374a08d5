/** What is sent to the server, checked before it is used. */
import type { Change } from '../car/edit.ts';
import type { Problem } from '../measured/problem.ts';

export type Checked<T> =
  | { readonly ok: true; readonly is: T }
  | { readonly ok: false; readonly problem: Problem };

const wrong = (message: string): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code: 'asked/form', message, path: '', weight: 'error' },
});

type Mapping = Readonly<Record<string, unknown>>;

const isMapping = (value: unknown): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

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
