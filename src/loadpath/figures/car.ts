/** Figures of the whole car as surveyed: masses, wheelbase, share of the roll rate, and the modes of its body. */
import type { CarForm } from '../../car/read.ts';
import type { Working } from '../../working/working.ts';
import { type AxleState, axleState } from '../axle-of-car.ts';
import { attitudeOf } from '../corner/attitude.ts';
import type { Numbers } from '../numbers.ts';
import { stiffnessAtWheels } from './axle-stiffness.ts';
import { type AtGround, putBodyModes } from './body-modes.ts';
import { notesOf, type Put, recorded } from './note.ts';

const tyre = notesOf('tyre');
const wheelbase = tyre({
  id: 'wheelbase',
  means: 'wheelbase, mean of left and right',
  symbol: 'L',
  unit: 'm',
  rank: 2,
  method: 'wheel centres as surveyed',
  source: 'LP-56',
});
const frontShare = tyre({
  id: 'frontMassShare',
  means: 'share of the mass on the front axle',
  symbol: 'w_f',
  unit: 'share',
  rank: 2,
  method: 'wheel scales',
  source: 'LP-56',
});
const totalMass = tyre({
  id: 'totalMass',
  means: 'mass of the car on the four scales',
  symbol: 'm_t',
  unit: 'kg',
  rank: 2,
  method: 'sum of the wheel scales',
  source: 'LP-56',
});
const axleMass = {
  front: tyre({
    id: 'frontAxleMass',
    means: 'mass on the front axle',
    symbol: 'm_1',
    unit: 'kg',
    rank: 2,
    method: 'sum of the two wheel scales',
    source: 'LP-56',
  }),
  rear: tyre({
    id: 'rearAxleMass',
    means: 'mass on the rear axle',
    symbol: 'm_2',
    unit: 'kg',
    rank: 2,
    method: 'sum of the two wheel scales',
    source: 'LP-56',
  }),
} as const;
const sprungMass = tyre({
  id: 'sprungMass',
  means: 'sprung mass',
  symbol: 'm_s',
  unit: 'kg',
  rank: 2,
  method: 'wheel scales less the unsprung masses',
  source: 'LP-40',
});
const rollShare = tyre({
  id: 'frontRollShare',
  means: 'front share of the roll rate, tyres in series',
  symbol: 'χ',
  unit: 'share',
  rank: 1,
  method: 'front roll rate over the sum of both',
  source: 'LP-54',
});
const mean = (a: number, b: number): number => (a + b) / 2;

/** Roll rate and ride rate of an axle with its tyres in series. */
function atGround(state: AxleState, numbers: Numbers): AtGround {
  const { left, right } = state;
  const K = stiffnessAtWheels(state);
  const t = attitudeOf(left.state).halfTrack.value + attitudeOf(right.state).halfTrack.value;
  const tyres = numbers.of(left.of.form.wheel.tyreRate) + numbers.of(right.of.form.wheel.tyreRate);
  const roll = (t * t * (K.leftLeft - 2 * K.leftRight + K.rightRight)) / 4;
  const heave = K.leftLeft + 2 * K.leftRight + K.rightRight;
  const [rollPart, heavePart] = [(t * t * tyres) / 4 / (roll + (t * t * tyres) / 4), tyres / (heave + tyres)];
  return { roll: roll * rollPart, heave: heave * heavePart, rollPart, heavePart, track: t };
}

const LEVEL = { left: 0, right: 0, rack: 0 } as const;

/** Puts the figures of the whole car as surveyed. @throws Unreachable, DegenerateCorner, BarOpen */
export function putCarFigures(form: CarForm, numbers: Numbers, putting: Put, working?: Working): void {
  const put = working === undefined ? putting : recorded(putting, working);
  const front = axleState(form.front, LEVEL, numbers);
  const rear = axleState(form.rear, LEVEL, numbers);
  const x = (end: 'front' | 'rear'): number =>
    mean(
      numbers.point(form[end].left.points.wheelCentre)[0],
      numbers.point(form[end].right.points.wheelCentre)[0],
    );
  const on = (end: 'front' | 'rear', what: 'scale' | 'unsprung'): number =>
    numbers.of(form[end].left[what]) + numbers.of(form[end].right[what]);
  const L = x('front') - x('rear');
  const total = on('front', 'scale') + on('rear', 'scale');
  const sprungFront = on('front', 'scale') - on('front', 'unsprung');
  const sprungRear = on('rear', 'scale') - on('rear', 'unsprung');
  const m_s = sprungFront + sprungRear;
  put(wheelbase, L);
  put(totalMass, total);
  put(axleMass.front, on('front', 'scale'));
  put(axleMass.rear, on('rear', 'scale'));
  put(sprungMass, m_s);
  put(frontShare, on('front', 'scale') / total);
  const ground = { front: atGround(front, numbers), rear: atGround(rear, numbers) };
  put(rollShare, ground.front.roll / (ground.front.roll + ground.rear.roll));
  const a = (L * sprungRear) / m_s;
  putBodyModes(form, { front, rear }, ground, { a, b: L - a, mass: m_s }, numbers, put, working);
}
