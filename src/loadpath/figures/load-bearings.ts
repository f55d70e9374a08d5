/** What the bearings of a corner carry under load: the wheel's pair, the rocker's pair. */

import { dot, length, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Working } from '../../working/working.ts';
import type { CornerForm } from '../corner-of-car.ts';
import {
  axialForces,
  equivalentLoad,
  type PairHeld,
  pressureCentres,
  radialForces,
  ratingShare,
  staticFactors,
  type Two,
} from '../loads/bearing-pair.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import type { CornerLoads } from '../loads/corner-loads.ts';
import { endOf, sideOf } from '../loads/doing.ts';
import { onWheelBearings } from '../loads/wheel-bearings.ts';
import type { Resultant } from '../loads/wrench.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { type FigureNote, notesOf, type Put } from './note.ts';

type WheelForm = NonNullable<CornerForm['wheelBearings']>;
type RockerForm = NonNullable<CornerForm['rockerBearings']>;
type BearingForm = WheelForm['outer'];

interface PairNotes {
  readonly push: FigureNote;
  readonly each: Two<{
    readonly radial: FigureNote;
    readonly axial: FigureNote;
    readonly share: FigureNote;
  }>;
}

function pairNotes(
  stop: 'upright' | 'rocker',
  id: string,
  of: { readonly push: FigureNote; readonly words: Two<string>; readonly keys: Two<string>; anchor: string },
): PairNotes {
  const each = (k: 0 | 1) => {
    const note = (what: string, means: string, symbol: string, rest: object): FigureNote =>
      notesOf(stop)({
        id: `${id}.${of.keys[k]}.${what}`,
        means: `${of.words[k]}: ${means}`,
        symbol: `${symbol}${of.keys[k][0]}`,
        unit: 'N',
        anchor: of.anchor,
        rank: 2,
        ...rest,
      });
    return {
      radial: note('radial', 'force square to its axis', 'F_r', {
        method: 'moments about the other bearing',
        source: 'LL-31',
      }),
      axial: note('axial', 'force along its axis', 'F_a', {
        method: 'the push along the axis, and what the radial forces bring about',
        source: 'LL-33',
        rank: 3,
      }),
      share: note('share', 'equivalent static load over its rating', '', { unit: 'share', symbol: 'p' }),
    };
  };
  return { push: of.push, each: [each(0), each(1)] };
}

const WHEEL = pairNotes('upright', 'wheelBearing', {
  words: ['outer wheel bearing', 'inner wheel bearing'],
  keys: ['outer', 'inner'],
  anchor: 'wheelCentre',
  push: notesOf('upright')({
    id: 'wheelBearing.push',
    means: 'push along the axle on the wheel bearings',
    symbol: 'K_a',
    unit: 'N',
    anchor: 'wheelCentre',
    rank: 2,
    say: 'outboard positive',
    method: 'all that acts on what turns, along the axle',
    source: 'LL-36',
  }),
});

const ROCKER = pairNotes('rocker', 'rockerBearing', {
  words: ['first bearing of the rocker', 'second bearing of the rocker'],
  keys: ['first', 'second'],
  anchor: 'rockerPivot',
  push: notesOf('rocker')({
    id: 'rockerBearing.push',
    means: 'push along the axis of the rocker',
    symbol: 'K_R',
    unit: 'N',
    anchor: 'rockerPivot',
    rank: 2,
    say: 'towards the second point of its axis positive; thrust faces take it where the bearings cannot',
    method: 'equilibrium of the rocker',
    source: 'LL-16',
  }),
});

function heldOf(form: WheelForm | RockerForm, two: Two<BearingForm>, numbers: Numbers): PairHeld {
  const both = (of: (each: BearingForm) => Reading | undefined): Two<number> => [
    numbers.or(of(two[0]), 0),
    numbers.or(of(two[1]), 0),
  ];
  return {
    kind: form.kind,
    backToBack: form.arrangement === 'back to back',
    innerRingsTurn: form.turns === 'inner rings',
    locating: form.locating === 'inner' || form.locating === 'second' ? 1 : 0,
    preload: numbers.or(form.preload, 0),
    contactAngle: both((each) => each.contactAngle),
    pitchDiameter: both((each) => each.pitchDiameter),
  };
}

/** @param axis  unit, along which `way` times the file's distances of the two bearings count */
function putPair(
  notes: PairNotes,
  form: WheelForm | RockerForm,
  two: Two<BearingForm>,
  on: { readonly axis: Vec3; readonly way: 1 | -1; readonly load: Resultant },
  numbers: Numbers,
  put: Put,
  working?: Working,
): void {
  const held = heldOf(form, two, numbers);
  const middles: Two<number> = [on.way * numbers.of(two[0].at), on.way * numbers.of(two[1].at)];
  const across = radialForces(on.axis, pressureCentres(middles, held), on.load);
  const radial: Two<number> = [length(across[0]), length(across[1])];
  const push = dot(on.load.force, on.axis);
  const axial = axialForces(held, middles, radial, push);
  put(notes.push, push);
  for (const k of [0, 1] as const) {
    const { radial: radialNote, axial: axialNote, share } = notes.each[k];
    put(radialNote, radial[k]);
    if (held.kind !== 'needle roller') put(axialNote, axial[k]);
    const { staticRating } = two[k];
    if (staticRating === undefined) continue;
    const { X0, Y0 } = staticFactors(held.kind, held.contactAngle[k]);
    const table = { kind: 'table', name: `ISO 76, ${held.kind}` } as const;
    const P_0 = equivalentLoad({ X_0: X0, F_r: radial[k], Y_0: Y0, F_a: axial[k] }, working, {
      X_0: table,
      Y_0: table,
      F_r: { kind: 'step', symbol: radialNote.symbol },
      F_a:
        held.kind === 'needle roller'
          ? { kind: 'constant', what: 'thrust faces take the push' }
          : { kind: 'step', symbol: axialNote.symbol },
    });
    const C_0 = numbers.of(staticRating);
    put(share, ratingShare({ P_0, C_0 }, working, { C_0: fromReading(staticRating) }));
  }
}

/** Wheel and rocker bearings, where the file describes them. */
export function putBearingFigures(
  corner: CornerForm,
  standing: CarStanding,
  of: CornerLoads,
  numbers: Numbers,
  put: Put,
  working?: Working,
): void {
  const { wheelBearings: wheel, rockerBearings: rocker } = corner;
  if (wheel !== undefined) {
    const { caliper } = wheel;
    const share = numbers.of(wheel.turning) / numbers.of(corner.unsprung);
    const load = onWheelBearings(
      standing,
      of.wheel,
      share,
      caliper === undefined
        ? undefined
        : {
            inboard: numbers.of(caliper.at),
            radius: numbers.of(caliper.radius),
            angle: numbers.of(caliper.angle),
          },
    );
    const { state } = standing.axles[endOf(of.wheel)][sideOf(of.wheel)];
    const axis = state.wheelAxis.value;
    putPair(WHEEL, wheel, [wheel.outer, wheel.inner], { axis, way: -1, load }, numbers, put, working);
  }
  if (rocker !== undefined) {
    const { rockerPivot, rockerAxis } = corner.points;
    const axis = unit(sub(numbers.point(rockerAxis), numbers.point(rockerPivot)));
    const load = of.rocker.on;
    putPair(ROCKER, rocker, [rocker.first, rocker.second], { axis, way: 1, load }, numbers, put, working);
  }
}
