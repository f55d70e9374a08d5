/**
 * Figures of the whole car on its springs and tyres: roll, bounce and pitch.
 *
 * The body moves on four ride rates; unsprung masses are taken as standing still against it, which holds while
 * the wheels hop at three times its frequency or more. Bounce and pitch are solved as the pair they are.
 */
import type { CarForm } from '../../car/read.ts';
import type { Working } from '../../working/working.ts';
import { formula } from '../../working/working.ts';
import { rollCentre } from '../axle/roll-centre.ts';
import { type AxleState, axleState } from '../axle-of-car.ts';
import { attitudeOf } from '../corner/attitude.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { stiffnessAtWheels } from './axle-stiffness.ts';
import { noteSolved, notesOf, type Put, recorded } from './note.ts';

const tyre = notesOf('tyre');
const PAIR = { method: 'the two frequencies of body heave and pitch together', source: 'LP-57' } as const;

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
const rollFrequency = tyre({
  id: 'rollFrequency',
  means: 'frequency in roll',
  symbol: 'f_φ',
  unit: 'Hz',
  rank: 1,
});
const lowMode = tyre({
  id: 'bounceFrequency',
  means: 'lower frequency of bounce and pitch',
  symbol: 'f_1',
  unit: 'Hz',
  rank: 1,
  ...PAIR,
});
const highMode = tyre({
  id: 'pitchFrequency',
  means: 'higher frequency of bounce and pitch',
  symbol: 'f_2',
  unit: 'Hz',
  rank: 1,
  ...PAIR,
});
const lowNode = tyre({
  id: 'bounceNode',
  means: 'point that stands still in the lower mode, ahead of the centre of gravity',
  symbol: 'x_1',
  unit: 'm',
  rank: 3,
  ...PAIR,
});
const highNode = tyre({
  id: 'pitchNode',
  means: 'point that stands still in the higher mode, ahead of the centre of gravity',
  symbol: 'x_2',
  unit: 'm',
  rank: 3,
  ...PAIR,
});

const rollHertz = formula({
  symbol: 'f_φ',
  means: 'frequency in roll',
  is: 'sqrt((K_φ1 + K_φ2 - m_s*g*h)/(I_x + m_s*h^2))/(2*π)',
  unit: 'Hz',
  terms: {
    K_φ1: { unit: 'N m/rad', means: 'front roll rate, tyres in series' },
    K_φ2: { unit: 'N m/rad', means: 'rear roll rate, tyres in series' },
    m_s: { unit: 'kg', means: 'sprung mass' },
    g: { unit: 'm/s^2', means: 'standard acceleration of free fall' },
    h: { unit: 'm', means: 'centre of gravity above the roll axis' },
    I_x: { unit: 'kg m^2', means: 'moment of inertia in roll' },
  },
  source: 'LP-58',
  holds:
    'for small roll about the roll axis, with the centre of gravity of the whole car taken for that of the sprung mass',
});

export interface BouncePitch {
  /** Mass on the springs, kg; moment of inertia in pitch, kg m². */
  readonly mass: number;
  readonly inertia: number;
  /** Ride rate of each axle (both wheels), N/m; its distance from the centre of gravity, m, both positive. */
  readonly front: { readonly rate: number; readonly distance: number };
  readonly rear: { readonly rate: number; readonly distance: number };
}

/** One mode: its frequency in rad/s, and the still point, metres ahead of the centre of gravity. */
export interface Mode {
  readonly omega: number;
  readonly node: number;
}

/**
 * The two modes of a body on two springs.  [LP-57]
 *
 * m z″ + (k_f + k_r) z − (k_f a − k_r b) θ = 0, I θ″ − (k_f a − k_r b) z + (k_f a² + k_r b²) θ = 0,
 * θ nose down positive, so that the front drops by a θ.
 */
export function bouncePitchModes(of: BouncePitch): readonly [Mode, Mode] {
  const { mass, inertia, front, rear } = of;
  const heave = (front.rate + rear.rate) / mass;
  const coupling = front.rate * front.distance - rear.rate * rear.distance;
  const pitch = (front.rate * front.distance ** 2 + rear.rate * rear.distance ** 2) / inertia;
  const middle = (heave + pitch) / 2;
  const apart = Math.sqrt(((heave - pitch) / 2) ** 2 + coupling ** 2 / (mass * inertia));
  const mode = (square: number): Mode => ({
    omega: Math.sqrt(square),
    // in the mode (heave − ω²) m z = c θ; a point x ahead moves by z − x θ, and stands still at x = z/θ
    node:
      coupling === 0
        ? Math.sign(square - pitch) * Number.POSITIVE_INFINITY
        : coupling / (mass * (heave - square)),
  });
  return [mode(middle - apart), mode(middle + apart)];
}

const mean = (a: number, b: number): number => (a + b) / 2;

/** Roll rate and ride rate of an axle with its tyres in series. */
function atGround(state: AxleState, numbers: Numbers): { readonly roll: number; readonly heave: number } {
  const { left, right } = state;
  const K = stiffnessAtWheels(state);
  const t = attitudeOf(left.state).halfTrack.value + attitudeOf(right.state).halfTrack.value;
  const tyres = numbers.of(left.of.form.wheel.tyreRate) + numbers.of(right.of.form.wheel.tyreRate);
  const inSeries = (a: number, b: number): number => (a * b) / (a + b);
  return {
    roll: inSeries((t * t * (K.leftLeft - 2 * K.leftRight + K.rightRight)) / 4, (t * t * tyres) / 4),
    heave: inSeries(K.leftLeft + 2 * K.leftRight + K.rightRight, tyres),
  };
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
  const { body } = form;
  if (body === undefined) return;
  const a = (L * sprungRear) / m_s;
  const heights = [front, rear].map(({ left, right }) => rollCentre(left.state, right.state).forceHeight);
  const axisHeight = heights[0]! + ((heights[1]! - heights[0]!) * a) / L;
  if (body.rollInertia !== undefined) {
    const [K_φ1, K_φ2] = [ground.front.roll, ground.rear.roll];
    const h = numbers.of(body.centreOfGravityHeight) - axisHeight;
    noteSolved(working, 'as the roll rate at the ground of its axle', 'LP-54', [
      { symbol: 'K_φ1', means: 'front roll rate, tyres in series', value: K_φ1, unit: 'N m/rad' },
      { symbol: 'K_φ2', means: 'rear roll rate, tyres in series', value: K_φ2, unit: 'N m/rad' },
    ]);
    noteSolved(working, 'its height less that of the roll axis, through the force-based heights', 'LP-58', [
      { symbol: 'h', means: 'centre of gravity above the roll axis', value: h, unit: 'm' },
    ]);
    put(
      rollFrequency,
      rollHertz(
        {
          K_φ1,
          K_φ2,
          m_s,
          g: 9.80665,
          h,
          I_x: numbers.of(body.rollInertia),
        },
        working,
        {
          I_x: fromReading(body.rollInertia),
          g: { kind: 'constant', what: 'standard acceleration of free fall' },
        },
      ),
    );
  }
  if (body.pitchInertia === undefined) return;
  const [low, high] = bouncePitchModes({
    mass: m_s,
    inertia: numbers.of(body.pitchInertia),
    front: { rate: ground.front.heave, distance: a },
    rear: { rate: ground.rear.heave, distance: L - a },
  });
  put(lowMode, low.omega / (2 * Math.PI));
  put(highMode, high.omega / (2 * Math.PI));
  put(lowNode, low.node);
  put(highNode, high.node);
}
