/** Strength of the members of a corner and of its drop link: stress, buckling, and their screwed ends. */
import { clampedMaterial } from '../../materials/fastener-material.ts';
import { threadNamed } from '../../materials/thread.ts';
import { distance, type Vec3 } from '../../maths/vec3.ts';
import type { Newton } from '../../units/quantity.ts';
import type { Origin, Working } from '../../working/working.ts';
import type { CornerForm } from '../corner-of-car.ts';
import { MEMBERS, type MemberName } from '../loads/members.ts';
import { strutUnder } from '../loads/strut.ts';
import { screwedEndUnder } from '../loads/threaded-end.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { type FigureNote, notesOf, type Put } from './note.ts';

/** The six members, and the drop link of the anti-roll bar. */
export type LinkName = MemberName | 'dropLink';

export const LINK_WORDS: Readonly<
  Record<LinkName, readonly [means: string, symbol: string, anchor: string]>
> = {
  upperFront: ['upper wishbone, front leg', 'N_uf', 'upperFront'],
  upperRear: ['upper wishbone, rear leg', 'N_ur', 'upperRear'],
  lowerFront: ['lower wishbone, front leg', 'N_lf', 'lowerFront'],
  lowerRear: ['lower wishbone, rear leg', 'N_lr', 'lowerRear'],
  toeLink: ['track rod or toe link', 'N_t', 'toeInner'],
  rod: ['pushrod or pullrod', 'N_p', 'rodOuter'],
  dropLink: ['drop link', 'N_d', 'dropLinkRocker'],
};

const noteOf = { links: notesOf('links'), rocker: notesOf('rocker') } as const;

const strengthOf = (name: LinkName) => {
  const [means, , anchor] = LINK_WORDS[name];
  const share = (id: string, what: string, symbol: string, rank: 2 | 3): FigureNote =>
    noteOf[name === 'dropLink' ? 'rocker' : 'links']({
      id: `${id}.${name}`,
      means: `${means}: ${what}`,
      symbol,
      unit: 'share',
      anchor,
      rank,
    });
  return {
    yields: share('yieldShare', 'stress over yield', 'y', 2),
    buckles: share('bucklingShare', 'push over the push at which it buckles', 'b', 2),
    screwed: share('endShare', 'stress at the root of its thread over yield', 'y_3', 2),
    strips: share('stripShare', 'force over what strips its thread', 's_3', 3),
  };
};

const NOTES = Object.fromEntries(
  [...MEMBERS, 'dropLink' as const].map((name) => [name, strengthOf(name)]),
) as Record<LinkName, ReturnType<typeof strengthOf>>;

const SOLID = { kind: 'constant', what: 'a solid bar' } as const;
const PINNED = { kind: 'constant', what: 'ball joints at both ends' } as const;
const STRAIGHT = { kind: 'constant', what: 'no bow in the file: taken as straight' } as const;

/** Less than this is no force that anybody would name, N or N m. */
const NO_FORCE = 0.05;

/** The sign of a force, and in a word which way it acts where the car now is. */
export const sensed = (
  note: FigureNote,
  force: number,
  [sign, above, below]: readonly [sign: string, above: string, below: string] = [
    'tension positive',
    'pulled',
    'pushed',
  ],
): FigureNote => ({
  ...note,
  say: Math.abs(force) < NO_FORCE ? sign : `${sign}: here it is ${force > 0 ? above : below}`,
});

/** @param tension  as put before, under the link's own symbol */
export function putLinkStrength(
  corner: CornerForm,
  name: LinkName,
  { ends, tension }: { readonly ends: readonly [Vec3, Vec3]; readonly tension: Newton },
  numbers: Numbers,
  put: Put,
  working?: Working,
): void {
  const member = corner.members?.[name];
  if (member === undefined) return;
  const N: Origin = { kind: 'step', symbol: LINK_WORDS[name][1] };
  const outside = numbers.of(member.outside);
  const strut = {
    outside,
    bore: member.wall === undefined ? 0 : outside - 2 * numbers.of(member.wall),
    length: distance(...ends),
    effective: numbers.or(member.effective, 1),
    youngsModulus: numbers.of(member.youngsModulus),
    yield: numbers.of(member.yield),
    bow: numbers.or(member.bow, 0),
  };
  const { yieldShare, bucklingShare } = strutUnder(strut, tension, working, {
    D: fromReading(member.outside),
    d: member.wall === undefined ? SOLID : fromReading(member.wall),
    L: { kind: 'constant', what: 'distance of its two joints in the file' },
    β: member.effective === undefined ? PINNED : fromReading(member.effective),
    w_0: member.bow === undefined ? STRAIGHT : fromReading(member.bow),
    N,
    E: fromReading(member.youngsModulus),
    σ_y: fromReading(member.yield),
  });
  put(NOTES[name].yields, yieldShare);
  put(NOTES[name].buckles, bucklingShare);

  const { end } = member;
  if (end === undefined) return;
  // the thread by which rod and track rod are set is the same one
  const own = name === 'rod' || name === 'toeLink' ? corner[name]?.thread : undefined;
  const engaged = end.engaged ?? own!.engaged;
  const parent = clampedMaterial(end.parent)!;
  const thread = threadNamed(end.thread ?? own!.size!)!;
  const screwed = screwedEndUnder(
    {
      thread,
      engaged: numbers.of(engaged),
      yield: numbers.of(end.yield),
      parentShearStrength: parent.shearStrength,
    },
    tension,
    working,
    {
      N,
      σ_3: fromReading(end.yield),
      L_e: fromReading(engaged),
      d_3: { kind: 'table', name: thread.name },
      τ_p: { kind: 'table', name: parent.name },
    },
  );
  put(NOTES[name].screwed, screwed.yieldShare);
  put(NOTES[name].strips, screwed.stripShare);
}
