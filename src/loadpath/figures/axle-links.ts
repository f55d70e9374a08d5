/** Figures of an axle's links: roll centre, and what the links carry of the longitudinal transfer. */
import type { CarForm } from '../../car/read.ts';
import { antiDive, antiLift, antiSquat } from '../axle/anti.ts';
import { rollCentre } from '../axle/roll-centre.ts';
import type { AxleSide, AxleState } from '../axle-of-car.ts';
import type { Numbers } from '../numbers.ts';
import { notesOf, type Put } from './note.ts';

const links = notesOf('links');

const FRONT_VIEW = {
  method: 'crossing of the normals to the two contact points’ paths in the closed linkage',
  source: 'LP-23',
} as const;

const rollHeight = links({
  id: 'rollCentreHeight',
  means: 'roll centre, height above the ground (construction)',
  symbol: 'h_rc',
  unit: 'm',
  rank: 1,
  ...FRONT_VIEW,
});

const rollOffset = links({
  id: 'rollCentreOffset',
  means: 'roll centre, left of the centre plane (construction)',
  symbol: 'y_rc',
  unit: 'm',
  rank: 2,
  ...FRONT_VIEW,
});

const forceHeight = links({
  id: 'rollCentreForce',
  lead: true,
  means: 'height at which lateral force enters through the links',
  symbol: 'h_f',
  unit: 'm',
  rank: 1,
  say: 'with the lateral force shared equally between the two wheels; this is the one that loads the tyres',
  method: 'slopes of both contact points’ paths, equal shares',
  source: 'LP-24',
});

const dive = links({
  id: 'antiDive',
  means: 'anti-dive: share of the braking transfer that the front links carry',
  symbol: 'A_d',
  unit: 'share',
  rank: 1,
  method: 'side-view slope of the point where the braking force acts, mean of left and right',
  source: 'LP-25',
});

const lift = links({
  id: 'antiLift',
  means: 'anti-lift: share of the braking transfer that the rear links carry',
  symbol: 'A_l',
  unit: 'share',
  rank: 1,
  method: 'side-view slope of the point where the braking force acts, mean of left and right',
  source: 'LP-26',
});

const squat = links({
  id: 'antiSquat',
  means: 'anti-squat: share of the driving transfer that the rear links carry',
  symbol: 'A_s',
  unit: 'share',
  rank: 1,
  method: 'side-view slope of the wheel centre (drive through shafts), mean of left and right',
  source: 'LP-27',
});

const mean = (a: number, b: number): number => (a + b) / 2;

function putAntis(form: CarForm, end: 'front' | 'rear', state: AxleState, numbers: Numbers, put: Put): void {
  const { body, brakes } = form;
  if (body === undefined) return;
  const base = (side: 'left' | 'right'): number =>
    numbers.point(form.front[side].points.wheelCentre)[0] -
    numbers.point(form.rear[side].points.wheelCentre)[0];
  const car = {
    wheelbase: mean(base('left'), base('right')),
    centreOfMassHeight: numbers.of(body.centreOfGravityHeight),
  };
  const both = (anti: (side: AxleSide) => { readonly share: number }): number =>
    mean(anti(state.left).share, anti(state.right).share);
  if (brakes !== undefined) {
    const torqueTo = brakes[end] === 'outboard' ? 'upright' : 'case';
    const frontShare = numbers.of(brakes.frontShare);
    if (end === 'front')
      put(
        dive,
        both((side) => antiDive(side.state, car, { share: frontShare, torqueTo })),
      );
    else
      put(
        lift,
        both((side) => antiLift(side.state, car, { share: 1 - frontShare, torqueTo })),
      );
  }
  if (end === 'rear')
    put(
      squat,
      both((side) => antiSquat(side.state, car)),
    );
}

/** Puts what the links do: roll centre and antis. */
export function putAxleLinks(
  form: CarForm,
  end: 'front' | 'rear',
  state: AxleState,
  numbers: Numbers,
  put: Put,
): void {
  const centre = rollCentre(state.left.state, state.right.state);
  put(rollHeight, centre.geometric?.height ?? Number.NaN);
  put(rollOffset, centre.geometric?.offset ?? Number.NaN);
  put(forceHeight, centre.forceHeight);
  putAntis(form, end, state, numbers, put);
}
