/**
 * The force followed from stop to stop: a sentence at each, with its figures, where it came from and where it goes.
 *
 * In    the car, what it is doing, the wheel where the force is taken up, the joint that is looked at
 * Out   a sentence for each stop of the load path, or why it cannot be told
 */
import type { Car } from '../car/read.ts';
import { type CornerLoads, cornerLoads } from '../loadpath/loads/corner-loads.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { MEMBERS, type MemberName } from '../loadpath/loads/members.ts';
import { length, type Vec3 } from '../maths/vec3.ts';
import { type Speech, spokenAmount } from '../units/show.ts';
import { noBody } from './body-forces.ts';
import { caseForces } from './case-forces.ts';
import type { Stop, Wheel } from './figure.ts';
import { JOINT_WORDS, type JointName, jointOf } from './joint.ts';
import { wheelNamed } from './loads.ts';
import { isRefusal } from './refusal.ts';
import { standingAsFiled } from './standing-as-filed.ts';
import { THROUGH_THE_JOINT, tubForces } from './tub-forces.ts';

export interface FollowAsked {
  readonly doing: Doing;
  readonly wheel: Wheel;
  readonly joint: JointName;
  readonly speech?: Speech;
}

const MEMBER_WORDS: Readonly<Record<MemberName, string>> = {
  upperFront: 'front leg of the upper wishbone',
  upperRear: 'rear leg of the upper wishbone',
  lowerFront: 'front leg of the lower wishbone',
  lowerRear: 'rear leg of the lower wishbone',
  toeLink: 'track rod or toe link',
  rod: 'pushrod or pullrod',
};

/** A force of less than this is not worth a word, N. */
const NOTHING = 1;

export interface Followed {
  /** Whether the force could be told; `says` is then the sentence, else why not. */
  readonly reached: boolean;
  readonly says: string;
}

const told = (says: string): Followed => ({ reached: true, says });
const not = (says: string): Followed => ({ reached: false, says });

export function followForce(car: Car, stop: Stop, asked: FollowAsked): Followed {
  const { doing, wheel, joint, speech = 'mm-N' } = asked;
  const without = noBody(car.form);
  if (without !== undefined) return not(without);
  const newtons = (value: number): string => spokenAmount(Math.abs(value), 'N', 0, speech);
  const couples = (value: number): string => spokenAmount(Math.abs(value), 'N m', 0, speech);
  try {
    if (stop === 'case') return onCase(car, doing, newtons, couples);
    if (stop === 'studs') return throughStuds(car, joint, doing, newtons, couples);
    if (stop === 'tub') return onTub(car, doing, newtons);
    const standing = standingAsFiled(car, doing);
    const name = wheelNamed(wheel);
    const { ground, unsprung } = standing.wheels[name];
    return told(
      atCorner(stop, cornerLoads(standing, name), {
        ground,
        unsprung: length(unsprung.force),
        wheel,
        newtons,
        couples,
      }),
    );
  } catch (reason) {
    if (isRefusal(reason)) return not(reason.message);
    throw reason;
  }
}

type Speak = (value: number) => string;

/** Parts of a force in words, those that are nothing left out. */
function ways([forward, left, up]: Vec3, newtons: Speak): string {
  const parts = [
    [up, 'upward', 'downward'],
    [forward, 'forward', 'rearward'],
    [left, 'to the left', 'to the right'],
  ] as const;
  const worth = parts.filter(([value]) => Math.abs(value) > NOTHING);
  return worth.length === 0
    ? 'nothing'
    : list(worth.map(([value, more, less]) => `${newtons(value)} ${value > 0 ? more : less}`));
}

const list = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const pulled = (tension: number): string => (tension >= 0 ? 'pull' : 'push');

interface AtCorner {
  readonly ground: Vec3;
  readonly unsprung: number;
  readonly wheel: Wheel;
  readonly newtons: Speak;
  readonly couples: Speak;
}

function atCorner(
  stop: Stop,
  of: CornerLoads,
  { ground, unsprung, wheel, newtons, couples }: AtCorner,
): string {
  const { tension, onUpright } = of.members;
  const body = wheel.end === 'front' ? 'tub' : 'gear case';
  switch (stop) {
    case 'tyre':
      return ground[2] <= 0
        ? `The ${wheel.end} ${wheel.side} tyre is off the ground: no force comes in here.`
        : `The ground pushes the tyre with ${ways(ground, newtons)}. Wheel and bearings hand it to the upright.`;
    case 'upright':
      return `The upright has it from the wheel, with ${newtons(unsprung)} of the wheel's own weight and inertia. It hands on ${newtons(length(onUpright.upper.force))} at its upper outer joint and ${newtons(length(onUpright.lower.force))} at its lower one, and ${newtons(tension.toeLink)} of ${pulled(tension.toeLink)} to the track rod or toe link.`;
    case 'links': {
      const legs = MEMBERS.filter((name) => name !== 'rod').sort(
        (a, b) => Math.abs(tension[b]) - Math.abs(tension[a]),
      );
      const most = legs
        .slice(0, 2)
        .map((name) => `the ${MEMBER_WORDS[name]} by ${newtons(tension[name])} of ${pulled(tension[name])}`);
      return `The legs take it to the ${body}, most of it ${list(most)}. The rod takes ${newtons(tension.rod)} of ${pulled(tension.rod)} to the rocker.`;
    }
    case 'rocker': {
      const link =
        Math.abs(of.rocker.dropLink) > NOTHING
          ? `, ${newtons(of.rocker.dropLink)} to the anti-roll bar by its drop link`
          : '';
      return `The rod turns the rocker with ${newtons(tension.rod)} of ${pulled(tension.rod)}. The rocker hands ${springWords(of, newtons, couples)}${link}; its pivot puts ${newtons(of.rocker.pivot)} on the ${body}.`;
    }
    default:
      return `The spring holds ${springWords(of, newtons, couples).replace(' to the spring', '')}; its other end stands on the ${body}.${wheel.end === 'front' ? ' The front wheels do not reach the gear case: go on with a rear wheel, or at the tub.' : ' From here all of the rear wheels goes on through the case.'}`;
  }
}

const springWords = ({ unit, barTorque }: CornerLoads, newtons: Speak, couples: Speak): string =>
  Math.abs(barTorque) > NOTHING
    ? `${couples(barTorque)} to the spring, the torsion bar${Math.abs(unit) > NOTHING ? `, with ${newtons(unit)} in the damper unit` : ''}`
    : `${newtons(unit)} of ${unit >= 0 ? 'push' : 'pull'} to the spring`;

function onCase(car: Car, doing: Doing, newtons: Speak, couples: Speak): Followed {
  const is = caseForces(car, doing);
  if (!is.reached) return not(is.message);
  const greatest = [...is.forces].sort((a, b) => b.size - a.size).slice(0, 2);
  const { force, moment } = is.resultant;
  return told(
    `Both rear corners stand on the gear case; its greatest loads are ${list(greatest.map(({ name, size }) => `${newtons(size)} at ${name}`))}. Together they are ${ways(force, newtons)}, with a couple of ${couples(length(moment))} about the rear axle line: that goes forward into the engine.`,
  );
}

function throughStuds(car: Car, joint: JointName, doing: Doing, newtons: Speak, couples: Speak): Followed {
  const is = jointOf(car, joint, doing, { spread: false });
  if (!is.reached) return not(is.message);
  const of = (id: string): number => is.figures.find((figure) => figure.id === id)?.value ?? Number.NaN;
  const pull = of('pull');
  const bending = of('bending');
  const open = of('openedLow');
  const worst = is.face.studs.find(({ name }) => name === is.worst)!;
  return told(
    `Through the face ${JOINT_WORDS[joint]} come ${newtons(pull)} that ${pull > 0 ? 'pulls it apart' : 'presses it together'}, ${newtons(of('shear'))} along it, and a bending of ${couples(bending)} that opens its ${bending < 0 ? 'lower' : 'upper'} side. The studs hold it closed${open > 0 ? ', but not everywhere' : ''}: least is left at ${worst.name}, ${newtons(worst.left)} of ${newtons(worst.pressed)} on its pad. It goes on ${joint === 'caseToEngine' ? 'through the engine to the tub' : 'into the tub'}.`,
  );
}

function onTub(car: Car, doing: Doing, newtons: Speak): Followed {
  const is = tubForces(car, doing);
  if (!is.reached) return not(is.message);
  const named = (name: string): Vec3 => is.forces.find((each) => each.name === name)?.force ?? [0, 0, 0];
  return told(
    `The tub has ${ways(named(THROUGH_THE_JOINT), newtons)} through the engine joint, and the front suspension. What it carries itself, with the driver, answers by ${ways(named('weight and inertia of the rest'), newtons)}; with the air they close, and nothing is left over. This is the end of the line.`,
  );
}
