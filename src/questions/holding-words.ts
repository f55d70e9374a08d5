/** What a set holds in its car and what was only looked at: one wording for page, command line and paper. */
import { plain, type Speech, spokenAmount } from '../units/show.ts';
import type { HoldingStands } from './find-primaries.ts';
import type { Holdable } from './primaries-holding.ts';
import { isKeptHot } from './primaries-hot.ts';
import type { PrimariesInCar } from './primaries-in-car.ts';
import { isReached } from './primaries-nuts.ts';

/** As it is asked for. */
export const HOLD_WORDS: Readonly<Record<Holdable, string>> = {
  hot: 'gaps hot',
  tools: 'a tool on every nut',
  slip: 'slip joints long enough',
  removal: 'a way off with the engine in',
};

export interface HoldTold {
  readonly kind: Holdable;
  /** The finder was asked to hold it. */
  readonly asked: boolean;
  readonly holds: boolean;
  /** Where it cannot be said, or there is nothing of the kind. */
  readonly open: boolean;
  readonly words: string;
}

/** Each thing that can be held, whether it was asked of this set, and whether it is so; by the look at the set itself. */
export function holdsTold(
  { kinds, hot, nuts, slip, removal }: PrimariesInCar,
  speech: Speech,
): readonly HoldTold[] {
  const long = (metres: number): string => spokenAmount(metres, 'm', speech === 'mm-N' ? 1 : 3, speech);
  /** `never`: how many of them nobody can hold; `once`: on what terms it holds. */
  const of = (
    kind: Holdable,
    lacks: readonly string[],
    { never = 0, open = false, once = '' }: { never?: number; open?: boolean; once?: string } = {},
  ): HoldTold => {
    const asked = kinds.includes(kind);
    const holds = lacks.length === 0 && !open;
    const how = open
      ? 'cannot be said'
      : holds
        ? `${asked ? 'held' : 'so, though it was not asked of the finder'}${once}`
        : `${short(asked, never === lacks.length)}: ${lacks.join('; ')}`;
    return { kind, asked, holds, open, words: `${capital(HOLD_WORDS[kind])}: ${how}.` };
  };
  return [
    of(
      'hot',
      hot.gaps
        .filter((each) => !isKeptHot(each))
        .map(
          ({ cylinder, against, asked, hot: gap }) =>
            `cylinder ${cylinder} to ${against} would hold with ${long(Math.max(0, gap!))} asked hot, not ${long(asked)}`,
        ),
    ),
    of(
      'tools',
      nuts.reached
        ? nuts.nuts
            .filter((each) => !isReached(each))
            .map(({ cylinder, where, never }) =>
              never === undefined
                ? `none goes on cylinder ${cylinder} ${where}`
                : `none goes on cylinder ${cylinder} ${where} wherever the pipes lie, for ${never}`,
            )
        : [],
      {
        never: nuts.reached ? nuts.nuts.filter(({ never }) => never !== undefined).length : 0,
        open: !nuts.reached,
      },
    ),
    ...(slip === undefined
      ? []
      : [
          of(
            'slip',
            slip.lacks.map(
              ({ cylinder, needs, has }) =>
                `cylinder ${cylinder} has ${long(has)} straight before its mouth, and needs ${long(needs)}`,
            ),
          ),
        ]),
    of('removal', removal.reached ? removal.held.map(({ part }) => `no way off was found for ${part}`) : [], {
      open: !removal.reached,
      once: removal.reached ? screwedOut(removal.binds) : '',
    }),
  ];
}

const short = (asked: boolean, neverAll: boolean): string =>
  !asked ? 'only looked at, and not so' : neverAll ? 'held as far as it can be' : 'asked, and not held';

const screwedOut = (binds: readonly { readonly cylinder: number }[]): string =>
  binds.length === 0
    ? ''
    : `, with the studs of cylinder${binds.length === 1 ? '' : 's'} ${binds.map(({ cylinder }) => cylinder).join(', ')} screwed out first`;

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

/** What was asked beyond the cold gaps of the file so that it holds; none where nothing was. */
export function askedMore({ more }: HoldingStands, speech: Speech): string | undefined {
  if (more === undefined) return undefined;
  const long = (mm: number): string => spokenAmount(mm / 1000, 'm', speech === 'mm-N' ? 1 : 3, speech);
  const gaps = [
    ...(more.pipes > 0 ? [`${long(more.pipes)} from pipe to pipe`] : []),
    ...(more.shell > 0 ? [`${long(more.shell)} to the bodywork`] : []),
    ...(more.collectorBody > 0 ? [`${long(more.collectorBody)} to the collector`] : []),
    ...Object.entries(more.solids).map(([name, mm]) => `${long(mm)} to ${name}`),
  ];
  const tools = more.tools.map(({ room }) => room.form);
  const counted = (['socket', 'ring spanner', 'open spanner'] as const)
    .map((form) => [form, tools.filter((each) => each === form).length] as const)
    .filter(([, count]) => count > 0)
    .map(([form, count]) => `for ${form === 'open spanner' ? 'an' : 'a'} ${form} on ${plain(count, 0)}`);
  const said = [
    ...(gaps.length > 0 ? [`more cold than the file asks: ${gaps.join(', ')}`] : []),
    ...(more.straight > 0 ? [`${long(more.straight)} straight before the collector`] : []),
    ...(counted.length > 0 ? [`room at the nuts ${counted.join(', ')}`] : []),
  ];
  return said.length === 0 ? undefined : `Asked of the finder for it: ${said.join('; ')}.`;
}

/** What a finding is at, where it must hold more. */
export function holdingDoes({ kinds, never, does, holdsAll, lacking }: HoldingStands): string | undefined {
  const what = kinds.map((each) => HOLD_WORDS[each]).join(', ');
  const but =
    never.length === 0 ? '' : `, but for ${never.join(' and ')}, on which none goes wherever the pipes lie`;
  switch (does) {
    case 'mend':
      return `A set stands cold; mending it until it holds: ${what}${but}.`;
    case 'better':
      return `A set holds: ${what}${but}. Making it better.`;
    case 'done':
      return holdsAll
        ? `Held: ${what}${but}.`
        : `No set was found that holds all of: ${what}${but}. This one lacks least${lacking === undefined ? '' : `, ${lacking === 1 ? 'one thing' : `${lacking} things`}`}.`;
    case 'search':
      return lacking === undefined || holdsAll
        ? undefined
        : `Looking for a set that holds: ${what}${but}; the best so far lacks ${lacking === 1 ? 'one thing' : `${lacking} things`}.`;
    case 'impossible':
      return undefined;
  }
}
