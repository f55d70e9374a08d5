/**
 * What is wrong with a survey before any sum is done: names, doubles, numbers, lengths of nothing, units.
 *
 * In    a survey
 * Out   problems, all at once
 */
import { distance, type Vec3 } from '../maths/vec3.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import {
  CAR_SET,
  datumId,
  pointNames,
  pointsOf,
  pointsOfRule,
  type Survey,
  type SurveyReading,
} from './network.ts';

export function checkSurvey(survey: Survey): readonly Problem[] {
  const names = pointNames(survey);
  return [
    ...survey.readings.flatMap((reading) => checkReading(reading)),
    ...checkDoubles(survey),
    ...survey.datum.flatMap((rule) => {
      const path = datumId(rule);
      const value = 'at' in rule ? rule.at : 'mean' in rule ? rule.mean : rule.difference;
      return [
        ...pointsOfRule(rule).flatMap((name) => unknownPoint(name, names, path)),
        ...(Number.isFinite(value) ? [] : [notFinite(path)]),
        ...(rule.u === undefined ? [] : checkSpread(rule.u, path)),
      ];
    }),
    ...Object.entries(survey.approximate ?? {}).flatMap(([name, place]) => [
      ...unknownPoint(name, names, `approximate place of ${name}`),
      ...(place.every(Number.isFinite) ? [] : [notFinite(`approximate place of ${name}`)]),
    ]),
    ...checkUnits(survey),
  ];
}

const problem = (code: string, path: string, message: string, remedy?: string): Problem => ({
  code: `survey/${code}`,
  path,
  message,
  ...(remedy === undefined ? {} : { remedy }),
  weight: 'error',
});

const notFinite = (path: string): Problem =>
  problem('not-a-number', path, `${path}: the value is not a finite number.`);

const checkSpread = (u: number, path: string): readonly Problem[] =>
  u > 0 && Number.isFinite(u)
    ? []
    : [
        problem(
          'no-spread',
          path,
          `${path}: the standard uncertainty is ${u}; it must be above zero.`,
          'Say how well the reading repeats: about 0.5 mm for a tape, 0.05 mm for a portable arm (common practice, no source).',
        ),
      ];

const unknownPoint = (name: string, names: readonly string[], path: string): readonly Problem[] => {
  if (names.includes(name)) return [];
  const like = nearest(name, names);
  const hint = like === undefined ? '' : ` Did you mean "${like}"?`;
  return [problem('unknown-point', path, `${path}: no reading touches a point "${name}".${hint}`)];
};

function checkReading(reading: SurveyReading): readonly Problem[] {
  const { id, u } = reading;
  const found: Problem[] = [...checkSpread(u, id)];
  const values = reading.kind === 'point' ? reading.xyz : [reading.value];
  if (!values.every(Number.isFinite)) found.push(notFinite(id));
  if ((reading.kind === 'distance' || reading.kind === 'plumb') && reading.value <= 0) {
    found.push(
      problem(
        'length-of-nothing',
        id,
        `${id}: the length from ${reading.from} to ${reading.to} is ${reading.value} m; it must be above zero.`,
      ),
    );
  }
  if ('from' in reading && reading.from === reading.to) {
    found.push(problem('same-point-twice', id, `${id}: runs from ${reading.from} to itself.`));
  }
  return found;
}

function checkDoubles(survey: Survey): readonly Problem[] {
  const seen = new Set<string>();
  const found: Problem[] = [];
  for (const id of [...survey.readings.map((r) => r.id), ...survey.datum.map(datumId)]) {
    if (seen.has(id)) {
      found.push(
        problem('same-id', id, `Two readings are called "${id}".`, 'Give each reading a name of its own.'),
      );
    }
    seen.add(id);
  }
  return found;
}

/** Factors by which a list is out when its unit was taken for another. */
const MISTAKEN_UNITS: readonly { readonly factor: number; readonly say: string }[] = [
  { factor: 25.4, say: 'inches were taken for millimetres' },
  { factor: 1 / 25.4, say: 'millimetres were taken for inches' },
  { factor: 1000, say: 'metres were taken for millimetres' },
  { factor: 1e-3, say: 'millimetres were taken for metres' },
  { factor: 10, say: 'centimetres were taken for millimetres' },
  { factor: 0.1, say: 'millimetres were taken for centimetres' },
  { factor: 100, say: 'metres were taken for centimetres' },
  { factor: 0.01, say: 'centimetres were taken for metres' },
  { factor: 12, say: 'feet were taken for inches' },
];

/**
 * A set that is out of scale against something else, told with the unit that would explain it.
 *
 * @param ratio what the other evidence says over what the set says
 */
export function unitProblem(set: string, ratio: number, against: string): Problem | undefined {
  // a ratio that no unit explains is a wrong point or a wrong length: left to the outlier tests
  const match = MISTAKEN_UNITS.find(({ factor }) => Math.abs(ratio / factor - 1) < 0.03);
  if (match === undefined) return undefined;
  return problem(
    'unit-suspected',
    `set ${set}`,
    `Set "${set}" is ${ratio.toPrecision(4)} times too small against ${against}: it looks as if ${match.say}.`,
    'Read the file again with its own unit.',
  );
}

export const leftHanded = (set: string, against: string): Problem =>
  problem(
    'left-handed',
    `set ${set}`,
    `Set "${set}" is the mirror image of ${against}: its frame is left-handed.`,
    'Change the sign of one column, or swap two columns, as the instrument wrote them.',
  );

/** Lengths whose two ends were both touched in one arm set tell the scale of that set. */
function checkUnits(survey: Survey): readonly Problem[] {
  const sets = new Map<string, Map<string, Vec3>>();
  for (const r of survey.readings) {
    if (r.kind !== 'point') continue;
    if (!sets.has(r.set)) sets.set(r.set, new Map());
    sets.get(r.set)!.set(r.point, r.xyz);
  }
  return [...sets].flatMap(([set, points]) => {
    const ratios = survey.readings.flatMap((r) => {
      if (r.kind !== 'distance') return [];
      const [a, b] = pointsOf(r).map((name) => points.get(name));
      const seen = a === undefined || b === undefined ? 0 : distance(a, b);
      return seen > 0 && r.value > 0 ? [r.value / seen] : [];
    });
    // one length alone may be the blunder; two that agree are evidence
    if (ratios.length < 2) return [];
    const middle = [...ratios].sort((p, q) => p - q)[Math.floor(ratios.length / 2)]!;
    const agreeing = ratios.filter((ratio) => Math.abs(ratio / middle - 1) < 0.03).length;
    if (agreeing < 2) return [];
    const told = unitProblem(set === CAR_SET ? 'car' : set, middle, 'the lengths taken between its points');
    return told === undefined ? [] : [told];
  });
}
