/** What may be asked of the worker, and what it answers: plain data both ways. */
import type {
  axleFigures,
  barForCoil,
  barLadder,
  benchTest,
  carFigures,
  coilForBar,
  compareSpecs,
  cornerCurves,
  cornerFigures,
  surveyAnswer,
  workingOf,
  workingOfAxle,
  workingOfCar,
} from '../../questions/index.ts';
import type { CarSource } from './answers.ts';

type After<F> = F extends (first: never, ...rest: infer R) => unknown ? R : never;

export interface Questions {
  corner: { asks: After<typeof cornerFigures>; answers: ReturnType<typeof cornerFigures> };
  axle: { asks: After<typeof axleFigures>; answers: ReturnType<typeof axleFigures> };
  car: { asks: After<typeof carFigures>; answers: ReturnType<typeof carFigures> };
  workingOfCar: { asks: After<typeof workingOfCar>; answers: ReturnType<typeof workingOfCar> };
  curves: { asks: After<typeof cornerCurves>; answers: ReturnType<typeof cornerCurves> };
  working: { asks: After<typeof workingOf>; answers: ReturnType<typeof workingOf> };
  workingOfAxle: { asks: After<typeof workingOfAxle>; answers: ReturnType<typeof workingOfAxle> };
  barForCoil: { asks: After<typeof barForCoil>; answers: ReturnType<typeof barForCoil> };
  coilForBar: { asks: After<typeof coilForBar>; answers: ReturnType<typeof coilForBar> };
  ladder: { asks: After<typeof barLadder>; answers: ReturnType<typeof barLadder> };
  bench: { asks: Parameters<typeof benchTest>; answers: ReturnType<typeof benchTest> };
  survey: { asks: After<typeof surveyAnswer>; answers: ReturnType<typeof surveyAnswer> };
  compare: { asks: After<typeof compareSpecs>; answers: ReturnType<typeof compareSpecs> };
}

export type QuestionName = keyof Questions;

export interface Ask<Q extends QuestionName = QuestionName> {
  readonly number: number;
  readonly question: Q;
  readonly source: CarSource;
  readonly asks: Questions[Q]['asks'];
}

export type Reply =
  | { readonly number: number; readonly answer: unknown }
  | { readonly number: number; readonly failed: string };
