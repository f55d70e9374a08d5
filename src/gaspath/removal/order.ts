/**
 * In which order the parts of a bank come off: whatever has a way out goes first, then what it held.
 *
 * In    parts, each with the way it is drawn; what stands about all of them
 * Out   the parts in order with their ways, and those for which none was found
 */
import type { Thing } from '../hand/surroundings.ts';
import { type OutAsked, type WayOut, wayOut } from './way-out.ts';

export interface Part extends Omit<OutAsked, 'things'> {
  /** It, as it stands in the way of others while it is on. */
  readonly asThings: readonly Thing[];
  /** What stands in the way of this part alone: studs that are not its own. */
  readonly also?: readonly Thing[];
  /** Parts that must be off before it is tried. */
  readonly after?: readonly string[];
}

export interface Taken {
  readonly part: string;
  readonly way: WayOut;
}

export interface OrderOff {
  readonly off: readonly Taken[];
  /** No way was found for these, tried last with all those off that come off; without one they wait for another. */
  readonly held: readonly { readonly part: string; readonly way?: WayOut }[];
}

/** Ways tried for a part while others that may come off first are still on. */
const FIRST_LOOK = 122;

/** @param join  parts that hold one another, drawn as one; undefined where they cannot be */
export function orderOff(
  parts: readonly Part[],
  about: readonly Thing[],
  join: (parts: readonly Part[]) => Part | undefined = () => undefined,
): OrderOff {
  const off: Taken[] = [];
  let left = [...parts];
  const waits = ({ after = [] }: Part): boolean =>
    after.some((name) => left.some(({ body }) => body.name === name));
  const tryOne = (part: Part, most: number | undefined, of: readonly Part[] = [part]): WayOut => {
    const others = left.filter((each) => !of.includes(each)).flatMap(({ asThings }) => asThings);
    const { asThings: _, after: __, also = [], ...asked } = part;
    return wayOut({
      ...asked,
      things: [...about, ...others, ...also],
      ...(most === undefined ? {} : { most }),
    });
  };
  // straight ways of all first; turns only where nothing comes off straight
  const last = new Map<Part, WayOut>();
  for (let most: number | undefined = FIRST_LOOK; left.length > 0; ) {
    let taken = false;
    for (const part of left) {
      if (waits(part)) continue;
      const way = tryOne(part, most);
      last.set(part, way);
      if (!way.found) continue;
      off.push({ part: part.body.name, way });
      left = left.filter((each) => each !== part);
      taken = true;
      break;
    }
    if (!taken && most === undefined) {
      // what holds one another may come off together
      for (const group of groupsOf(left.filter((each) => !waits(each)))) {
        const joined = join(group);
        if (joined === undefined) continue;
        const way = tryOne(joined, FIRST_LOOK, group);
        if (!way.found) continue;
        off.push({ part: joined.body.name, way });
        left = left.filter((each) => !group.includes(each));
        taken = true;
        break;
      }
    }
    if (taken) most = FIRST_LOOK;
    else if (most === undefined) break;
    else most = undefined;
  }
  return {
    off,
    held: left.map((part) => {
      const way = last.get(part);
      return { part: part.body.name, ...(way === undefined ? {} : { way }) };
    }),
  };
}

/** Two at a time, then all. */
const groupsOf = (parts: readonly Part[]): readonly (readonly Part[])[] => [
  ...parts.flatMap((one, k) => parts.slice(k + 1).map((two) => [one, two])),
  ...(parts.length > 2 ? [parts] : []),
];
