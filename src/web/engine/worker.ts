/** Works out beside the page what takes longer than a frame: opening a car, spreads, workings, proposals, the survey. */
import {
  adjusterTable,
  axleFigures,
  barForCoil,
  barLadder,
  benchTest,
  carFigures,
  coilForBar,
  cornerCurves,
  cornerFigures,
  dayAnswer,
  gaugeAnswer,
  jointOf,
  loadCases,
  loadsOf,
  solveSetUp,
  surveyAnswer,
  workingOf,
  workingOfAxle,
  workingOfCar,
  workingOfJoint,
  workingOfLoads,
} from '../../questions/index.ts';
import { caseTable, sheetOf } from '../../sheets/index.ts';
import { measureOf } from '../print/letters.ts';
import { type Car, plainCar, readOnce } from './answers.ts';
import type { Ask, QuestionName, Questions, Reply } from './protocol.ts';

type Answering = {
  readonly [Q in QuestionName]: (ask: Ask<Q>) => Questions[Q]['answers'];
};

function carOf(ask: Pick<Ask, 'source'>): Car {
  const read = readOnce(ask.source);
  if (!read.ok) throw new Error(read.problems[0]?.message ?? 'The car file cannot be read.');
  return read.car;
}

const answering: Answering = {
  open: (ask) => plainCar(readOnce(ask.source)),
  corner: (ask) => cornerFigures(carOf(ask), ...ask.asks),
  loads: (ask) => loadsOf(carOf(ask), ...ask.asks),
  joint: (ask) => jointOf(carOf(ask), ...ask.asks),
  caseTable: (ask) => {
    const cases = loadCases(carOf(ask));
    return cases.cases.length === 0 ? cases.without[0]!.message : caseTable(cases, ...ask.asks);
  },
  axle: (ask) => axleFigures(carOf(ask), ...ask.asks),
  car: (ask) => carFigures(carOf(ask), ...ask.asks),
  workingOfCar: (ask) => workingOfCar(carOf(ask), ...ask.asks),
  curves: (ask) => cornerCurves(carOf(ask), ...ask.asks),
  working: (ask) => workingOf(carOf(ask), ...ask.asks),
  workingOfAxle: (ask) => workingOfAxle(carOf(ask), ...ask.asks),
  workingOfLoads: (ask) => workingOfLoads(carOf(ask), ...ask.asks),
  workingOfJoint: (ask) => workingOfJoint(carOf(ask), ...ask.asks),
  barForCoil: (ask) => barForCoil(carOf(ask), ...ask.asks),
  coilForBar: (ask) => coilForBar(carOf(ask), ...ask.asks),
  ladder: (ask) => barLadder(carOf(ask), ...ask.asks),
  bench: (ask) => benchTest(...ask.asks),
  sheet: ({ asks: [letters, kind, asked], ...ask }) =>
    sheetOf(kind, { ...asked, car: carOf(ask) }, measureOf(letters)),
  setUp: (ask) => solveSetUp(carOf(ask), ...ask.asks),
  adjusters: (ask) => adjusterTable(carOf(ask), ...ask.asks),
  day: (ask) => dayAnswer(carOf(ask), ...ask.asks),
  gauge: (ask) => gaugeAnswer(carOf(ask), ...ask.asks),
  survey: (ask) => surveyAnswer(carOf(ask)),
};

const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<Ask>) => void;
  postMessage: (reply: Reply) => void;
};

scope.onmessage = ({ data }) => {
  try {
    const answer = (answering[data.question] as (ask: Ask) => unknown)(data);
    scope.postMessage({ number: data.number, answer });
  } catch (reason) {
    scope.postMessage({ number: data.number, failed: (reason as Error).message });
  }
};
