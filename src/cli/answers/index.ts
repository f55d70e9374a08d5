/** All answers of the command line in one form, and its JSON Schema. */
import { z } from 'zod';
import { checkForm, problemsForm } from './check.ts';
import { cornerForm, workingForm } from './corner.ts';

export const answerForm = z.discriminatedUnion('answer', [cornerForm, workingForm, checkForm, problemsForm]);

export type AnswerOut = z.input<typeof answerForm>;

/** JSON Schema, draft 2020-12, of what any command prints under `--json`. */
export const answersSchema = (): unknown => ({
  title: 'Answers of the Flatpatch command line',
  ...z.toJSONSchema(answerForm),
});
