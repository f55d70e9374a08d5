/** The survey of the car file, adjusted: where its points stand and how they move with the survey's readings. */
import type { Vec3 } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import type { Reading } from '../measured/reading.ts';
import type { SpreadInput } from '../measured/spread.ts';
import type { RawCar } from './form/car.ts';

export interface SurveyOutcome {
  readonly moves: (readings: readonly Reading[]) => {
    readonly inputs: readonly SpreadInput[];
    readonly taken: ReadonlySet<number>;
  };
}

export interface SurveyResult {
  readonly outcome?: SurveyOutcome;
  readonly pointAt: (path: string) => { readonly value: Vec3; readonly u: Vec3 } | undefined;
  readonly problems: readonly Problem[];
}

export function surveyOf(_raw: RawCar, _files: Readonly<Record<string, string>>): SurveyResult {
  return { pointAt: () => undefined, problems: [] };
}
