/**
 * What is read by hand from strings, plates, feelers, pads and a water level, as it is typed field by field.
 *
 * In    texts by the name of their field: `rim.frontLeft.front`, `row.2.travel`, `down.rearLeft`
 * Out   the question as the engine takes it, or field by field what is wrong, and what is still to be typed
 *
 * Command line and page both come through here: what is usual and what is checked is one thing.
 */
import type { Car } from '../car/read.ts';
import type { Measured } from '../flatfloor/weighing.ts';
import { alignment, type BumpSteerAsked, bumpSteerRead, type StringsAsked } from './alignment.ts';
import { Fields, type FieldsRead, type Texts } from './fields.ts';
import type { Wheel } from './figure.ts';
import type { GaugedAnswer } from './gauged.ts';
import { type LevelsAsked, levelsOfPads, type ScalesAsked, scalesChecked } from './pads.ts';
import { type WeighingAnswer, type WeighingAsked, weighing } from './weighing.ts';

export interface GaugeAsks {
  strings: StringsAsked;
  'bump-steer': BumpSteerAsked;
  scales: ScalesAsked;
  levels: Pick<LevelsAsked, 'pads'>;
  weighing: WeighingAsked;
}

export type GaugeName = keyof GaugeAsks;

export type GaugeQuestion = {
  [N in GaugeName]: { readonly name: N; readonly asked: GaugeAsks[N] };
}[GaugeName];

export type GaugeAnswer = GaugedAnswer | WeighingAnswer;

/**
 * One standard uncertainty of a reading whose ± is not typed: steel rule from string to rim, tape, feeler, pad, water
 * level: common practice, no source. SI.
 */
export const USUALLY_READ = {
  rule: 0.25e-3,
  tape: 0.5e-3,
  feeler: 0.02e-3,
  pad: 0.1,
  water: 0.3e-3,
} as const;

/** No rim and no plate is less across, m. */
const LEAST_ACROSS = 0.1;
/** Feelers nearer together tell no angle, m. */
const LEAST_APART = 0.05;
/** A lift below this tells nothing of the height, m. */
const LEAST_LIFT = 0.05;

/** Rows of the bump-steer gauge that may be typed. */
export const MOST_ROWS = 15;

const AT_WHEELS: readonly (readonly [key: string, wheel: Wheel])[] = [
  ['frontLeft', { end: 'front', side: 'left' }],
  ['frontRight', { end: 'front', side: 'right' }],
  ['rearLeft', { end: 'rear', side: 'left' }],
  ['rearRight', { end: 'rear', side: 'right' }],
];

export interface GaugeRead extends FieldsRead<GaugeQuestion> {
  /** Fields without which what was begun is left out of the question: the rear edge of a rim whose front one is there. */
  readonly half: readonly string[];
  /** What kind of wrong it is, by the name of the field. */
  readonly codes: Readonly<Record<string, string>>;
}

class GaugeFields extends Fields {
  readonly half: string[] = [];
  readonly codes: Record<string, string> = {};

  refuse(key: string, code: string, why: string): void {
    this.codes[key] = code;
    this.no(key, why);
  }

  /** The ± of all readings of one kind. */
  spread(key: string, like: string): number | undefined {
    const u = this.value(key, like);
    if (u !== undefined && u < 0) this.no(key, 'a spread is not below nothing');
    return u;
  }

  /** An amount with its ±: behind it, in a field of its own, or as usual for this kind of reading. */
  measured(key: string, like: string, usual: number): Measured | undefined {
    const apart = this.spread(`${key}.u`, like);
    const amount = this.amount(key, like);
    if (amount === undefined) {
      if (apart !== undefined && this.text(key) === undefined) this.half.push(key);
      return undefined;
    }
    if (apart !== undefined && amount.u !== undefined)
      this.no(`${key}.u`, 'the ± stands behind the amount already');
    return { value: amount.value, u: amount.u ?? apart ?? usual };
  }

  /** Amounts that tell something together alone; what is missing of those that were begun is noted. */
  together(
    keys: readonly string[],
    like: string,
    usuals: readonly number[],
  ): readonly Measured[] | undefined {
    const there = keys.filter((key) => this.text(key) !== undefined);
    if (there.length > 0) this.half.push(...keys.filter((key) => !there.includes(key)));
    const read = keys.map((key, k) => this.measured(key, like, usuals[k]!));
    return read.every((each) => each !== undefined) ? read : undefined;
  }

  pair(key: string, usual: number): { readonly front: Measured; readonly rear: Measured } | undefined {
    const read = this.together([`${key}.front`, `${key}.rear`], 'm', [usual, usual]);
    return read && { front: read[0]!, rear: read[1]! };
  }
}

/** @param sheets  names of the sheets that the car file holds */
export function readGauge(name: GaugeName, texts: Texts, sheets: readonly string[] = []): GaugeRead {
  const fields = new GaugeFields(texts);
  const question = questionOf(name, fields, sheets);
  const { wrong, missing, half, codes } = fields;
  const well = Object.keys(wrong).length === 0 && missing.length === 0;
  return { wrong, missing, half, codes, ...(well && question !== undefined ? { question } : {}) };
}

function questionOf(
  name: GaugeName,
  fields: GaugeFields,
  sheets: readonly string[],
): GaugeQuestion | undefined {
  switch (name) {
    case 'strings': {
      const asked = stringsAsked(fields);
      return asked && { name, asked };
    }
    case 'bump-steer': {
      const asked = bumpSteerAsked(fields);
      return asked && { name, asked };
    }
    case 'scales': {
      const asked = scalesAsked(fields);
      return asked && { name, asked };
    }
    case 'levels': {
      const asked = levelsAsked(fields);
      return asked && { name, asked };
    }
    case 'weighing':
      return { name, asked: weighingAsked(fields, sheets) };
  }
}

function stringsAsked(fields: GaugeFields): StringsAsked | undefined {
  const rule = fields.spread('rule', 'm') ?? USUALLY_READ.rule;
  const tape = fields.spread('tape', 'm') ?? USUALLY_READ.tape;
  const rims = AT_WHEELS.flatMap(([key, wheel]) => {
    const read = fields.pair(`rim.${key}`, rule);
    return read === undefined ? [] : [{ wheel, ...read }];
  });
  const strings = (['left', 'right'] as const).flatMap((side) => {
    const read = fields.pair(`string.${side}`, tape);
    return read === undefined ? [] : [{ side, ...read }];
  });
  const plates = (['front', 'rear'] as const).flatMap((end) => {
    const read = fields.pair(`plates.${end}`, tape);
    return read === undefined ? [] : [{ end, ...read }];
  });
  const across = fields.measured('across', 'm', tape);
  if (across !== undefined && !(across.value > LEAST_ACROSS))
    fields.refuse('across', 'across', `"${fields.text('across')}" is less than any rim; write it in mm`);
  if (rims.length + plates.length === 0) return undefined;
  return { rims, strings, plates, ...(across === undefined ? {} : { across }) };
}

function bumpSteerAsked(fields: GaugeFields): BumpSteerAsked | undefined {
  const named = fields.text('wheel') ?? 'front left';
  const wheel = AT_WHEELS.find(([, { end, side }]) => `${end} ${side}` === named)?.[1];
  if (wheel === undefined) fields.refuse('wheel', 'wheel', `"${named}" is no wheel of the car`);
  const rule = USUALLY_READ.rule;
  const feeler = fields.spread('feeler', 'm') ?? USUALLY_READ.feeler;
  const apart = fields.measured('apart', 'm', rule);
  if (apart !== undefined && !(apart.value > LEAST_APART))
    fields.refuse('apart', 'apart', `"${fields.text('apart')}" is too little to tell an angle`);
  const rows = Array.from({ length: MOST_ROWS }, (_, k) => `row.${k + 1}`).flatMap((row) => {
    const keys = [`${row}.travel`, `${row}.front`, `${row}.rear`];
    const [travel, front, rear] = fields.together(keys, 'm', [0, feeler, feeler]) ?? [];
    return travel === undefined ? [] : [{ travel: travel.value, front: front!, rear: rear! }];
  });
  if (rows.length === 0 || wheel === undefined) return undefined;
  if (apart === undefined) {
    if (fields.text('apart') === undefined) fields.missing.push('apart');
    return undefined;
  }
  return { wheel, rows, apart };
}

function scalesAsked(fields: GaugeFields): ScalesAsked | undefined {
  const usual = fields.spread('pad', 'kg') ?? USUALLY_READ.pad;
  const known = fields.measured('known', 'kg', 0);
  const pads = AT_WHEELS.flatMap(([key, wheel]) => {
    const shown = fields.measured(`shown.${key}`, 'kg', usual);
    const empty = fields.measured(`empty.${key}`, 'kg', usual);
    const car = fields.measured(`car.${key}`, 'kg', usual);
    const begun = empty !== undefined || car !== undefined;
    if (begun && fields.text(`shown.${key}`) === undefined) fields.half.push(`shown.${key}`);
    if (shown === undefined) return [];
    return [
      { wheel, shown, ...(empty === undefined ? {} : { empty }), ...(car === undefined ? {} : { car }) },
    ];
  });
  if (pads.length === 0) return undefined;
  if (known === undefined) {
    if (fields.text('known') === undefined) fields.missing.push('known');
    return undefined;
  }
  return { known, pads };
}

function levelsAsked(fields: GaugeFields): GaugeAsks['levels'] | undefined {
  const usual = fields.spread('water', 'm') ?? USUALLY_READ.water;
  const pads = AT_WHEELS.flatMap(([key, wheel]) => {
    const down = fields.measured(`down.${key}`, 'm', usual);
    return down === undefined ? [] : [{ wheel, down }];
  });
  return pads.length < 2 ? undefined : { pads };
}

function weighingAsked(fields: GaugeFields, sheets: readonly string[]): WeighingAsked {
  const sheet = fields.text('sheet');
  if (sheet !== undefined && !sheets.includes(sheet))
    fields.refuse('sheet', 'sheet', `"${sheet}" is not in the file; it has: ${sheets.join(', ') || 'none'}`);
  const keys = ['frontRaised', 'lift'] as const;
  const there = keys.filter((key) => fields.text(key) !== undefined);
  if (there.length === 1) fields.half.push(...keys.filter((key) => !there.includes(key)));
  const front = fields.measured('frontRaised', 'kg', 0);
  const lift = fields.measured('lift', 'm', 0);
  if (lift !== undefined && lift.value < LEAST_LIFT) {
    const why = `"${fields.text('lift')}" is too little to tell a height; raise the axle by 250 mm or more`;
    fields.refuse('lift', 'lift', why);
  }
  return {
    ...(sheet === undefined ? {} : { sheet }),
    ...(front === undefined || lift === undefined ? {} : { raised: { front, lift } }),
  };
}

/** Heights of the pads as the file has them, beside which those of the water level are put. */
function padsOfFile({ form }: Car): Readonly<Record<string, number>> {
  const pads = Object.entries(form.floor?.patch?.pads ?? {});
  return Object.fromEntries(pads.flatMap(([key, pad]) => (pad === undefined ? [] : [[key, pad.value]])));
}

/** @param working  name of a figure whose working is wanted, where it has one */
export function gaugeAnswer(car: Car, { name, asked }: GaugeQuestion, working?: string): GaugeAnswer {
  switch (name) {
    case 'strings':
      return alignment(car, asked);
    case 'bump-steer':
      return bumpSteerRead(car, asked);
    case 'scales':
      return scalesChecked(asked);
    case 'levels':
      return levelsOfPads({ ...asked, filed: padsOfFile(car) });
    case 'weighing':
      return weighing(car, working === undefined ? asked : { ...asked, working });
  }
}

/** An amount with the unit that stands beside its field, where none was typed: `151.2 ± 0.2` into `151.2 mm ± 0.2 mm`. */
export function withUnit(text: string, unit: string): string {
  const parts = text.split(/±|\+\/-/).map((part) => part.trim());
  const whole = parts.map((part) =>
    /^[-+−]?(\d+\.?\d*|\.\d+|(\d+[ -])?\d+\/\d+)$/.test(part) ? `${part} ${unit}` : part,
  );
  return whole.join(' ± ');
}

/** The same the other way, for a field beside which the unit stands; what is in any other unit keeps its own. */
export function withoutUnit(text: string, unit: string): string {
  const bare = text.replaceAll(` ${unit}`, '');
  return withUnit(bare, unit) === text ? bare : text;
}
