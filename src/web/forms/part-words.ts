/** What the parts are called that a file may have and need not. */
import type { Path } from './fields.ts';

const WORDS: Readonly<Record<string, string>> = {
  thread: 'thread',
  upperOuter: 'upper outer ball joint: its bearing',
  lowerOuter: 'lower outer ball joint: its bearing',
  toeInner: 'inner joint of track rod or toe link: its bearing',
  toeOuter: 'outer joint of track rod or toe link: its bearing',
  rodOuter: 'outer joint of the rod: its bearing',
  rodInner: 'joint of the rod at the rocker: its bearing',
  coil: 'coil spring',
  bar: 'torsion bar',
  damper: 'damper',
  bumpRubber: 'bump rubber',
  helper: 'helper spring',
  steering: 'steering rack',
  antiRollBar: 'anti-roll bar',
  leftBlade: 'left blade of the anti-roll bar',
  rightBlade: 'right blade of the anti-roll bar',
  heave: 'heave spring',
};

const ABOVE: Readonly<Record<string, string>> = {
  rod: ' of the rod',
  toeLink: ' of track rod or toe link',
  coil: ' of the coil',
  heave: ' of the heave spring',
};

export function partWords(path: Path): string {
  const own = String(path.at(-1));
  return `${WORDS[own] ?? own}${WORDS[own] === undefined ? '' : (ABOVE[String(path.at(-2))] ?? '')}`;
}
