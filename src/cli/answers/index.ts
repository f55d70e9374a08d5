/** All answers of the command line in one form, and its JSON Schema. */
import { z } from 'zod';
import { axleForm, carForm, figuresForm } from './axle.ts';
import { brakesForm } from './brakes.ts';
import { checkForm, problemsForm } from './check.ts';
import { cornerForm, workingForm } from './corner.ts';
import { compareForm, curvesForm } from './curves.ts';
import { adjustersForm, floorForm, setUpForm, weighingForm } from './floor.ts';
import { fuelForm } from './fuel.ts';
import { bumpSteerForm, levelsForm, scalesForm, stringsForm } from './gauged.ts';
import { caseForm, casesForm, followForm, loadsForm, studsForm, tubForm } from './loads.ts';
import { logForm } from './log.ts';
import { pressuresForm } from './pressures.ts';
import { asBuiltForm, cutsForm, primariesForm, solidsForm, wrapsForm } from './primaries.ts';
import { ratiosForm } from './ratios.ts';
import { routeForm } from './route.ts';
import { scanForm } from './scan.ts';
import { barForCoilForm, benchTestForm, coilForBarForm, ladderForm, noneForm } from './springs.ts';
import { surveyForm } from './survey.ts';
import { tighteningForm } from './tightening.ts';
import { heightsForm, transferForm } from './under-way.ts';

export const answerForm = z.discriminatedUnion('answer', [
  cornerForm,
  axleForm,
  carForm,
  figuresForm,
  curvesForm,
  workingForm,
  compareForm,
  loadsForm,
  followForm,
  casesForm,
  studsForm,
  tighteningForm,
  caseForm,
  tubForm,
  logForm,
  scanForm,
  primariesForm,
  cutsForm,
  wrapsForm,
  solidsForm,
  asBuiltForm,
  pressuresForm,
  ratiosForm,
  brakesForm,
  fuelForm,
  transferForm,
  heightsForm,
  barForCoilForm,
  coilForBarForm,
  ladderForm,
  benchTestForm,
  floorForm,
  adjustersForm,
  setUpForm,
  weighingForm,
  stringsForm,
  bumpSteerForm,
  scalesForm,
  levelsForm,
  surveyForm,
  routeForm,
  checkForm,
  problemsForm,
  noneForm,
]);

/** The same without leave to write: answers are handed on as they are. */
type Fixed<T> = unknown extends T ? T : T extends object ? { readonly [K in keyof T]: Fixed<T[K]> } : T;

export type AnswerOut = Fixed<z.input<typeof answerForm>>;

/** JSON Schema, draft 2020-12, of what any command prints under `--json`. */
export const answersSchema = (): unknown => ({
  title: 'Answers of the Flatpatch command line',
  ...z.toJSONSchema(answerForm),
});
