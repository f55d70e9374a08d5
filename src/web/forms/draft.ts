/** What is typed and not yet kept lives in the browser, so that a page loaded again has it still. */
import { useState } from 'react';

export interface Draft {
  readonly value: string;
  readonly unit: string;
  readonly spread: string;
  readonly with: string;
  readonly by: string;
  readonly on: string;
  /** How the reading stood when the typing began. */
  readonly was: string;
}

const keyOf = (name: string): string => `draft ${name}`;

function stored(name: string): Draft | undefined {
  const text = localStorage.getItem(keyOf(name));
  if (text === null) return undefined;
  try {
    const draft = JSON.parse(text) as Partial<Draft>;
    const words = (['value', 'unit', 'spread', 'with', 'by', 'on', 'was'] as const).map((key) => [
      key,
      String(draft[key] ?? ''),
    ]);
    return Object.fromEntries(words) as unknown as Draft;
  } catch {
    return undefined;
  }
}

export function useDraft(name: string): readonly [Draft | undefined, (draft: Draft | undefined) => void] {
  const [draft, setDraft] = useState<Draft | undefined>(() => stored(name));
  const keep = (next: Draft | undefined): void => {
    setDraft(next);
    if (next === undefined) localStorage.removeItem(keyOf(name));
    else localStorage.setItem(keyOf(name), JSON.stringify(next));
  };
  return [draft, keep];
}
