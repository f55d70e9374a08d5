/** All answers of the command line in one form, and its JSON Schema. */
import { z } from 'zod';
import { axleForm, carForm } from './axle.ts';
import { checkForm, problemsForm } from './check.ts';
import { cornerForm, workingForm } from './corner.ts';
import { compareForm, curvesForm } from './curves.ts';

export const answerForm = z.discriminatedUnion('answer', [
  cornerForm,
  axleForm,
  carForm,
  curvesForm,
  workingForm,
  compareForm,
  checkForm,
  problemsForm,
]);

export type AnswerOut = z.input<typeof answerForm>;

/** JSON Schema, draft 2020-12, of what any command prints under `--json`. */
export const answersSchema = (): unknown => ({
  title: 'Answers of the Flatpatch command line',
  ...z.toJSONSchema(answerForm),
});
