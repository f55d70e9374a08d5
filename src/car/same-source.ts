/** Whether two sources make the same car; beside the reading itself, which the page's own thread does without. */
import type { CarSource } from './read.ts';

export const sameSource = (a: CarSource, b: CarSource): boolean =>
  a.text === b.text &&
  a.spec === b.spec &&
  a.file === b.file &&
  JSON.stringify(a.files ?? {}) === JSON.stringify(b.files ?? {});
