/** What may be asked of the worker, and what it answers: plain data both ways. */
import type {
  adjusterTable,
  axleFigures,
  barForCoil,
  barLadder,
  benchTest,
  carFigures,
  coilForBar,
  cornerCurves,
  cornerFigures,
  DayAnswer,
  DayQuestion,
  GaugeAnswer,
  GaugeQuestion,
  jointOf,
  loadsOf,
  solveSetUp,
  surveyAnswer,
  workingOf,
  workingOfAxle,
  workingOfCar,
  workingOfJoint,
  workingOfLoads,
} from '../../questions/index.ts';
import type { CaseTableAsked, SheetAnswer, SheetAsked, SheetKind } from '../../sheets/index.ts';
import type { Letters } from '../print/letters.ts';
import type { CarSource, Opened } from './answers.ts';

type After<F> = F extends (first: never, ...rest: infer R) => unknown ? R : never;

export interface Questions {
  open: { asks: []; answers: Opened };
  corner: { asks: After<typeof cornerFigures>; answers: ReturnType<typeof cornerFigures> };
  loads: { asks: After<typeof loadsOf>; answers: ReturnType<typeof loadsOf> };
  joint: { asks: After<typeof jointOf>; answers: ReturnType<typeof jointOf> };
  /** All default cases as lines of CSV, or the sentence that says why there are none. */
  caseTable: { asks: [asked: CaseTableAsked]; answers: readonly string[] | string };
  axle: { asks: After<typeof axleFigures>; answers: ReturnType<typeof axleFigures> };
  car: { asks: After<typeof carFigures>; answers: ReturnType<typeof carFigures> };
  workingOfCar: { asks: After<typeof workingOfCar>; answers: ReturnType<typeof workingOfCar> };
  curves: { asks: After<typeof cornerCurves>; answers: ReturnType<typeof cornerCurves> };
  working: { asks: After<typeof workingOf>; answers: ReturnType<typeof workingOf> };
  workingOfAxle: { asks: After<typeof workingOfAxle>; answers: ReturnType<typeof workingOfAxle> };
  workingOfLoads: { asks: After<typeof workingOfLoads>; answers: ReturnType<typeof workingOfLoads> };
  workingOfJoint: { asks: After<typeof workingOfJoint>; answers: ReturnType<typeof workingOfJoint> };
  barForCoil: { asks: After<typeof barForCoil>; answers: ReturnType<typeof barForCoil> };
  coilForBar: { asks: After<typeof coilForBar>; answers: ReturnType<typeof coilForBar> };
  ladder: { asks: After<typeof barLadder>; answers: ReturnType<typeof barLadder> };
  bench: { asks: Parameters<typeof benchTest>; answers: ReturnType<typeof benchTest> };
  sheet: {
    asks: [letters: Letters, kind: SheetKind, asked: Omit<SheetAsked, 'car'>];
    answers: SheetAnswer;
  };
  setUp: { asks: After<typeof solveSetUp>; answers: ReturnType<typeof solveSetUp> };
  adjusters: { asks: After<typeof adjusterTable>; answers: ReturnType<typeof adjusterTable> };
  day: { asks: [question: DayQuestion]; answers: DayAnswer };
  gauge: { asks: [question: GaugeQuestion, working?: string]; answers: GaugeAnswer };
  survey: { asks: After<typeof surveyAnswer>; answers: ReturnType<typeof surveyAnswer> };
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
