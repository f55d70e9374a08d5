/** What a finder has reached, kept in this browser: a page that was closed goes on from there. */

/** @param of  state of the file that it was found for; what was found for another is none */
export function keptBefore<T extends { readonly of: string }>(place: string, of: string): T | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(place) ?? 'null') as T | null;
    return kept?.of === of ? kept : undefined;
  } catch {
    // nothing kept that can be read: begun anew
    return undefined;
  }
}

export function keep(place: string, kept: { readonly of: string }): void {
  try {
    localStorage.setItem(place, JSON.stringify(kept));
  } catch {
    // a browser that keeps nothing still finds
  }
}
