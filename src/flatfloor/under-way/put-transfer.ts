/**
 * Figures of load transfer: what each axle and tyre gains and loses, through what, and how the body leans.
 *
 * In    the car, what it is doing
 * Out   figures of the tyres, the axles, the car
 *
 * UW-n are the equations of docs/theory/under-way.md.
 */
import type { CarForm } from '../../car/read.ts';
import { asSurveyed } from '../../loadpath/loads/as-surveyed.ts';
import { type CarStanding, carStanding } from '../../loadpath/loads/car-equilibrium.ts';
import {
  airOf,
  type Doing,
  eachWheel,
  endOf,
  STANDING,
  sideOf,
  WHEEL_NAMES,
  type Wheels,
} from '../../loadpath/loads/doing.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import { type Radian, STANDARD_GRAVITY } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type FloorNote, type PutFloor, recordedFloor } from '../floor-figure.ts';
import { WHEEL_WORDS } from '../reading-words.ts';
import { type CarriedOn, doingWith } from './carried.ts';
import { handbookTransfer, longitudinalTransfer } from './handbook.ts';
import { type LoadParts, loadParts } from './parts.ts';

const balance = { method: 'equilibrium of the whole car', source: 'LL-9' } as const;
const work = { method: 'virtual work at each wheel, taken apart', source: 'UW-7' } as const;

const newtons = (id: string, means: string, symbol: string, more: Partial<FloorNote> = {}): FloorNote => ({
  id,
  means,
  symbol,
  unit: 'N',
  ...more,
});

const PARTS = ['load', 'springs', 'links', 'unsprung'] as const;
type Part = (typeof PARTS)[number];

const THROUGH: Readonly<Record<Part, readonly [id: string, words: string, mark: string]>> = {
  load: ['', '', ''],
  springs: ['BySprings', 'of it by springs and bar', 's'],
  links: ['ByLinks', 'of it through the links', 'l'],
  unsprung: ['ByUnsprung', 'of it by the unsprung parts', 'u'],
};

const LATERAL = Object.fromEntries(
  PARTS.map((part) => {
    const [id, words, mark] = THROUGH[part];
    const symbol = `ΔF${mark === '' ? '' : `_${mark}`}`;
    const means = part === 'load' ? 'lateral transfer, gained by the right tyre' : words;
    return [
      part,
      {
        note: newtons(`lateral${id}`, means, symbol),
        of: formula({
          symbol,
          means,
          is: '((F_r - F_l) - (F_r0 - F_l0))/2',
          unit: 'N',
          terms: {
            F_r: { unit: 'N', means: 'right tyre' },
            F_l: { unit: 'N', means: 'left tyre' },
            F_r0: { unit: 'N', means: 'right tyre at rest' },
            F_l0: { unit: 'N', means: 'left tyre at rest' },
          },
          source: part === 'load' ? 'UW-6' : 'UW-7',
        }),
      },
    ] as const;
  }),
);

const AXLE = Object.fromEntries(
  PARTS.map((part) => {
    const [id, words, mark] = THROUGH[part];
    const symbol = `ΔA${mark === '' ? '' : `_${mark}`}`;
    const means = part === 'load' ? 'gained by the axle' : words;
    return [
      part,
      {
        note: newtons(`axle${id}`, means, symbol),
        of: formula({
          symbol,
          means,
          is: 'F_l + F_r - F_l0 - F_r0',
          unit: 'N',
          terms: {
            F_r: { unit: 'N', means: 'right tyre' },
            F_l: { unit: 'N', means: 'left tyre' },
            F_r0: { unit: 'N', means: 'right tyre at rest' },
            F_l0: { unit: 'N', means: 'left tyre at rest' },
          },
          source: part === 'load' ? 'UW-6' : 'UW-7',
        }),
      },
    ] as const;
  }),
);

const NOTES = {
  load: newtons('tyreLoad', 'load on the ground', 'F_z', balance),
  travel: { id: 'travel', means: 'travel, bump positive', symbol: 'z', unit: 'm', ...balance },
  share: {
    id: 'lateralShare',
    means: 'share of the lateral transfer of both axles',
    symbol: 'χ_F',
    unit: 'share',
  },
  unsprung: newtons('handbookUnsprung', 'handbook: of the unsprung mass', 'ΔF_u'),
  links: newtons('handbookLinks', 'handbook: through the roll centre', 'ΔF_g'),
  springs: newtons('handbookSprings', 'handbook: by roll, tyres in series', 'ΔF_e'),
  total: newtons('handbookLateral', 'handbook: lateral transfer', 'ΔF_h'),
  roll: {
    id: 'roll',
    means: 'roll, right side down positive',
    symbol: 'φ_c',
    unit: 'rad',
  },
  pitch: { id: 'pitch', means: 'pitch, nose down positive', symbol: 'θ', unit: 'rad' },
  rollHandbook: { id: 'handbookRoll', means: 'handbook: roll', symbol: 'φ', unit: 'rad' },
  byCouples: {
    id: 'rollByCouples',
    means: 'more, by unsprung couples that links hand to the tub',
    symbol: 'φ_m',
    unit: 'rad',
  },
  byTyres: {
    id: 'rollByTyres',
    means: 'more, by tyres under what does not pass the springs',
    symbol: 'φ_y',
    unit: 'rad',
  },
  rollLinked: { id: 'linkedRoll', means: 'handbook with these: roll', symbol: 'φ_l', unit: 'rad' },
  linked: newtons('linkedLateral', 'handbook with links: lateral transfer', 'ΔF_l'),
  longitudinal: newtons('handbookLongitudinal', 'handbook: goes from front axle to rear', 'ΔF_x', {
    say: 'without downforce',
  }),
  gradient: {
    id: 'rollGradient',
    means: 'roll for 1 g',
    symbol: 'φ_g',
    unit: 'rad',
  },
} as const satisfies Readonly<Record<string, FloorNote>>;

const rollOf = formula({
  symbol: 'φ_c',
  means: 'roll of the body against the ground',
  is: '-atan(c)',
  unit: 'rad',
  terms: { c: { unit: '1', means: 'rise of the ground to the left, as the tub sees it' } },
  source: 'UW-8',
});

const pitchOf = formula({
  symbol: 'θ',
  means: 'pitch of the body against the ground',
  is: 'atan(b)',
  unit: 'rad',
  terms: { b: { unit: '1', means: 'rise of the ground forward, as the tub sees it' } },
  source: 'UW-8',
});

const gradientOf = formula({
  symbol: 'φ_g',
  means: 'roll for 1 g',
  is: '(φ_c - φ_r)*g_0/a_y',
  unit: 'rad',
  terms: {
    φ_c: { unit: 'rad', means: 'roll of the body' },
    φ_r: { unit: 'rad', means: 'roll of the body at rest: a wound bar may lean it' },
    g_0: { unit: 'm/s^2', means: 'acceleration of free fall' },
    a_y: { unit: 'm/s^2', means: 'lateral acceleration' },
  },
  source: 'UW-4',
  holds: 'as a mean from rest to here: springs and stops are not straight',
});

const shareOf = formula({
  symbol: 'χ_F',
  means: 'share of the lateral transfer of both axles',
  is: 'ΔF/(ΔF + ΔF_o)',
  unit: '1',
  terms: {
    ΔF: { unit: 'N', means: 'lateral transfer of this axle' },
    ΔF_o: { unit: 'N', means: 'lateral transfer of the other' },
  },
  source: 'UW-6',
});

/** Attitude of the body to the ground, from the ground as the tub sees it. */
export function putAttitude(
  of: string,
  { ground }: CarStanding,
  put: PutFloor,
  working?: Working,
): { readonly roll: Radian; readonly pitch: Radian } {
  for (const [symbol, means, value] of [
    ['c', 'rise of the ground to the left, as the tub sees it', ground.perLeft],
    ['b', 'rise of the ground forward, as the tub sees it', ground.perForward],
  ] as const) {
    working?.add({ kind: 'solved', symbol, means, value, unit: '1', terms: [], ...balance });
  }
  const roll = rollOf({ c: ground.perLeft }, working);
  const pitch = pitchOf({ b: ground.perForward }, working);
  put(of, NOTES.roll, roll);
  put(of, NOTES.pitch, pitch);
  return { roll, pitch };
}

export function putTransfer(
  car: CarForm,
  asked: Doing,
  carried: CarriedOn | undefined,
  numbers: Numbers,
  putting: PutFloor,
  working?: Working,
): void {
  const put = recordedFloor(putting, working);
  const doing = doingWith(asked, carried, numbers);
  const rest = doingWith({ ...STANDING, rack: asked.rack }, carried, numbers);
  const standing = carStanding(car, doing, numbers);
  const resting = carStanding(car, rest, numbers);
  const now = loadParts(car, standing, numbers);
  const before = loadParts(car, resting, numbers);
  for (const wheel of WHEEL_NAMES) {
    put(WHEEL_WORDS[wheel], NOTES.load, now[wheel].load);
    put(WHEEL_WORDS[wheel], NOTES.travel, standing.wheels[wheel].travel);
  }
  const turns = asked.lateral !== 0;
  const transfers = eachWheel((wheel) => now[wheel].load - before[wheel].load);
  const lateralOf = (end: 'front' | 'rear'): number =>
    (transfers[`${end}Right`] - transfers[`${end}Left`]) / 2;
  for (const end of ['front', 'rear'] as const) {
    for (const part of PARTS)
      put(end, AXLE[part]!.note, AXLE[part]!.of(terms(end, part, now, before, working), working));
    if (!turns) continue;
    for (const part of PARTS) {
      put(end, LATERAL[part]!.note, LATERAL[part]!.of(terms(end, part, now, before, working), working));
    }
    const other = end === 'front' ? 'rear' : 'front';
    const ΔF = LATERAL.load!.of(terms(end, 'load', now, before, working), working);
    put(end, NOTES.share, shareOf({ ΔF, ΔF_o: lateralOf(other) }, working));
  }
  const { roll } = putAttitude('car', standing, put, working);
  if (asked.longitudinal !== 0 || asked.speed > 0) {
    put('car', NOTES.longitudinal, alongOf(car, asked, numbers, working));
  }
  if (!turns) return;
  put(
    'car',
    NOTES.gradient,
    gradientOf(
      { φ_c: roll, φ_r: -Math.atan(resting.ground.perLeft), g_0: STANDARD_GRAVITY, a_y: asked.lateral },
      working,
      ASKED,
    ),
  );
  handbookTransfer(
    car,
    asked.lateral,
    numbers,
    {
      roll: (φ) => put('car', NOTES.rollHandbook, φ),
      axle: (end, { unsprung, links, springs, total }) => {
        put(end, NOTES.unsprung, unsprung);
        put(end, NOTES.links, links);
        put(end, NOTES.springs, springs);
        put(end, NOTES.total, total);
      },
      linked: (which, value) => {
        const [of, note] = LINKED[which];
        put(of, note, value);
      },
    },
    working,
  );
}

const LINKED = {
  byCouples: ['car', NOTES.byCouples],
  byTyres: ['car', NOTES.byTyres],
  roll: ['car', NOTES.rollLinked],
  front: ['front', NOTES.linked],
  rear: ['rear', NOTES.linked],
} as const;

function alongOf(car: CarForm, asked: Doing, numbers: Numbers, working?: Working): number {
  const { contacts } = asSurveyed(car, numbers);
  const x = (end: 'front' | 'rear'): number => (contacts[`${end}Left`][0] + contacts[`${end}Right`][0]) / 2;
  const air = airOf(car, asked.speed, numbers);
  const height = car.body!.centreOfGravityHeight;
  const m = WHEEL_NAMES.reduce((sum, wheel) => sum + numbers.of(car[endOf(wheel)][sideOf(wheel)].scale), 0);
  const terms = {
    m,
    a_x: asked.longitudinal,
    h: numbers.of(height),
    D: air.drag,
    h_D: air.dragHeight,
    L: x('front') - x('rear'),
  };
  return longitudinalTransfer(terms, working, {
    m: { kind: 'constant', what: 'the four wheel scales' },
    a_x: { kind: 'asked', what: 'longitudinal acceleration' },
    h: fromReading(height),
  });
}

const ASKED = {
  a_y: { kind: 'asked', what: 'lateral acceleration' },
  g_0: { kind: 'constant', what: 'standard' },
  φ_r: { kind: 'constant', what: 'equilibrium of the whole car at rest' },
} as const;

/** The four terms of a part, written down as what they are solved from. */
function terms(
  end: 'front' | 'rear',
  part: Part,
  now: Wheels<LoadParts>,
  before: Wheels<LoadParts>,
  working?: Working,
) {
  const found = {
    F_r: now[`${end}Right`][part],
    F_l: now[`${end}Left`][part],
    F_r0: before[`${end}Right`][part],
    F_l0: before[`${end}Left`][part],
  };
  const how = part === 'load' ? balance : work;
  for (const [symbol, value] of Object.entries(found)) {
    const means = `${symbol.includes('r') ? 'right' : 'left'} tyre${symbol.endsWith('0') ? ' at rest' : ''}`;
    working?.add({ kind: 'solved', symbol, means, value, unit: 'N', terms: [], ...how });
  }
  return found;
}
