/**
 * Specs and mirrored sides: what the file comes to once its changes are put in.
 *
 * A spec is a JSON Merge Patch (RFC 7396) on the file. `mirrored` on a right-hand side takes the left-hand part;
 * the left-hand readings then count for both sides, with y turned round, and are not measured twice.
 */
import type { Path } from './schema.ts';

export type Plain = unknown;

/** Parts of the car with a left and a right. */
export const TWO_SIDED = ['front', 'rear', 'exhaust'] as const;

const isMapping = (value: Plain): value is Readonly<Record<string, Plain>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** RFC 7396: mappings are merged, null removes, everything else replaces. The word `mirrored` is replaced whole. */
export function mergePatch(target: Plain, patch: Plain): Plain {
  if (!isMapping(patch)) return patch;
  const result: Record<string, Plain> = isMapping(target) && !isReading(target, patch) ? { ...target } : {};
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) delete result[key];
    else
      Object.defineProperty(result, key, {
        value: mergePatch(result[key], value),
        enumerable: true,
        writable: true,
        configurable: true,
      });
  }
  return result;
}

/** A reading is replaced as a whole: a new value does not inherit who measured the old one. */
const isReading = (
  target: Readonly<Record<string, Plain>>,
  patch: Readonly<Record<string, Plain>>,
): boolean => 'is' in target && 'is' in patch;

/**
 * The car with a right-hand side that says `mirrored` opened as far as a patch goes into it: what the patch does
 * not touch stays mirrored, so that a change of one reading on the right does not lose all the others.
 */
export function openMirrored(car: Plain, patch: Plain): Plain {
  if (!isMapping(car) || !isMapping(patch)) return car;
  const result: Record<string, Plain> = { ...car };
  for (const end of TWO_SIDED) {
    const [axle, change] = [car[end], patch[end]];
    if (!isMapping(axle) || !isMapping(change) || change.right === undefined) continue;
    const left = change.left === undefined ? axle.left : mergePatch(axle.left, change.left);
    result[end] = { ...axle, right: opened(axle.right, change.right, left) };
  }
  return result;
}

function opened(right: Plain, patch: Plain, left: Plain): Plain {
  if (!isMapping(patch)) return right;
  const whole =
    right === 'mirrored' && isMapping(left)
      ? Object.fromEntries(Object.keys(left).map((key) => [key, 'mirrored']))
      : right;
  if (!isMapping(whole)) return right;
  return Object.fromEntries(
    Object.entries(whole).map(([key, value]) => [
      key,
      opened(value, patch[key], isMapping(left) ? left[key] : undefined),
    ]),
  );
}

export interface SpecChain {
  /** Names from the first applied to the last. */
  readonly names: readonly string[];
  readonly error?: string;
}

/** The specs that lead to this one, first applied first. */
export function specChain(
  specs: Readonly<Record<string, { readonly from?: string }>>,
  name: string,
): SpecChain {
  const names: string[] = [];
  let at: string | undefined = name;
  while (at !== undefined) {
    if (names.includes(at)) return { names: [], error: `spec "${at}" starts from itself` };
    // a spec may be called `constructor`, and then it is one of the file's own or none
    const next: { readonly from?: string } | undefined = Object.hasOwn(specs, at) ? specs[at] : undefined;
    if (next === undefined) return { names: [], error: `there is no spec "${at}"` };
    names.unshift(at);
    at = next.from;
  }
  return { names };
}

export interface Mirrored {
  readonly car: Plain;
  /** Paths on the right that stand for a path on the left, outermost only. */
  readonly taken: readonly { readonly path: Path; readonly from: Path }[];
  /** Places that say `mirrored` and have nothing on the left to take. */
  readonly empty: readonly Path[];
}

/** Puts the left-hand part wherever the right-hand side says `mirrored`. */
export function expandMirrored(car: Plain): Mirrored {
  const taken: { path: Path; from: Path }[] = [];
  const empty: Path[] = [];
  if (!isMapping(car)) return { car, taken, empty };
  const result: Record<string, Plain> = { ...car };
  for (const end of TWO_SIDED) {
    const axle = car[end];
    if (!isMapping(axle)) continue;
    const walk = (right: Plain, left: Plain, under: Path): Plain => {
      if (right === 'mirrored') {
        const path = [end, 'right', ...under];
        if (left === undefined || left === 'mirrored') empty.push(path);
        else taken.push({ path, from: [end, 'left', ...under] });
        return structured(left);
      }
      if (!isMapping(right)) return right;
      return Object.fromEntries(
        Object.entries(right).map(([key, value]) => [
          key,
          walk(value, isMapping(left) ? left[key] : undefined, [...under, key]),
        ]),
      );
    };
    const right = walk(axle.right, axle.left, []);
    result[end] = { ...axle, ...('right' in axle ? { right: ownCylinders(right, axle.left, taken) } : {}) };
  }
  return { car: result, taken, empty };
}

/** Collectors taken from the left are those of the cylinders in the same places on the right. */
function ownCylinders(right: Plain, left: Plain, taken: Mirrored['taken']): Plain {
  const isTaken = taken.some(({ path }) => path.length === 3 && path[2] === 'collectors');
  if (!isTaken || !isMapping(right) || !isMapping(left)) return right;
  const [to, from] = [right.cylinders, left.cylinders];
  const { collectors } = right;
  if (!Array.isArray(to) || !Array.isArray(from) || !Array.isArray(collectors)) return right;
  return {
    ...right,
    collectors: collectors.map((each: Plain) =>
      isMapping(each) && Array.isArray(each.cylinders)
        ? { ...each, cylinders: each.cylinders.map((one: Plain) => to[from.indexOf(one)] ?? one) }
        : each,
    ),
  };
}

/** A bar preset for the left side, taken for the right, is its mirror image: preset for the right. */
const PRESET_MIRROR: Readonly<Record<string, string>> = {
  'for the left side': 'for the right side',
  'for the right side': 'for the left side',
};

const otherSide = (key: string, value: Plain): Plain =>
  key === 'preset' && typeof value === 'string' ? (PRESET_MIRROR[value] ?? value) : value;

const structured = (value: Plain): Plain =>
  value === undefined ? undefined : JSON.parse(JSON.stringify(value), otherSide);
