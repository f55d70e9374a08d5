/** What is read by hand beside the sheet: strings, plates, the bump-steer gauge, scales, levels, the car weighed. */
import { type GaugeName, MOST_ROWS, USUALLY_READ } from '../../questions/index.ts';
import type { Field, FieldGroup, FieldTable } from '../asked/fields.ts';
import { type PadStop, WHEEL_KEYS, WHEEL_WORDS } from '../patch/words.ts';

/** Plates are asked as strings are, and typed on a card of their own. */
export type PageGauge = GaugeName | 'plates';

/** At which stop each is read: the pads are levelled before heights are, and scales tried before weights. */
export const GAUGES_AT: Readonly<Record<PadStop, readonly PageGauge[]>> = {
  pressures: [],
  heights: ['levels'],
  weights: ['scales', 'weighing'],
  angles: ['strings', 'plates', 'bump-steer'],
  changes: [],
};

interface Words {
  /** Among the choices of the card. */
  readonly name: string;
  readonly title: string;
  readonly is: string;
  readonly asks: GaugeName;
  /** Where nothing can be worked out yet. */
  readonly first: string;
}

export const GAUGE_WORDS: Readonly<Record<PageGauge, Words>> = {
  strings: {
    name: 'strings',
    title: 'Toe by strings',
    is: 'A string along each side, outside the wheels: by rule from string to rim, at its front and its rear edge.',
    asks: 'strings',
    first: 'Type the two distances of one rim, or of all four.',
  },
  plates: {
    name: 'plates',
    title: 'Toe by plates',
    is: 'Plates held against both wheels of an axle: the tape across in front of the wheels, and behind them.',
    asks: 'strings',
    first: 'Type what the tape reads in front of an axle and behind it.',
  },
  'bump-steer': {
    name: 'bump steer',
    title: 'Bump steer by the gauge',
    is: 'A plate at the wheel and two feelers outboard of it, read over the travel, beside what the points of the file make of it.',
    asks: 'bump-steer',
    first: 'Type a row standing, and one up or down.',
  },
  scales: {
    name: 'scales',
    title: 'Scales under a known mass',
    is: 'One known mass on each pad in turn: what each shows over what is true, and the weights of the wheels put right by it.',
    asks: 'scales',
    first: 'Type the known mass, and what one pad shows under it.',
  },
  weighing: {
    name: 'centre of gravity',
    title: 'Centre of gravity',
    is: 'Where it is by the four pads; with the rear axle raised on its pads, how high.',
    asks: 'weighing',
    first: 'Choose whose pads are meant.',
  },
  levels: {
    name: 'levels',
    title: 'Levels of the pads',
    is: 'A water level: from the surface of the water down to each pad. More is lower.',
    asks: 'levels',
    first: 'Type the readings of two pads, or of all four.',
  },
};

const LENGTH = ['mm', 'in'] as const;
const MASS = ['kg', 'lb'] as const;

const atWheels = (...keys: readonly string[]): FieldTable['rows'] =>
  WHEEL_KEYS.map((wheel) => ({
    name: WHEEL_WORDS[wheel],
    keys: keys.map((key) => key.replace('*', wheel)),
  }));

const frontRear = (key: string): readonly string[] => [`${key}.front`, `${key}.rear`];

/** The ± of all readings of a kind, else as usual. */
const spread = (key: keyof typeof USUALLY_READ, name: string, such: string): Field => {
  const usual = USUALLY_READ[key];
  return {
    key,
    name: `± of ${name}`,
    usual: key === 'pad' ? `${usual} kg` : `${Number((1000 * usual).toPrecision(3))} mm`,
    such,
    units: key === 'pad' ? MASS : LENGTH,
  };
};

const ACROSS = (name: string): Field => ({
  key: 'across',
  name,
  usual: 'rim of the file',
  such: '330 mm',
  units: LENGTH,
});
const TAPE = spread('tape', 'the tape', '1 mm');
const RULE = spread('rule', 'the rule', '0.2 mm');

export const GAUGE_FIELDS: Readonly<Record<PageGauge, readonly FieldGroup[]>> = {
  strings: [
    {
      caption: 'From string to rim',
      columns: ['front edge', 'rear edge'],
      rows: atWheels('rim.*.front', 'rim.*.rear'),
      units: LENGTH,
      such: ['151.2 mm', '152.0 mm'],
    },
    {
      title: 'Where the strings are',
      caption: 'From centre plane to string',
      columns: ['front axle', 'rear axle'],
      rows: [
        { name: 'left', keys: frontRear('string.left') },
        { name: 'right', keys: frontRear('string.right') },
      ],
      units: LENGTH,
      such: ['905 mm', '904 mm'],
    },
    {
      title: 'Rim, rule and tape',
      fields: [ACROSS('between the two places on the rim'), RULE, TAPE],
    },
  ],
  plates: [
    {
      caption: 'Tape from plate to plate',
      columns: ['in front', 'behind'],
      rows: [
        { name: 'front axle', keys: frontRear('plates.front') },
        { name: 'rear axle', keys: frontRear('plates.rear') },
      ],
      units: LENGTH,
      such: ['1503.0 mm', '1501.5 mm'],
    },
    { fields: [ACROSS('between the two places of the tape'), TAPE] },
  ],
  'bump-steer': [
    {
      fields: [
        { key: 'wheel', name: 'wheel', usual: 'front left', of: Object.values(WHEEL_WORDS) },
        { key: 'apart', name: 'between the two feelers', such: '280 mm', units: LENGTH },
      ],
    },
    {
      caption: 'Travel, bump positive, and feelers that grow as the plate comes nearer',
      columns: ['travel', 'front', 'rear'],
      rows: Array.from({ length: MOST_ROWS }, (_, k) => ({
        name: `row ${k + 1}`,
        keys: ['travel', 'front', 'rear'].map((each) => `row.${k + 1}.${each}`),
      })),
      units: LENGTH,
      such: ['20 mm', '9.86 mm', '10.00 mm'],
      signed: [0, 1, 2],
      first: 5,
    },
    { title: 'How well they read', fields: [spread('feeler', 'a feeler', '0.03 mm')] },
  ],
  scales: [
    {
      caption: 'The known mass',
      columns: ['mass', '±'],
      rows: [{ name: 'known', keys: ['known', 'known.u'] }],
      units: MASS,
      such: ['20 kg', '0.01 kg'],
    },
    {
      caption: 'What each pad shows',
      columns: ['known mass on', 'empty', 'under the car'],
      rows: atWheels('shown.*', 'empty.*', 'car.*'),
      units: MASS,
      such: ['20.1 kg', '0.0 kg', '131.4 kg'],
      signed: [1],
    },
    { title: 'How well they read', fields: [spread('pad', 'a pad', '0.2 kg')] },
  ],
  weighing: [
    {
      fields: [
        { key: 'sheet', name: 'pads of', usual: 'the scales of the survey', of: 'sheets', long: true },
      ],
    },
    {
      title: 'Rear axle raised, for the height',
      fields: [
        { key: 'frontRaised', name: 'both front pads then', such: '283.4 kg', units: MASS },
        { key: 'frontRaised.u', name: '± of it', usual: 'none', such: '0.3 kg', units: MASS },
        { key: 'lift', name: 'rear pads raised by', such: '400 mm', units: LENGTH },
        { key: 'lift.u', name: '± of the lift', usual: 'none', such: '1 mm', units: LENGTH },
      ],
    },
  ],
  levels: [
    {
      caption: 'From the water down to the pad',
      columns: ['down'],
      rows: atWheels('down.*'),
      units: LENGTH,
      such: ['212.0 mm'],
    },
    { title: 'How well it reads', fields: [spread('water', 'the water level', '0.2 mm')] },
  ],
};
