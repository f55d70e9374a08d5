/**
 * A sheet that is being read now, as plain data: what was typed and answered so far, and what of it goes into the car
 * file.
 */
import type { FloorSheetRead, HoldName } from '../../questions/index.ts';
import { readWithSpread } from '../../units/read.ts';
import type { Change } from '../client.ts';
import { kindOf, TYPED, WHEEL_KEYS } from './words.ts';

export const STATES = ['as found', 'as set', 'after run'] as const;

export interface Run {
  readonly state: (typeof STATES)[number];
  readonly on: string;
  readonly by: string;
  /** As typed, with its unit, by the name of the reading. */
  readonly typed: Readonly<Record<string, string>>;
  /** What of it was worked from strings, plates or scales: it is so while it stands as it was put. */
  readonly worked?: Readonly<Record<string, { readonly from: string; readonly text: string }>>;
  /** Holds that were answered, and how. */
  readonly held: Readonly<Partial<Record<HoldName, boolean>>>;
  /** How the bars are on a car as found; elsewhere the hold tells it. */
  readonly bars?: 'connected' | 'disconnected' | undefined;
  /** How often something was moved after camber and toe were read, and they were read once more. */
  readonly passes: number;
  /** Adjusters moved since the sheet before, by name, in their own units. */
  readonly moved?: Readonly<Record<string, number>> | undefined;
  /** What is typed beside the readings, by TOLD's names, `clicks.frontLeft.bump`, `wings.front`, `with.scales`. */
  readonly told: Readonly<Record<string, string>>;
  /** Place among the steps. */
  readonly at: number;
}

/** Tools that a sheet is read with: the kinds that each reads, and its class where the file does not know it. */
export const TOOLS = {
  scales: { name: 'scales', kinds: ['weight'], class: 'corner scale' },
  heights: { name: 'height gauge', kinds: ['height'], class: 'height gauge' },
  angles: { name: 'camber and caster gauge', kinds: ['camber', 'caster'], class: 'inclinometer' },
  strings: { name: 'strings or toe gauge', kinds: ['toe', 'toeAtRim'], class: 'string line' },
  pressures: { name: 'pressure gauge', kinds: ['pressure'], class: 'pressure gauge' },
} as const;
export type Tool = keyof typeof TOOLS;
export const TOOL_NAMES = Object.keys(TOOLS) as readonly Tool[];

const toolOf = (kind: string): Tool | undefined =>
  TOOL_NAMES.find((tool) => TOOLS[tool].kinds.some((each) => each === kind));

/** Words that are typed at the end as they are. */
export const TOLD_WORDS = { place: 'floor or patch', tyres: 'set of tyres' } as const;
export const TOLD_TEMPERATURES = { airTemperature: 'air', floorTemperature: 'floor' } as const;

export const CLICK_NAMES = { bump: 'bump', rebound: 'rebound' } as const;

export const barsOf = ({ bars, held }: Run): 'connected' | 'disconnected' =>
  bars ?? (held.bars === true ? 'disconnected' : 'connected');

export const notSoOf = ({ held }: Run): readonly HoldName[] =>
  (Object.keys(held) as HoldName[]).filter((name) => held[name] === false);

/** What was typed so far, as a sheet to look at. */
export const readSoFar = (run: Run): FloorSheetRead => ({
  name: run.state,
  state: run.state,
  on: run.on,
  by: run.by,
  bars: barsOf(run),
  notSo: notSoOf(run),
  wings: {},
  instruments: [],
  readings: Object.entries(run.typed).flatMap(([id, text]) => {
    const amount = readWithSpread(text, TYPED[kindOf(id)]!.si);
    return amount.ok ? [{ id, value: amount.is.value, u: amount.is.u ?? 0 }] : [];
  }),
});

/** Where a reading was worked from, while it stands as it was put. */
export function workedFrom({ worked, typed }: Run, id: string): string | undefined {
  const found = worked?.[id];
  return found !== undefined && found.text === typed[id] ? found.from : undefined;
}

/** Changes of the car file that keep the sheet under a name, with instruments that the file does not know yet. */
export function changesOf(
  run: Run,
  called: string,
  known: Readonly<Record<string, string>>,
): readonly Change[] {
  const fresh = TOOL_NAMES.flatMap((tool): Change[] => {
    const name = toolUsed(run, tool);
    if (name === undefined || Object.hasOwn(known, name)) return [];
    return [{ path: ['instruments', name], value: { class: TOOLS[tool].class } }];
  });
  // one name typed for two tools is one instrument
  const once = fresh.filter((each, k) => fresh.findIndex(({ path }) => path[1] === each.path[1]) === k);
  return [...once, { path: ['floor', 'read', called], value: sheetForFile(run) }];
}

/** The tool's instrument, where something was read that it reads. */
export function toolUsed({ told, typed }: Pick<Run, 'told' | 'typed'>, tool: Tool): string | undefined {
  const name = told[`with.${tool}`]?.trim();
  const used = Object.keys(typed).some((id) => toolOf(kindOf(id)) === tool);
  return name === undefined || name === '' || !used ? undefined : name;
}

/** The sheet as it goes into the car file. */
function sheetForFile(run: Run): Record<string, unknown> {
  const readings: Record<string, Record<string, unknown>> = {};
  const pressure: Record<string, unknown> = {};
  for (const [id, text] of Object.entries(run.typed)) {
    const kind = kindOf(id);
    const of = id.slice(kind.length + 1);
    const tool = toolOf(kind);
    const name = tool === undefined ? undefined : toolUsed(run, tool);
    const from = workedFrom(run, id);
    const stamp = {
      ...(name === undefined ? {} : { with: name }),
      ...(from === undefined ? {} : { note: `worked from ${from}` }),
    };
    const is = Object.keys(stamp).length === 0 ? text : { is: text, ...stamp };
    if (kind === 'pressure') pressure[of] = is;
    else readings[kind] = { ...readings[kind], [of]: is };
  }
  const notSo = notSoOf(run);
  const clicks = clicksOf(run);
  const wings = under(run, 'wings.');
  const told = [...Object.keys(TOLD_WORDS), ...Object.keys(TOLD_TEMPERATURES)].flatMap((key) =>
    (run.told[key] ?? '').trim() === '' ? [] : [[key, run.told[key]!.trim()] as const],
  );
  return {
    state: run.state,
    on: run.on,
    ...(run.by === '' ? {} : { by: run.by }),
    bars: barsOf(run),
    ...(notSo.length === 0 ? {} : { notSo }),
    ...(Object.keys(pressure).length === 0 ? {} : { pressure }),
    ...(Object.keys(run.moved ?? {}).length === 0 ? {} : { moved: run.moved }),
    ...Object.fromEntries(told),
    ...(clicks === undefined ? {} : { clicks }),
    ...(Object.keys(wings).length === 0 ? {} : { wings }),
    readings,
  };
}

/** What is typed under a head, without the empty. */
const under = ({ told }: Run, head: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(told).flatMap(([key, text]) =>
      key.startsWith(head) && text.trim() !== '' ? [[key.slice(head.length), text.trim()]] : [],
    ),
  );

function clicksOf(run: Run): Record<string, unknown> | undefined {
  const wheels = WHEEL_KEYS.flatMap((wheel) => {
    const of = Object.entries(under(run, `clicks.${wheel}.`)).map(([name, text]) => [name, Number(text)]);
    return of.length === 0 ? [] : [[wheel, Object.fromEntries(of)] as const];
  });
  return wheels.length === 0
    ? undefined
    : { from: run.told.clicksFrom ?? 'full soft', ...Object.fromEntries(wheels) };
}

/** What the last sheet tells of where and with what it was read, to be taken with one press. */
export function toldBefore({ place, instruments }: FloorSheetRead): Readonly<Record<string, string>> {
  const tools = TOOL_NAMES.flatMap((tool) => {
    const used = instruments.find(({ kinds }) => kinds.some((kind) => toolOf(kind) === tool));
    return used === undefined ? [] : [[`with.${tool}`, used.name] as const];
  });
  return { ...(place === undefined ? {} : { place }), ...Object.fromEntries(tools) };
}
