/**
 * The body on its springs and tyres: roll, bounce and pitch, with their damping.
 *
 * The body moves on four ride rates; unsprung masses are taken as standing still against it, which holds while
 * the wheels hop at three times its frequency or more. Bounce and pitch are solved as the pair they are.
 */
import type { CarForm } from '../../car/read.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { bouncePitchModes } from '../axle/bounce-pitch.ts';
import { rollCentre } from '../axle/roll-centre.ts';
import type { AxleState } from '../axle-of-car.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { type Damped, putModeDamping, putRollDamping } from './car-damping.ts';
import { axleDamping } from './damper-slopes.ts';
import { noteSolved, notesOf, type Put } from './note.ts';

const tyre = notesOf('tyre');
const PAIR = { method: 'the two frequencies of body heave and pitch together', source: 'LP-57' } as const;

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

/** An axle with its tyres in series, at the ground. */
export interface AtGround {
  readonly roll: number;
  readonly heave: number;
  /** Parts of the movement that the springing sees; the tyres take the rest. */
  readonly rollPart: number;
  readonly heavePart: number;
  readonly track: number;
}

interface BothAxles<T> {
  readonly front: T;
  readonly rear: T;
}

/** The sprung mass and where it stands between the axles. */
interface SprungBody {
  readonly a: number;
  readonly b: number;
  readonly mass: number;
}

/** Puts what the file gives the inertias for; without a height of the centre of gravity nothing. */
export function putBodyModes(
  form: CarForm,
  axles: BothAxles<AxleState>,
  ground: BothAxles<AtGround>,
  sprung: SprungBody,
  numbers: Numbers,
  put: Put,
  working?: Working,
): void {
  const { body } = form;
  if (body === undefined) return;
  const damped = dampedAxles(axles, ground, numbers);
  if (body.rollInertia !== undefined) {
    const roll = putRoll(
      body.rollInertia,
      numbers.of(body.centreOfGravityHeight),
      axles,
      ground,
      sprung,
      numbers,
      put,
      working,
    );
    if (damped !== undefined) putRollDamping(damped, roll, put, working);
  }
  if (body.pitchInertia === undefined) return;
  const inertia = numbers.of(body.pitchInertia);
  const modes = bouncePitchModes({
    mass: sprung.mass,
    inertia,
    front: { rate: ground.front.heave, distance: sprung.a },
    rear: { rate: ground.rear.heave, distance: sprung.b },
  });
  const [low, high] = modes;
  put(lowMode, low.omega / (2 * Math.PI));
  put(highMode, high.omega / (2 * Math.PI));
  put(lowNode, low.node);
  put(highNode, high.node);
  if (damped !== undefined) putModeDamping(damped, { ...sprung, inertia }, modes, put, working);
}

function dampedAxles(
  axles: BothAxles<AxleState>,
  ground: BothAxles<AtGround>,
  numbers: Numbers,
): Damped | undefined {
  const front = axleDamping(axles.front, numbers);
  const rear = axleDamping(axles.rear, numbers);
  if (front === undefined || rear === undefined) return undefined;
  return { front: { ...ground.front, damping: front }, rear: { ...ground.rear, damping: rear } };
}

type Inertia = NonNullable<NonNullable<CarForm['body']>['rollInertia']>;

function putRoll(
  rollInertia: Inertia,
  height: number,
  axles: BothAxles<AxleState>,
  ground: BothAxles<AtGround>,
  sprung: SprungBody,
  numbers: Numbers,
  put: Put,
  working?: Working,
): { readonly frequency: number; readonly inertia: number } {
  const [front, rear] = [axles.front, axles.rear].map(
    ({ left, right }) => rollCentre(left.state, right.state).forceHeight,
  );
  const axisHeight = front! + ((rear! - front!) * sprung.a) / (sprung.a + sprung.b);
  const [K_φ1, K_φ2] = [ground.front.roll, ground.rear.roll];
  const h = height - axisHeight;
  const I_x = numbers.of(rollInertia);
  noteSolved(working, 'as the roll rate at the ground of its axle', 'LP-54', () => [
    { symbol: 'K_φ1', means: 'front roll rate, tyres in series', value: K_φ1, unit: 'N m/rad' },
    { symbol: 'K_φ2', means: 'rear roll rate, tyres in series', value: K_φ2, unit: 'N m/rad' },
  ]);
  noteSolved(
    working,
    'its height less that of the roll axis, through the force-based heights',
    'LP-58',
    () => [{ symbol: 'h', means: 'centre of gravity above the roll axis', value: h, unit: 'm' }],
  );
  const frequency = rollHertz({ K_φ1, K_φ2, m_s: sprung.mass, g: STANDARD_GRAVITY, h, I_x }, working, {
    I_x: fromReading(rollInertia),
    g: { kind: 'constant', what: 'standard acceleration of free fall' },
  });
  put(rollFrequency, frequency);
  return { frequency, inertia: I_x + sprung.mass * h * h };
}
