/** What is asked of the car under way and before it goes: pressures, ratios, load transfer, brakes, fuel. */
export type { AskedAmount } from '../measured/asked-reading.ts';
export { type BrakesAsked, brakesOf, USUAL_DECELERATIONS } from './brakes.ts';
export type { ToldAnswer, ToldOptions, ToldReached } from './floor-answer.ts';
export { type FloorWorking, floorId, type ToldFigure } from './floor-figures.ts';
export { type FuelAsked, fuelFor } from './fuel.ts';
export {
  type NowRead,
  type PressuresAsked,
  pressuresFor,
  type RunRead,
  type TyrePlace,
  tyreWords,
} from './pressures.ts';
export {
  type ChosenSet,
  type RatiosAnswer,
  type RatiosAsked,
  type RatiosReached,
  ratiosOf,
  type ThrustLine,
  type ThrustPoint,
} from './ratios.ts';
export {
  type HeightsAsked,
  heightsAgainstSpeed,
  transferUnder,
  type UnderWayAsked,
  USUAL_SPEEDS,
} from './under-way.ts';
