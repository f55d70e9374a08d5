/**
 * Shims where they are now: the stacks at each corner and the box, as the moves of the sheets have left them.
 *
 * In    stacks and box as surveyed, the moves of each sheet in their order
 * Out   stacks and box after them; moves that these stacks and this box could not have made
 *
 * A sheet says by how much a stack was made thicker, not with which pieces: taken is the way that handles the fewest.
 * What comes out of a stack goes into the box, and the next move finds it there.  [FF-21]
 */
import type { CarForm } from '../car/read.ts';
import { endOf, sideOf, WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import type { Reading as FileReading } from '../measured/reading.ts';
import { WHEEL_WORDS } from './reading-words.ts';
import { added, type Shims, type StackChange, shiftChanges, stackChanges } from './shims.ts';

/** Units by which adjusters were moved in one sheet, by name. */
export type SheetMoves = Readonly<Record<string, number>>;

/** Shims at one corner: camber from the box, caster from one side of the joints to the other. */
export interface CornerStacks {
  readonly camber?: { readonly fitted: readonly Shims[]; readonly most: number };
  readonly caster?: { readonly first: readonly Shims[]; readonly second: readonly Shims[] };
}

/** A move that cannot have been made of these shims. */
export interface NoSuchStack {
  /** Number of the sheet. */
  readonly sheet: number;
  readonly adjuster: string;
  /** In 0.1 mm. */
  readonly asked: number;
  /** The nearest that could have been made, either way, in 0.1 mm. */
  readonly near: readonly number[];
}

export interface StacksNow {
  /** By the corner's words: `front left`. */
  readonly corners: ReadonlyMap<string, CornerStacks>;
  readonly box: readonly Shims[];
  readonly impossible: readonly NoSuchStack[];
}

/** What one unit of a stack is. */
export const SHIM_UNIT = 1e-4;

type ShimForm = readonly { readonly thickness: FileReading; readonly pieces: FileReading }[];

const shimsOf = (of: ShimForm | undefined, numbers: Numbers): readonly Shims[] =>
  (of ?? []).map(({ thickness, pieces }) => ({
    thickness: numbers.of(thickness),
    pieces: numbers.of(pieces),
  }));

/** Pieces that a mechanic may have handled in one move that is already made. */
const ANY_NUMBER = 40;

export function stacksNow(car: CarForm, numbers: Numbers, moves: readonly SheetMoves[] = []): StacksNow {
  const corners = new Map<string, CornerStacks>();
  let box = shimsOf(car.floor?.shimBox, numbers);
  for (const wheel of WHEEL_NAMES) {
    const { camberShims, casterShims } = car[endOf(wheel)][sideOf(wheel)].adjusters ?? {};
    // shims from behind to in front push the wishbone rearward: caster for the upper, less for the lower
    const [front, rear] = [shimsOf(casterShims?.front, numbers), shimsOf(casterShims?.rear, numbers)];
    const upper = casterShims?.moves === 'upper wishbone';
    corners.set(WHEEL_WORDS[wheel], {
      ...(camberShims === undefined
        ? {}
        : {
            camber: { fitted: shimsOf(camberShims.fitted, numbers), most: numbers.of(camberShims.most) },
          }),
      ...(casterShims === undefined
        ? {}
        : { caster: upper ? { first: rear, second: front } : { first: front, second: rear } }),
    });
  }
  const impossible: NoSuchStack[] = [];
  moves.forEach((sheet, at) => {
    for (const [corner, { camber, caster }] of corners) {
      for (const kind of ['camber', 'caster'] as const) {
        const adjuster = `${corner} ${kind} shims`;
        const asked = sheet[adjuster] ?? 0;
        const stacks = corners.get(corner)!;
        if (asked === 0 || stacks[kind] === undefined) continue;
        const ways =
          kind === 'camber'
            ? stackChanges(camber!.fitted, box, camber!.most, ANY_NUMBER)
            : shiftChanges(caster!.first, caster!.second, ANY_NUMBER);
        const way = ways.find(({ change }) => Math.abs(change / SHIM_UNIT - asked) < 1e-3);
        if (way === undefined) impossible.push({ sheet: at, adjuster, asked, near: around(ways, asked) });
        else if (kind === 'camber') {
          corners.set(corner, { ...stacks, camber: { ...camber!, fitted: added(camber!.fitted, way, 1) } });
          box = added(box, way, -1);
        } else {
          // a piece put over leaves the first stack for the second
          const { first, second } = caster!;
          const shifted = { first: added(first, way, -1), second: added(second, way, 1) };
          corners.set(corner, { ...corners.get(corner)!, caster: shifted });
        }
      }
    }
  });
  return { corners, box, impossible };
}

/** The next smaller and the next larger of the changes that can be made, in 0.1 mm. */
function around(ways: readonly StackChange[], asked: number): number[] {
  const units = ways.map(({ change }) => Math.round((change / SHIM_UNIT) * 1e3) / 1e3);
  const below = units.filter((each) => each < asked).at(-1);
  const above = units.find((each) => each > asked);
  return [below, above].filter((each) => each !== undefined);
}
