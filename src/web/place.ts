/**
 * Where the reader is: which car, spec, stop, view and travel. It stands in the address, so that a page can be
 * loaded again and handed on.
 */
import { type End, LOAD_PATH, type Side, type Stance, type Stop, type Wheel } from '../questions/figure.ts';
import { JOINT_NAMES, type JointName } from '../questions/index.ts';
import { type AskedTexts, askedIn } from './asked/fields.ts';
import { DAY_FIELDS, DAY_STOPS, type DayName } from './day/words.ts';
import { GAUGE_FIELDS, GAUGES_AT, type PageGauge } from './gauges/words.ts';
import { type ChangedDoing, changedIn } from './loads/changed-doing.ts';
import { PAD_STOPS, type PadStop } from './patch/words.ts';
import { FIRST_TURN, type Turn, VIEWS, type View } from './scene/look.ts';

export const WAYS = ['load', 'gas', 'floor', 'book'] as const;
export type Way = (typeof WAYS)[number];

/** Stops of the gas path that are worked out. */
export const GAS_STOPS = ['primaries', 'collector'] as const;
export type GasStop = (typeof GAS_STOPS)[number];

/** Stops of the flat floor: at the pads, then what a day out asks. */
const FLOOR_STOPS = [...PAD_STOPS, ...DAY_STOPS] as const;
export type FloorStop = PadStop | DayName;

export const MODES = ['wheel', 'heave', 'roll'] as const;
/** What moves: this wheel alone, both wheels of the axle, or this one up and the other down. */
export type Mode = (typeof MODES)[number];

export const CARDS = ['figures', 'loads', 'curves', 'readings', 'ask', 'survey'] as const;
export type CardName = (typeof CARDS)[number];

export interface Place {
  /** Left out: the floor. */
  readonly car?: string | undefined;
  /** Left out: the file as it stands. */
  readonly spec?: string | undefined;
  /** The spec that it is put beside. */
  readonly against?: string | undefined;
  readonly way: Way;
  readonly stop: Stop;
  readonly wheel: Wheel;
  readonly view: View;
  readonly turn: Turn;
  readonly mode: Mode;
  /** Metres, bump positive. */
  readonly travel: number;
  /** Metres, positive to the left. */
  readonly rack: number;
  readonly card: CardName;
  /** What the car is doing, by the name of a case. */
  readonly doing: string;
  /** What of it is typed otherwise. */
  readonly changed?: ChangedDoing | undefined;
  /** A row of a log instead of a case: the name of the log, and the row from nought. */
  readonly log?: string | undefined;
  readonly row?: number | undefined;
  readonly gas: GasStop;
  readonly floor: FloorStop;
  /** Which sheet of the flat floor is looked at, by its name; left out: the last. */
  readonly read?: string | undefined;
  /** What is read by hand at a stop of the pads; left out: the sheet as it was read. */
  readonly gauge?: PageGauge | undefined;
  /** What is typed at the stops of the flat floor. */
  readonly asked: AskedTexts;
  readonly bank: Side;
  /** Both banks are found together; the bank above is the side that they are seen from. */
  readonly both?: true | undefined;
  /** Where the scan is cut open, a share of its length from the rear; left out: whole. */
  readonly cut?: number | undefined;
  /** Which bolted joint is looked at. */
  readonly joint: JointName;
  /** The figure whose working is open. */
  readonly figure?: string | undefined;
}

export const START: Place = {
  way: 'load',
  stop: 'spring',
  wheel: { end: 'front', side: 'left' },
  view: 'front',
  turn: FIRST_TURN,
  mode: 'wheel',
  travel: 0,
  rack: 0,
  card: 'figures',
  doing: 'standing',
  gas: 'primaries',
  floor: 'weights',
  asked: {},
  bank: 'left',
  joint: 'engineToTub',
};

const DEG = Math.PI / 180;

export function placeFrom(search: string): Place {
  const asked = new URLSearchParams(search);
  const word = <T extends string>(key: string, of: readonly T[], otherwise: T): T =>
    of.find((each) => each === asked.get(key)) ?? otherwise;
  const number = (key: string, limit: number, otherwise: number): number => {
    const value = Number(asked.get(key) ?? Number.NaN);
    return Number.isFinite(value) ? Math.min(limit, Math.max(-limit, value)) : otherwise;
  };
  const text = (key: string) => (asked.get(key) ? { [key]: asked.get(key)! } : {});
  const [end, side] = (asked.get('wheel') ?? '').split('-');
  const floor = word('floor', FLOOR_STOPS, START.floor);
  const gauge = gaugesAt(floor).find((each) => each === asked.get('gauge'));
  const place: Place = {
    ...text('car'),
    ...text('spec'),
    ...text('against'),
    ...text('figure'),
    way: word('way', WAYS, START.way),
    stop: word('stop', LOAD_PATH, START.stop),
    wheel: {
      end: (['front', 'rear'] as const).find((each) => each === end) ?? 'front',
      side: (['left', 'right'] as const).find((each) => each === side) ?? 'left',
    },
    view: word('view', VIEWS, START.view),
    turn: {
      azimuth: number('azimuth', 360, FIRST_TURN.azimuth / DEG) * DEG,
      elevation: number('elevation', 89, FIRST_TURN.elevation / DEG) * DEG,
    },
    mode: word('mode', MODES, START.mode),
    travel: number('travel', 200, 0) / 1000,
    rack: number('rack', 120, 0) / 1000,
    card: word('card', CARDS, START.card),
    doing: asked.get('doing') ?? START.doing,
    ...text('log'),
    ...(asked.has('row') ? { row: Math.max(0, Math.round(number('row', 1e7, 0))) } : {}),
    ...changedIn(asked.get('typed')),
    gas: word('gas', GAS_STOPS, START.gas),
    floor,
    ...(gauge === undefined ? {} : { gauge }),
    ...text('read'),
    asked: askedIn(asked, { ...DAY_FIELDS, ...GAUGE_FIELDS }),
    bank: word('bank', ['left', 'right'], START.bank),
    ...(asked.has('both') ? { both: true as const } : {}),
    ...(asked.has('cut') ? { cut: Math.max(0, number('cut', 100, 100)) / 100 } : {}),
    joint: word('joint', JOINT_NAMES, START.joint),
  };
  return { ...place, ...turnedTo(place.stop, place) };
}

/** The address of a place; what is as at the start is left out. */
export function searchOf(place: Place): string {
  if (place.car === undefined) return '';
  const asked = new URLSearchParams({ car: place.car });
  const put = (key: string, value: string | undefined, otherwise?: string): void => {
    if (value !== undefined && value !== otherwise) asked.set(key, value);
  };
  put('spec', place.spec);
  put('against', place.against);
  put('way', place.way, START.way);
  put('stop', place.stop, START.stop);
  put('wheel', `${place.wheel.end}-${place.wheel.side}`, 'front-left');
  put('view', place.view, START.view);
  if (place.view === 'free' || place.view === 'car') {
    put('azimuth', (place.turn.azimuth / DEG).toFixed(1));
    put('elevation', (place.turn.elevation / DEG).toFixed(1));
  }
  put('mode', place.mode, START.mode);
  put('travel', tenths(place.travel), '0');
  put('rack', tenths(place.rack), '0');
  put('card', place.card, START.card);
  put('doing', place.doing, START.doing);
  put('log', place.log);
  put('row', place.row?.toString());
  put('typed', place.changed === undefined ? undefined : JSON.stringify(place.changed));
  put('gas', place.gas, START.gas);
  put('floor', place.floor, START.floor);
  put('gauge', gaugeOf(place));
  put('read', place.read);
  for (const [key, text] of Object.entries(place.asked)) put(key, text, '');
  put('bank', place.bank, START.bank);
  put('both', place.both === true ? 'yes' : undefined);
  put('cut', place.cut === undefined ? undefined : String(Math.round(100 * place.cut)));
  put('joint', place.joint, START.joint);
  put('figure', place.figure);
  return `?${asked}`;
}

const tenths = (metres: number): string => String(Math.round(metres * 1e4) / 10);

/** All four wheels as the place has them. */
export function stanceOf(place: Place): Stance {
  const { end, side } = place.wheel;
  const other: Side = side === 'left' ? 'right' : 'left';
  const share = place.mode === 'heave' ? 1 : place.mode === 'roll' ? -1 : 0;
  const moved = { [side]: place.travel, [other]: share * place.travel + 0 } as Record<Side, number>;
  const still = { left: 0, right: 0 };
  const axle = (of: End) => (of === end ? { left: moved.left, right: moved.right } : still);
  return { front: axle('front'), rear: axle('rear'), rack: place.rack };
}

/** Which end a stop behind the corners is looked at from: case and studs are behind, the tub is ahead. */
const END_OF: Readonly<Partial<Record<Stop, End>>> = { case: 'rear', studs: 'rear', tub: 'front' };

const turnedTo = (stop: Stop, { wheel, view }: Place): Partial<Place> => {
  const end = END_OF[stop];
  return end === undefined || end === wheel.end
    ? {}
    : { wheel: { end, side: wheel.side }, rack: 0, ...(view === wheel.end ? { view: end } : {}) };
};

/** A stop that is come to: the card goes on as far as it can, and the drawing shows the end that the stop belongs to. */
export const arrived = (stop: Stop, from: Place): Partial<Place> => ({
  stop,
  card: from.card === 'ask' ? 'figures' : from.card,
  ...turnedTo(stop, from),
});

/** Stops that are no one wheel's: what they show is always under a load case. */
export const isBehindCorners = (stop: Stop): boolean => stop === 'case' || stop === 'studs' || stop === 'tub';

/** Whether a load case says what the car is doing, and not a wheel that is moved by hand. */
export const isLoaded = ({ card, stop }: Place): boolean => card === 'loads' || isBehindCorners(stop);

/** The stop of a day out that is looked at; undefined elsewhere. */
export const dayOf = ({ way, floor }: Place): DayName | undefined =>
  way === 'floor' ? DAY_STOPS.find((each) => each === floor) : undefined;

const gaugesAt = (floor: FloorStop): readonly PageGauge[] =>
  PAD_STOPS.some((each) => each === floor) ? GAUGES_AT[floor as PadStop] : [];

/** What is read by hand at the stop that is looked at; undefined elsewhere. */
export const gaugeOf = ({ way, floor, gauge }: Place): PageGauge | undefined =>
  way === 'floor' ? gaugesAt(floor).find((each) => each === gauge) : undefined;

export const wheelName = (wheel: Wheel): string => `${wheel.end} ${wheel.side}`;
