/** What is said of a set in its car: one wording for page, command line and paper. */
import type { Swing } from '../gaspath/hand/tools.ts';
import type { WayOut } from '../gaspath/removal/way-out.ts';
import type { Vec3 } from '../maths/vec3.ts';
import { plain, type Speech, spokenAmount } from '../units/show.ts';
import type { HotGap, PrimariesHot } from './primaries-hot.ts';
import type { PrimariesInCar } from './primaries-in-car.ts';
import { isReached, type NutRoom, type NutsReached, STROKE } from './primaries-nuts.ts';
import type { PrimariesRemoval } from './primaries-removal.ts';

const size =
  (speech: Speech) =>
  (metres: number, digits = 1) =>
    spokenAmount(metres, 'm', digits + (speech === 'mm-N' ? 0 : 2), speech);

const celsius = (kelvin: number): string => `${plain(kelvin - 273.15, 0)} °C`;

/** Above this a tube does not spring back whole: the proof strain by which yield is told. */
const SET_STRAIN = 0.002;

/** Gaps that close by less than this are left out where they are kept. */
const NOTABLE = 1e-4;

/** Rows worth telling: what is less than asked hot, and what comes nearer. */
export const hotRows = ({ gaps, looked }: PrimariesHot): readonly HotGap[] =>
  gaps.filter(
    ({ asked, cold, hot }) => hot !== undefined && (hot < asked || (cold ?? asked + looked) - hot > NOTABLE),
  );

export function hotGapWords(
  { asked, cold, hot }: HotGap,
  { looked }: PrimariesHot,
  speech: Speech,
): { readonly asked: string; readonly cold: string; readonly hot: string; readonly closes: string } {
  const long = size(speech);
  const far = (gap: number | undefined): string =>
    gap === undefined ? `over ${long(asked + looked, 0)}` : long(gap);
  return {
    asked: asked === 0 ? 'not to touch' : long(asked),
    cold: far(cold),
    hot: far(hot),
    closes:
      cold === undefined || hot === undefined
        ? ''
        : `${long(Math.abs(cold - hot))} ${hot < cold ? 'nearer' : 'farther'}`,
  };
}

/** Whether what is asked hot is kept, in a sentence. */
export function hotVerdict(hot: PrimariesHot, speech: Speech): string {
  const long = size(speech);
  const short = hot.gaps.filter((each) => each.hot !== undefined && each.hot < each.asked - 2e-5);
  if (short.length > 0) {
    const worst = short[0]!;
    return `Hot, ${short.length === 1 ? 'one gap is' : `${short.length} gaps are`} less than asked: worst cylinder ${worst.cylinder} to ${worst.against}, ${long(worst.hot!)} of ${worst.asked === 0 ? 'nothing' : long(worst.asked)}.`;
  }
  const least = hot.gaps.find((each) => each.hot !== undefined);
  return least === undefined
    ? 'Hot, nothing is near.'
    : `Hot, all that is asked is kept: least to spare cylinder ${least.cylinder} to ${least.against}, ${long(least.hot!)} of ${least.asked === 0 ? 'nothing' : long(least.asked)}.`;
}

export function hotWords(hot: PrimariesHot, speech: Speech): readonly string[] {
  const long = size(speech);
  const grows = hot.pipes.map((each) => each.grows);
  const worst = [...hot.pipes].sort((a, b) => b.strain - a.strain)[0]!;
  const pushes = [...hot.pipes].sort((a, b) => b.force - a.force)[0]!;
  const slides = hot.pipes.flatMap(({ slides: by }) => (by === undefined ? [] : [by]));
  const { engineMoves } = hot;
  return [
    `Pipes of ${hot.material} at ${celsius(hot.pipe)}, measured at ${celsius(hot.cold)}: each grows ${long(Math.max(...grows))} from its flange on.`,
    hot.held === 'by its pipes'
      ? `The collector hangs on its pipes and goes with them: ${long(hot.collector.moves)}, turned ${spokenAmount(hot.collector.turns, 'rad', 1)}; the pipes bow as they hold one another.`
      : 'The collector is held to the engine and stays: the pipes bow.',
    ...(slides.length === 0
      ? []
      : [
          `In their slip joints the pipes move ${long(Math.min(...slides))} to ${long(Math.max(...slides))} towards the collector: leave more than that free.`,
        ]),
    ...(engineMoves === undefined
      ? []
      : [
          `With the engine moved on its mounts, either way: ${long(engineMoves.along, 0)} fore and aft, ${long(engineMoves.across, 0)} sideways, ${long(engineMoves.up, 0)} up and down.`,
        ]),
    `Most strained is cylinder ${worst.cylinder}: ${plain(100 * worst.strain, 2)} % of its wall, as if it stayed elastic${worst.strain > SET_STRAIN ? '; above 0.2 % the tube takes a set when it is first hot, and cracks begin there' : ''}. Hardest on its studs is cylinder ${pushes.cylinder}, with about ${spokenAmount(pushes.force, 'N', 0, speech)}.`,
    ...hot.taken,
  ];
}

/** What the slip joints ask of the straights at the mouths. */
export function slipWords({ needs, lacks }: NonNullable<PrimariesInCar['slip']>, speech: Speech): string {
  const long = size(speech);
  return lacks.length === 0
    ? `Every pipe is straight for the ${long(needs)} that its slip joint asks before the mouth: what stands in it, what slides in, and 1 mm free.`
    : `Too short before the mouth for their slip joints: ${lacks.map(({ cylinder, has, needs: of }) => `cylinder ${cylinder}, ${long(has)} of ${long(of)}`).join('; ')}.`;
}

export function socketWords({ socket }: Pick<NutRoom, 'socket'>, speech: Speech): string {
  const drive = spokenAmount(
    socket.drive,
    'm',
    speech === 'mm-N' ? (socket.drive < 0.01 ? 1 : 0) : 2,
    speech,
  );
  if (!socket.goes) return `does not: ${socket.stoppedBy ?? 'nothing'} in the way`;
  return socket.bar === 0
    ? `goes on, ${drive} drive, ratchet on it`
    : `goes on, ${drive} drive, bar of ${size(speech)(socket.bar! / 1000, 0)}`;
}

export function spannerWords({ spanner }: Pick<NutRoom, 'spanner'>, speech: Speech): string {
  const { degrees, length } = spanner;
  if (degrees < STROKE) return swingStopped(spanner);
  const turned = degrees < 60 ? ', turned over at each stroke' : '';
  return `${degrees}° of swing, ${size(speech)(length, 0)} long${turned}`;
}

export function ringWords({ ring }: Pick<NutRoom, 'ring'>, speech: Speech): string {
  const { degrees, length } = ring;
  return degrees < STROKE ? swingStopped(ring) : `${degrees}° of swing, ${size(speech)(length, 0)} long`;
}

const swingStopped = ({ degrees, stoppedBy }: Swing): string =>
  `does not: ${degrees > 0 ? `${degrees}° of swing, ` : ''}${stoppedBy} in the way`;

export function nutsVerdict({ nuts, flats, thread }: NutsReached, speech: Speech): string {
  const none = nuts.filter((each) => !isReached(each));
  const on = `Nuts ${size(speech)(flats)} across flats on studs ${thread}, sockets and open spanners of the largest outside that the standards allow, rings as they are usual`;
  return none.length === 0
    ? `${on}: a tool goes on each of the ${nuts.length}.`
    : `${on}: on ${none.length} of ${nuts.length} none goes: ${none.map(({ cylinder, where }) => `cylinder ${cylinder} ${where}`).join(', ')}. A thin-walled socket or a jointed one may.`;
}

/** `outwards and down`, of the car and the side. */
export function wayWords(way: Vec3, side: 'left' | 'right'): string {
  const out = side === 'left' ? way[1] : -way[1];
  const parts: readonly (readonly [number, string, string])[] = [
    [out, 'outwards', 'inwards'],
    [way[2], 'up', 'down'],
    [way[0], 'forward', 'rearward'],
  ];
  const said = parts
    .filter(([value]) => Math.abs(value) > 0.2)
    .sort((a, b) => Math.abs(b[0]) - Math.abs(a[0]))
    .map(([value, more, less]) => (value > 0 ? more : less));
  return said.length === 3 ? `${said[0]}, ${said[1]} and ${said[2]}` : said.join(' and ');
}

function wayFound({ legs }: WayOut, side: 'left' | 'right', speech: Speech): string {
  const long = size(speech);
  return legs
    .map((leg) => {
      if (leg.kind === 'turn')
        return `turned ${Math.abs(leg.degrees)}° ${leg.degrees > 0 ? 'right' : 'left'}-handed about ${wayWords(leg.axis, side)}`;
      const by = long(leg.mm / 1000, 0);
      if (leg.kind === 'draw') return `drawn ${by} ${wayWords(leg.way, side)}`;
      return `${leg.kind === 'shift' ? 'moved' : 'taken'} ${by} ${wayWords(leg.way, side)}`;
    })
    .join(', then ');
}

export function removalWords(
  removal: PrimariesRemoval,
  side: 'left' | 'right',
  speech: Speech,
): readonly string[] {
  if (!removal.reached) return [removal.message];
  const long = size(speech);
  const said = removal.off.map(
    ({ part, way }, k) =>
      `${removal.off.length > 1 || removal.held.length > 0 ? `${k + 1}. ` : ''}${capital(part)}: a way out was found: ${wayFound(way, side, speech)}.`,
  );
  const held = removal.held.map(({ part, way }) => {
    if (way === undefined)
      return `${capital(part)}: not tried, it comes after another that does not come off.`;
    const stops = way.stops.map(({ name, times }) => `${name} (${times})`).join(', ');
    return `${capital(part)}: no way out was found among the ${way.tried} tried; the best came ${long(way.farthest / 1000, 0)} far. Stopped by ${stops}.`;
  });
  const bind = removal.binds.map(
    ({ cylinder, off, gives }) =>
      `The studs of cylinder ${cylinder} do not stand the way the set is drawn: over their length they are ${long(off)} off, their holes give ${long(gives)}. Screw them out first.`,
  );
  return [
    ...said,
    ...held,
    ...bind,
    'Engine in the car, nuts and tail pipe off, what the car file says comes off being off; looked at with nothing but what is told to the finder, 1 mm clear. Ways that were not tried may do.',
    ...removal.taken,
  ];
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
