/**
 * What moves when the readings move.
 *
 * Every reading with an uncertainty is an input of its own; the scale error of an instrument moves all its
 * readings together; what came out of the survey moves with the survey's readings, through the adjustment.
 */
import type { Reading } from '../measured/reading.ts';
import type { SpreadInput } from '../measured/spread.ts';
import type { SurveyOutcome } from './surveyed.ts';

export function spreadInputs(
  readings: readonly Reading[],
  survey: SurveyOutcome | undefined,
): readonly SpreadInput[] {
  const inputs: SpreadInput[] = [];
  const fromSurvey = survey?.moves(readings) ?? { inputs: [], taken: new Set<number>() };
  for (const reading of readings) {
    if (reading.u === 0 || fromSurvey.taken.has(reading.index)) continue;
    inputs.push({ label: reading.means, path: reading.path, moves: [[reading.index, reading.u]] });
  }
  for (const [instrument, own] of byInstrument(readings)) {
    const moves = own
      .filter((each) => each.shared > 0 && each.value !== 0 && !fromSurvey.taken.has(each.index))
      .map((each) => [each.index, each.shared * each.value] as const);
    if (moves.length > 0)
      inputs.push({ label: `scale of ${instrument}`, path: `instruments.${instrument}`, moves });
  }
  return [...inputs, ...fromSurvey.inputs];
}

function byInstrument(readings: readonly Reading[]): ReadonlyMap<string, readonly Reading[]> {
  const groups = new Map<string, Reading[]>();
  for (const reading of readings) {
    if (reading.instrument === undefined) continue;
    groups.set(reading.instrument, [...(groups.get(reading.instrument) ?? []), reading]);
  }
  return groups;
}
