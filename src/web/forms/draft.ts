/** What is typed and not yet kept lives in the browser, so that a page loaded again has it still. */
import { useState } from 'react';

/** Texts by the name of what they are typed into. */
export type Draft = Readonly<Record<string, string>>;

const keyOf = (name: string): string => `draft ${name}`;

function stored(name: string): Draft | undefined {
  const text = localStorage.getItem(keyOf(name));
  if (text === null) return undefined;
  try {
    const draft: unknown = JSON.parse(text);
    if (typeof draft !== 'object' || draft === null) return undefined;
    return Object.fromEntries(Object.entries(draft).map(([key, value]) => [key, String(value ?? '')]));
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
