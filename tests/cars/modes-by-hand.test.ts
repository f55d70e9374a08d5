/**
 * Modes of the body and their damping against sums done by hand: balance of moments, invariants of the bare equations
 * of motion, energy lost in a swing, and damper curves of two straight lines whose slopes are known.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { putRollDamping } from '../../src/loadpath/figures/car-damping.ts';
import {
  AS_SURVEYED,
  axleFigures,
  type Car,
  carFigures,
  cornerFigures,
  type End,
  type Figure,
} from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demoSource, opened } from './demo.ts';

const ENDS = ['front', 'rear'] as const;
/** Standard acceleration of free fall, m/s² (3rd CGPM, 1901). */
const G = 9.80665;
/** The same numbers through a score of operations in another order. */
const DIGITS = 1e-10;

const relative = (found: number, expected: number, tolerance: number, what = ''): void =>
  near(found / expected, 1, tolerance, what);

interface Point {
  readonly velocity: number;
  readonly bump: number;
  readonly rebound: number;
}

/** mm/s and N. Bump 5 and 2 N s/mm below and above 50 mm/s, rebound 10 and 4: 7.5 and 3 in the mean. */
const FOUR: readonly Point[] = [
  { velocity: 20, bump: 100, rebound: 200 },
  { velocity: 50, bump: 250, rebound: 500 },
  { velocity: 100, bump: 350, rebound: 700 },
  { velocity: 200, bump: 550, rebound: 1100 },
];
const SLOPES = { Low: 7500, High: 3000 } as const;

const rowOf = ({ velocity, bump, rebound }: Point): string =>
  `        - { velocity: ${velocity} mm/s, bump: ${bump} N, rebound: ${rebound} N }\n`;

/** 120 kg on each front scale and 172 kg on each rear one; 20 and 22 kg unsprung: 200 and 300 kg are sprung. */
function roundCar(points: readonly Point[] = FOUR): Car {
  const [front, rear] = [
    { scale: 'scale: 120 kg', unsprung: 'unsprung: 20 kg' },
    { scale: 'scale: 172 kg', unsprung: 'unsprung: 22 kg' },
  ];
  const set = (text: string, { scale, unsprung }: { scale: string; unsprung: string }): string => {
    assert.equal(text.match(/ {4}scale: .*\n {4}unsprung: .*\n/g)?.length, 2);
    assert.equal(
      text.match(/ {6}curve:.*\n( {8}- \{ velocity.*\n)+/g)?.length,
      1,
      'the right damper is the left one',
    );
    return text
      .replace(/ {4}scale: .*\n {4}unsprung: .*\n/g, `    ${scale}\n    ${unsprung}\n`)
      .replace(/ {6}curve:.*\n( {8}- \{ velocity.*\n)+/, `      curve:\n${points.map(rowOf).join('')}`);
  };
  return opened(
    demoSource('fenwold-201', (text) => {
      const at = text.indexOf('\nrear:\n');
      const specs = text.indexOf('\nspecs:\n');
      return set(text.slice(0, at), front!) + set(text.slice(at, specs), rear!) + text.slice(specs);
    }),
  );
}

type Answered = (id: string) => number;
const lookUp =
  (figures: readonly Figure[]): Answered =>
  (id) => {
    const found = figures.find((figure) => figure.id === id);
    assert.ok(found, `no ${id}`);
    return found.value;
  };

function carOf(car: Car): Answered {
  const answer = carFigures(car);
  assert.ok(answer.reached);
  return lookUp(answer.figures);
}

function axleOf(car: Car, end: End): Answered {
  const answer = axleFigures(car, end, AS_SURVEYED);
  assert.ok(answer.reached);
  return lookUp(answer.figures);
}

/** Compression of each damper per wheel travel, squared and summed over the two wheels. */
const squares = (car: Car, end: End): number =>
  (['left', 'right'] as const).reduce((sum, side) => {
    const answer = cornerFigures(car, { end, side }, { travel: 0, rack: 0 });
    assert.ok(answer.reached);
    const r = lookUp(answer.figures)('springPerWheel');
    // else a square could not be told from the ratio itself
    assert.ok(Math.abs(r - 1) > 0.1, `${end} ${side}: ${r}`);
    return sum + r ** 2;
  }, 0);

const MASS = 500;
const ROLL_INERTIA = 62;
const PITCH_INERTIA = 560;
const HEIGHT = 0.292;

interface AtGround {
  readonly axle: Answered;
  /** Where the axle stands ahead of the centre of gravity. */
  readonly x: number;
}

/** Both axles; 200 and 300 kg on a wheelbase L balance at 0.6 L behind the front axle. */
function bothOf(car: Car): readonly [AtGround, AtGround] {
  const L = carOf(car)('wheelbase');
  return [
    { axle: axleOf(car, 'front'), x: 0.6 * L },
    { axle: axleOf(car, 'rear'), x: -0.4 * L },
  ];
}

test('bounce and pitch: sum and product of their squares are those of the bare equations', () => {
  const car = roundCar();
  const of = carOf(car);
  const both = bothOf(car);
  near(of('sprungMass'), MASS, DIGITS);
  // trace and determinant of M⁻¹K; the rates are those that each axle tells by itself
  const rates = both.map(({ axle }) => axle('heaveRide'));
  const trace = both.reduce(
    (sum, { x }, k) => sum + rates[k]! / MASS + (rates[k]! * x ** 2) / PITCH_INERTIA,
    0,
  );
  const determinant = (rates[0]! * rates[1]! * of('wheelbase') ** 2) / (MASS * PITCH_INERTIA);
  const [low, high] = ['bounceFrequency', 'pitchFrequency'].map((id) => (2 * Math.PI * of(id)) ** 2);
  relative(low! + high!, trace, DIGITS);
  relative(low! * high!, determinant, DIGITS);
  // the two still points are conjugate: their distances make the square of the radius of gyration
  relative(of('bounceNode') * of('pitchNode'), -PITCH_INERTIA / MASS, DIGITS);
});

/**
 * Height of the centre of gravity over the roll axis. The axis passes under it at the mean of its two heights weighed
 * by the masses: 200 kg at 20 mm and 300 kg at 60 mm would make 44 mm.
 */
function overRollAxis(both: readonly [AtGround, AtGround]): number {
  const [front, rear] = both.map(({ axle }) => axle('rollCentreForce'));
  assert.ok(Math.abs(front! - rear!) > 0.01, 'the axis slopes');
  return HEIGHT - (200 * front! + 300 * rear!) / 500;
}

test('roll: the springing rights and the weight tips a body that turns about its roll axis', () => {
  const car = roundCar();
  const both = bothOf(car);
  const h = overRollAxis(both);
  // K φ − m g h φ = (I + m h²) ω² φ, the balance of moments about that axis
  const righting = both.reduce((sum, { axle }) => sum + axle('rollRateTyre'), 0) - MASS * G * h;
  const square = (2 * Math.PI * carOf(car)('rollFrequency')) ** 2;
  relative(square * (ROLL_INERTIA + MASS * h ** 2), righting, DIGITS);
  const [front, rear] = both.map(({ axle }) => axle('rollRateTyre'));
  relative(carOf(car)('frontRollShare'), front! / (front! + rear!), DIGITS);
});

// With a knee put in at 50 mm/s the fit finds it to about the root of a double's digits. Three points are too few for
// a knee; then the first chord and the last slope are taken, which of these curves are the same slopes.
for (const [what, points, tolerance] of [
  ['two lines through four points', FOUR, 1e-6],
  ['three points', FOUR.slice(0, 3), DIGITS],
] as const) {
  const car = roundCar(points);
  const of = carOf(car);
  const both = bothOf(car);
  const damping = ENDS.map((end) => squares(car, end));

  for (const speed of ['Low', 'High'] as const) {
    test(`${what}, ${speed.toLowerCase()} speed: damping of an axle by the mean slope of bump and rebound`, () => {
      both.forEach(({ axle }, k) => {
        const mass = [200, 300][k]!;
        // critical damping is 2 √(K m) (any handbook of vibrations, such as Rao, ch. 2, from memory)
        const critical = 2 * Math.sqrt(axle('heaveRate') * mass);
        relative(axle(`damping${speed}`), (SLOPES[speed] * damping[k]!) / critical, tolerance, ENDS[k]);
      });
    });

    /**
     * Damping ratio from the energy that one swing of amplitude 1 loses: 4πζ of what it has, for light damping (Rao,
     * ch. 2, from memory). A damper of c that moves by an amplitude s at ω loses π c ω s² in a swing.
     */
    const ratio = (omega: number, inertia: number, squaresOfDampers: number): number => {
      const lost = Math.PI * SLOPES[speed] * omega * squaresOfDampers;
      return lost / (((inertia * omega ** 2) / 2) * 4 * Math.PI);
    };

    test(`${what}, ${speed.toLowerCase()} speed: damping of bounce and pitch by the energy of a swing`, () => {
      for (const [name, node] of [
        ['bounce', of('bounceNode')],
        ['pitch', of('pitchNode')],
      ] as const) {
        // turned by 1 about the node, an axle moves by its distance; springs and tyres share that in series: the force
        // at the ground is heaveRide × all of it and heaveRate × the springs' part
        const moved = both.reduce((sum, { axle, x }, k) => {
          const part = ((node - x) * axle('heaveRide')) / axle('heaveRate');
          return sum + damping[k]! * part ** 2;
        }, 0);
        const omega = 2 * Math.PI * of(`${name}Frequency`);
        relative(
          of(`${name}Damping${speed}`),
          ratio(omega, MASS * node ** 2 + PITCH_INERTIA, moved),
          tolerance,
          name,
        );
      }
    });

    test(`${what}, ${speed.toLowerCase()} speed: damping of roll by the energy of a swing`, () => {
      // rolled by 1, each wheel moves by half the track, of which the springing sees its part
      const moved = both.reduce((sum, { axle }, k) => {
        const part = ((axle('track') / 2) * axle('rollRateTyre')) / axle('rollRate');
        return sum + damping[k]! * part ** 2;
      }, 0);
      const omega = 2 * Math.PI * of('rollFrequency');
      const inertia = ROLL_INERTIA + MASS * overRollAxis(both) ** 2;
      relative(of(`rollDamping${speed}`), ratio(omega, inertia, moved), tolerance);
    });
  }
}

test('roll: 2500 N s/m an axle on 1.5 m of track, 0.8 of it seen, 90 kg m² at 2 Hz: 0.796', () => {
  const damping = { low: 2500, high: 2500 };
  const axle = { damping, heavePart: 1, rollPart: 0.8, track: 1.5 };
  const found: number[] = [];
  putRollDamping({ front: axle, rear: axle }, { frequency: 2, inertia: 90 }, (_, value) => found.push(value));
  // a damper c of each wheel at 0.75 m that sees 0.8 of it: 4 c (0.75·0.8)² N m s/rad, c = 1250; over 2 I ω
  const expected = (4 * 1250 * 0.6 ** 2) / (2 * 90 * 2 * Math.PI * 2);
  near(expected, 0.796, 0.0005); // as printed
  for (const value of found) near(value, expected, 1e-12); // the same numbers in another order
  assert.equal(found.length, 2);
});
