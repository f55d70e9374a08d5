/**
 * Asking the server, which gives and keeps files and computes nothing.
 *
 * Three answers to a save: kept, changed meanwhile by another hand, or not a car any more.
 */
import type { SheetKind } from '../sheets/index.ts';
import type { Problem } from './engine/answers.ts';

export interface CarOnFloor {
  readonly id: string;
  readonly name: string;
  readonly chassis: string;
  readonly manner: string;
  readonly invented: boolean;
  readonly problems: number;
}

export interface Workshop {
  readonly name: string;
  readonly invented: boolean;
  readonly cars: readonly CarOnFloor[];
}

export interface CarFile {
  readonly id: string;
  readonly text: string;
  readonly files: Readonly<Record<string, string>>;
  /** Names of those that are logs. */
  readonly logs: readonly string[];
  readonly version: string;
}

export interface Change {
  readonly path: readonly (string | number)[];
  readonly value: unknown;
}

export type Kept =
  | { readonly kind: 'kept'; readonly text: string; readonly version: string }
  | { readonly kind: 'conflict'; readonly theirs: string; readonly version: string; readonly mine: string }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

/** The server said no, or was not there. The message says what to do. */
export class NotServed extends Error {
  override readonly name = 'NotServed';
}

async function asked(path: string, init?: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init);
  } catch {
    throw new NotServed('The workshop does not answer. See that flatpatch still runs, then try again.');
  }
}

async function plain<T>(path: string): Promise<T> {
  const answer = await asked(path);
  if (!answer.ok) throw new NotServed(await reasonOf(answer));
  return (await answer.json()) as T;
}

async function reasonOf(answer: Response): Promise<string> {
  const told = (await answer.json().catch(() => undefined)) as { problems?: Problem[] } | undefined;
  return told?.problems?.[0]?.message ?? `The workshop answered ${answer.status}.`;
}

const sent = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

export const fetchWorkshop = (): Promise<Workshop> => plain('api/workshop');

export const fetchCar = (id: string): Promise<CarFile> => plain(`api/cars/${encodeURIComponent(id)}`);

/** The bytes of a scan that the car file names. */
export async function fetchScan(id: string, file: string): Promise<Uint8Array> {
  const answer = await asked(`api/cars/${encodeURIComponent(id)}/scans/${encodeURIComponent(file)}`);
  if (!answer.ok) throw new NotServed(await reasonOf(answer));
  return new Uint8Array(await answer.arrayBuffer());
}

/** Sheets of a set of primaries, as PDF. @param set  in its exchange form, as text */
export const fetchPrimariesSheet = (
  id: string,
  of: Readonly<{ bank: string; part?: string; set: string; paper: string; units: string; spec?: string }>,
): Promise<Blob> => fetchPdf(id, 'primaries-sheet', of);

/** The ratio chart, as PDF. @param asked  fields of the stop as they are typed */
export const fetchRatioSheet = (
  id: string,
  of: Readonly<{
    asked: Readonly<Record<string, string>>;
    paper: string;
    units: string;
    spec?: string;
  }>,
): Promise<Blob> => fetchPdf(id, 'ratio-sheet', of);

async function fetchPdf(id: string, sheet: string, of: unknown): Promise<Blob> {
  const answer = await asked(`api/cars/${encodeURIComponent(id)}/${sheet}`, sent(of));
  if (!answer.ok) throw new NotServed(await reasonOf(answer));
  return answer.blob();
}

async function kept(answer: Response): Promise<Kept> {
  if (answer.ok) return { kind: 'kept', ...((await answer.json()) as { text: string; version: string }) };
  if (answer.status === 409) {
    return {
      kind: 'conflict',
      ...((await answer.json()) as { theirs: string; version: string; mine: string }),
    };
  }
  if (answer.status === 422) {
    return { kind: 'problems', ...((await answer.json()) as { problems: Problem[] }) };
  }
  throw new NotServed(await reasonOf(answer));
}

export async function keepChanges(id: string, version: string, changes: readonly Change[]): Promise<Kept> {
  return kept(await asked(`api/cars/${encodeURIComponent(id)}/changes`, sent({ version, changes })));
}

export type Added =
  | { readonly kind: 'added' }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

export async function addCar(id: string, text: string): Promise<Added> {
  const answer = await asked('api/cars', sent({ id, text }));
  if (answer.ok) return { kind: 'added' };
  const told = (await answer.json().catch(() => undefined)) as { problems?: Problem[] } | undefined;
  if (told?.problems !== undefined) return { kind: 'problems', problems: told.problems };
  throw new NotServed(`The workshop answered ${answer.status}.`);
}

export function sheetAddress(id: string, sheet: SheetKind, asked: Readonly<Record<string, string>>): string {
  return `api/cars/${encodeURIComponent(id)}/sheets/${sheet}?${new URLSearchParams(asked)}`;
}

/**
 * Calls back when a car's file changed on the disk; returns how to stop.
 *
 * @param broken  called when the workshop is lost, and when it is there again: it may have changed meanwhile
 */
export function watchCars(
  changed: (event: { id: string; version: string }) => void,
  broken: () => void,
): () => void {
  const events = new EventSource('api/events');
  let open = false;
  let lost = false;
  events.onmessage = (event: MessageEvent<string>) => {
    changed(JSON.parse(event.data) as { id: string; version: string });
  };
  events.onopen = () => {
    if (lost) broken();
    open = true;
    lost = false;
  };
  events.onerror = () => {
    if (!open) return;
    open = false;
    lost = true;
    broken();
  };
  return () => events.close();
}
