/** One car opened, one question asked, and the answer told: as words or as JSON, its warnings and its refusal aside. */
import type { AnswerOut } from './answers/index.ts';
import { openCar } from './car-argument.ts';
import {
  type CarOptions,
  complain,
  endWith,
  type MannerOptions,
  sayJson,
  sayLines,
  sayWarnings,
} from './command.ts';
import { EXIT } from './outcome.ts';

export type Found = Awaited<ReturnType<typeof openCar>>;

export interface Telling {
  readonly json: AnswerOut;
  /** Made only where words are asked for. */
  readonly lines: () => readonly string[];
  /** Why there is no answer: the command then ends with the exit code for it. */
  readonly refusal: string | undefined;
}

/** @throws BadInput where the car cannot be read */
export async function tell(
  file: string,
  options: CarOptions & MannerOptions,
  asking: (found: Found) => Telling | Promise<Telling>,
): Promise<void> {
  const found = await openCar(file, options);
  const { json, lines, refusal } = await asking(found);
  sayWarnings(found.car);
  if (options.json) sayJson(json);
  else if (refusal === undefined) sayLines(lines());
  if (refusal === undefined) return;
  complain(refusal);
  endWith(EXIT.notReached);
}

/** What a refusal says, or nothing where the answer was reached. */
export const refusalOf = (
  is: { readonly reached: true } | { readonly reached: false; readonly message: string },
): string | undefined => (is.reached ? undefined : is.message);
