/**
 * The survey of the car file, adjusted: where its points stand, and how they move with the survey's readings.
 *
 * In    the survey part of the file and the texts of the CSV files it names
 * Out   the adjustment, points by their path, and problems as the rest of the file's
 * Not   the statistics themselves: survey/ does those
 */
import type { Vec3 } from '../maths/vec3.ts';
import { instrumentClass, ownUncertainty } from '../measured/instrument.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import type { Reading } from '../measured/reading.ts';
import type { SpreadInput } from '../measured/spread.ts';
import { type Adjustment, adjustSurvey } from '../survey/adjust.ts';
import { AdjustmentDidNotSettle } from '../survey/balance.ts';
import { readPointsCsv } from '../survey/csv.ts';
import { CAR_SET, type DatumRule, pointNames, type SurveyReading } from '../survey/network.ts';
import { readAmount } from '../units/read.ts';
import type { RawAmount } from './field.ts';
import type { RawCar } from './form/car.ts';
import { pointsInWords } from './point-words.ts';

export interface SurveyOutcome {
  readonly adjustment: Adjustment;
  /** How the lists were understood: delimiter, decimal sign, unit. */
  readonly said: readonly string[];
  /** Spread inputs of the points that came from the survey, and which numbers they take care of. */
  readonly moves: (readings: readonly Reading[]) => {
    readonly inputs: readonly SpreadInput[];
    readonly taken: ReadonlySet<number>;
  };
}

export interface SurveyResult {
  readonly outcome?: SurveyOutcome;
  /** Place of a point of the form by its path, such as `front.left.points.lowerOuter`. */
  readonly pointAt: (path: string) => { readonly value: Vec3; readonly u: Vec3 } | undefined;
  readonly problems: readonly Problem[];
}

type RawSurvey = NonNullable<RawCar['survey']>;

/** The survey's name of a point of the form: without the `points` in the middle. */
const surveyName = (path: string): string => path.replace('.points.', '.');

/** The last survey worked out: a car is read again at every edit, and the survey is seldom what was edited. */
let last: { readonly key: string; readonly result: SurveyResult } | undefined;

/** @param mirrored paths that take the other side's part: their points are surveyed there, if anywhere */
export function surveyOf(
  raw: RawCar,
  files: Readonly<Record<string, string>>,
  mirrored: readonly string[] = [],
): SurveyResult {
  if (raw.survey === undefined) return adjusted(raw, files, mirrored);
  const points = (['front', 'rear'] as const).map((end) => [raw[end].left.points, raw[end].right.points]);
  const key = JSON.stringify([
    mirrored,
    raw.survey,
    raw.instruments,
    points,
    Object.values(raw.survey.sets ?? {}).map(({ file }) => files[file]),
  ]);
  if (last?.key !== key) last = { key, result: adjusted(raw, files, mirrored) };
  return last.result;
}

function adjusted(
  raw: RawCar,
  files: Readonly<Record<string, string>>,
  mirrored: readonly string[],
): SurveyResult {
  const wanted = pointsSaidSurveyed(raw).filter(
    (path) => !mirrored.some((each) => path.startsWith(`${each}.`) || path === each),
  );
  if (raw.survey === undefined) {
    return { pointAt: () => undefined, problems: wanted.map((path) => noSuchPoint(path, [])) };
  }
  const problems: Problem[] = [];
  const said: string[] = [];
  const readings = [
    ...armReadings(raw, raw.survey, files, problems, said),
    ...lengthReadings(raw, raw.survey, problems),
  ];
  const datum = datumRules(raw.survey, problems);
  if (problems.length > 0) return { pointAt: () => undefined, problems };
  try {
    const result = adjustSurvey({
      readings,
      datum,
      approximate: filedPlaces(raw, pointNames({ readings, datum })),
    });
    if (!result.ok) return { pointAt: () => undefined, problems: result.problems.map(inSurvey) };
    const adjustment = result.is;
    const byName = new Map(adjustment.points.map((point) => [point.name, point]));
    const lost = wanted.filter((path) => !byName.has(surveyName(path)));
    return {
      outcome: { adjustment, said, moves: (all) => movesOf(adjustment, all) },
      pointAt: (path) => {
        const point = byName.get(surveyName(path));
        return point === undefined ? undefined : { value: point.at, u: point.u };
      },
      problems: [
        ...lost.map((path) => noSuchPoint(path, [...byName.keys()])),
        ...result.warnings.map(inSurvey),
        ...doubts(adjustment),
      ],
    };
  } catch (reason) {
    if (!(reason instanceof AdjustmentDidNotSettle)) throw reason;
    return {
      pointAt: () => undefined,
      problems: [
        {
          code: 'survey/not-settled',
          path: 'survey',
          message: `The survey does not come to rest: ${reason.message}`,
          weight: 'error',
        },
      ],
    };
  }
}

/** What the adjustment found wrong with its readings: told with the car, so that no figure leans on it in silence. */
function doubts({ outliers, whole }: Adjustment): Problem[] {
  const told = (code: string, message: string): Problem => ({
    code,
    path: 'survey',
    message,
    weight: 'warning',
  });
  return [
    ...outliers.map(({ sentence }) => told('survey/does-not-fit', `Survey: ${pointsInWords(sentence)}`)),
    ...(whole.verdict === 'worse than claimed'
      ? [told('survey/worse-than-claimed', `Survey: ${whole.sentence}`)]
      : []),
  ];
}

const inSurvey = (problem: Problem): Problem => ({
  ...problem,
  path: 'survey',
  message:
    problem.path === '' || problem.message.includes(problem.path)
      ? problem.message
      : `${problem.path}: ${problem.message}`,
});

/** Paths of the points that the file says are surveyed. */
function pointsSaidSurveyed(raw: RawCar): string[] {
  const found: string[] = [];
  const walk = (node: unknown, path: string): void => {
    if (typeof node !== 'object' || node === null) return;
    if ('kind' in node && node.kind === 'point' && 'value' in node) {
      if (node.value === 'surveyed') found.push(path);
      return;
    }
    for (const [key, each] of Object.entries(node)) walk(each, path === '' ? key : `${path}.${key}`);
  };
  for (const end of ['front', 'rear'] as const) walk(raw[end], end);
  return found;
}

function noSuchPoint(path: string, known: readonly string[]): Problem {
  const near = nearest(surveyName(path), known);
  return {
    code: 'survey/no-such-point',
    path,
    message: `${surveyName(path)} is said to be surveyed, but the survey has no such point.`,
    remedy:
      near === undefined
        ? 'Add it to a set of the survey, or write its co-ordinates here.'
        : `Did the survey call it "${near}"?`,
    weight: 'error',
  };
}

/** Where the file itself says points are: good enough to start from, and it settles which way round a set lies. */
function filedPlaces(raw: RawCar, touched: readonly string[]): Record<string, Vec3> {
  const places: Record<string, Vec3> = {};
  for (const end of ['front', 'rear'] as const) {
    for (const side of ['left', 'right'] as const) {
      for (const [name, point] of Object.entries(raw[end][side].points)) {
        const own = `${end}.${side}.${name}`;
        if (point !== undefined && point.value !== 'surveyed' && touched.includes(own))
          places[own] = point.value;
      }
    }
  }
  return places;
}

/** Standard uncertainty of a survey reading: stated, or that of its instrument. */
function uncertaintyOf(raw: RawCar, amount: RawAmount): number {
  if (amount.u !== undefined) return amount.u;
  const name = amount.stamp.with;
  const named = name === undefined ? undefined : raw.instruments?.[name];
  return spreadOfInstrument(named, name ?? amount.notes.usual, amount.value);
}

function spreadOfInstrument(
  named: { readonly class: string; readonly spread?: string | undefined } | undefined,
  otherwise: string,
  value: number,
): number {
  const known = named?.spread === undefined ? undefined : readAmount(named.spread, 'm');
  if (known?.ok) return known.is.value;
  const kind = instrumentClass(named?.class ?? otherwise) ?? instrumentClass('tape')!;
  // its scale error counts here too: the adjustment takes readings one by one
  return Math.hypot(ownUncertainty(kind, value, 'm'), kind.shared * value);
}

function armReadings(
  raw: RawCar,
  survey: RawSurvey,
  files: Readonly<Record<string, string>>,
  problems: Problem[],
  said: string[],
): SurveyReading[] {
  return Object.entries(survey.sets ?? {}).flatMap(([name, set]) => {
    const text = Object.hasOwn(files, set.file) ? files[set.file] : undefined;
    const path = `survey.sets.${name}`;
    if (text === undefined) {
      problems.push({
        code: 'survey/no-file',
        path: `${path}.file`,
        message: `Set "${name}" names the file ${set.file}, which is not there.`,
        remedy: 'Put it beside the car file.',
        weight: 'error',
      });
      return [];
    }
    const spread = set.spread === undefined ? undefined : readAmount(set.spread, 'm');
    if (spread !== undefined && !spread.ok) {
      problems.push({
        code: 'field/unreadable',
        path: `${path}.spread`,
        message: `Spread of set "${name}" cannot be read: ${spread.why}.`,
        weight: 'error',
      });
      return [];
    }
    const instrument = set.with === undefined ? undefined : raw.instruments?.[set.with];
    const list = readPointsCsv(text, {
      set: set.frame === 'car' ? CAR_SET : name,
      unit: set.unit,
      file: set.file,
      ...(set.decimal === undefined ? {} : { decimal: set.decimal }),
      u: spread?.is.value ?? spreadOfInstrument(instrument, set.with ?? 'portable arm', 0),
    });
    if (!list.ok) {
      problems.push(...list.problems);
      return [];
    }
    said.push(...list.said);
    return [...list.is];
  });
}

/** What the file calls the kinds of length, and what the adjustment does. */
function lengthReadings(raw: RawCar, survey: RawSurvey, problems: Problem[]): SurveyReading[] {
  return (survey.lengths ?? []).flatMap((length, index): SurveyReading[] => {
    const { kind, from, to, axis, reading } = length;
    const u = uncertaintyOf(raw, reading);
    const value = reading.value;
    const tool = reading.stamp.with ?? reading.notes.usual;
    const path = `survey.lengths.${index}`;
    const lacks = (what: string): SurveyReading[] => {
      problems.push({
        code: 'survey/length-incomplete',
        path,
        message: `This ${kind} needs "${what}".`,
        weight: 'error',
      });
      return [];
    };
    const named = `${tool}, `;
    if (kind === 'length') {
      return to === undefined
        ? lacks('to')
        : [{ kind: 'distance', id: `${named}${from} to ${to}`, from, to, value, u }];
    }
    if (kind === 'floor length') {
      return to === undefined
        ? lacks('to')
        : [{ kind: 'plumb', id: `${named}${from} to ${to} on the floor`, from, to, value, u }];
    }
    if (kind === 'offset') {
      return axis === undefined
        ? lacks('axis')
        : [{ kind: 'offset', id: `${named}${axis} of ${from}`, point: from, axis, value, u }];
    }
    return to === undefined
      ? [{ kind: 'height', id: `${named}height of ${from}`, point: from, value, u }]
      : [{ kind: 'rise', id: `${named}${to} above ${from}`, from, to, value, u }];
  });
}

function datumRules(survey: RawSurvey, problems: Problem[]): DatumRule[] {
  return (survey.datum ?? []).flatMap((rule, index): DatumRule[] => {
    const [first, second] = rule.points;
    if (first === undefined) {
      problems.push({
        code: 'survey/datum-empty',
        path: `survey.datum.${index}`,
        message: 'This datum names no point.',
        weight: 'error',
      });
      return [];
    }
    const u = rule.at.u === undefined ? {} : { u: rule.at.u };
    return second === undefined
      ? [{ point: first, axis: rule.axis, at: rule.at.value, ...u }]
      : [{ pair: [first, second], axis: rule.axis, mean: rule.at.value, ...u }];
  });
}

/** Parts of a metre below which a survey reading does not move a co-ordinate: far under every digit shown. */
const NO_MOVE = 1e-12;

/**
 * Each reading of the survey moves all points through the adjustment, so that what is common to them (where the
 * axes lie) does not come in again and again as if it were each point's own.
 */
function movesOf(adjustment: Adjustment, readings: readonly Reading[]) {
  const rows = new Map<number, number>();
  const byPath = new Map(readings.map((reading) => [reading.path, reading]));
  adjustment.points.forEach((point, k) => {
    (['x', 'y', 'z'] as const).forEach((axis, component) => {
      const reading = byPath.get(`${formPath(point.name)}.${axis}`);
      if (reading?.text === 'surveyed') rows.set(reading.index, 3 * k + component);
    });
  });
  const inputs = adjustment.gainColumns.map(({ id, component, u }, column): SpreadInput => {
    const moves = [...rows].map(([index, row]) => [index, adjustment.gain[row]![column]! * u] as const);
    return {
      label: labelOf(id, component, byPath),
      path: `survey/${id}${component === '' ? '' : `.${component}`}`,
      moves: moves.filter(([, step]) => Math.abs(step) > NO_MOVE),
    };
  });
  return { inputs: inputs.filter((input) => input.moves.length > 0), taken: new Set(rows.keys()) };
}

/** What a survey reading is called in a list of shares: `rocker pivot, z, front left (survey, front stand)`. */
function labelOf(id: string, component: string, byPath: ReadonlyMap<string, Reading>): string {
  const [, set, point] = /^(.*): (\S+)$/.exec(id) ?? [];
  const reading = point === undefined ? undefined : byPath.get(`${formPath(point)}.${component}`);
  if (reading === undefined) return component === '' ? `survey: ${id}` : `survey: ${id}, ${component}`;
  const [end, side] = reading.path.split('.');
  return `${reading.means}, ${end} ${side} (survey, ${set})`;
}

/** Path in the form of a point that the survey names by end, side and point. */
function formPath(name: string): string {
  const [end, side, ...rest] = name.split('.');
  return [end, side, 'points', ...rest].join('.');
}
