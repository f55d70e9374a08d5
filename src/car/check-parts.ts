/**
 * What belongs together beyond one corner's points: materials that the table knows, curves that run one way, and
 * the joints without which an anti-roll bar or a heave spring does nothing.
 */
import { springMaterial, springMaterialsLike } from '../materials/spring-material.ts';
import { cross, length, sub } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import type { Reading } from '../measured/reading.ts';
import { readAnyAmount } from '../units/read.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

type Form = Placed<RawCar>;
type CornerForm = Form['front']['left'];

const ENDS = ['front', 'rear'] as const;
const SIDES = ['left', 'right'] as const;

/** A spread that an instrument is said to have must be an amount and not negative: it goes into every figure. */
export function instrumentSpreads({ instruments }: Pick<RawCar, 'instruments'>): readonly Problem[] {
  return Object.entries(instruments ?? {}).flatMap(([name, { spread }]): Problem[] => {
    if (spread === undefined) return [];
    const read = readAnyAmount(spread);
    const why = read.ok ? (read.is.value < 0 ? `"${spread}" is negative` : undefined) : read.why;
    if (why === undefined) return [];
    return [
      {
        code: 'instrument/spread',
        path: `instruments.${name}.spread`,
        message: `Instrument "${name}": its spread cannot be taken: ${why}.`,
        remedy: 'One standard uncertainty of one reading, such as 0.05 mm.',
        weight: 'error',
      },
    ];
  });
}

export function checkParts(form: Form): readonly Problem[] {
  return ENDS.flatMap((end) => [
    ...SIDES.flatMap((side) => cornerParts(form[end][side], `${end}.${side}`)),
    ...barParts(form, end),
    ...heaveParts(form, end),
  ]);
}

/** A wall has to fit into its tube twice. */
const walls = ({ members }: CornerForm, path: string): readonly Problem[] =>
  Object.entries(members ?? {}).flatMap(([name, member]) =>
    member?.wall === undefined || 2 * member.wall.value < member.outside.value
      ? []
      : [
          error(
            'member/wall',
            `${path}.members.${name}.wall`,
            'the wall is half the outside diameter or more',
            'Leave the wall out for a solid bar.',
          ),
        ],
  );

const error = (code: string, path: string, message: string, remedy: string): Problem => ({
  code,
  path,
  message: `${where(path)}: ${message}.`,
  remedy,
  weight: 'error',
});

const warning = (...told: Parameters<typeof error>): Problem => ({ ...error(...told), weight: 'warning' });

const where = (path: string): string => {
  const [end, side] = path.split('.');
  const head = `${end!.slice(0, 1).toUpperCase()}${end!.slice(1)}`;
  return side === 'left' || side === 'right' ? `${head} ${side}` : head;
};

interface Stock {
  readonly material?: string | undefined;
  readonly shearModulus?: Reading | undefined;
  readonly rate?: Reading | undefined;
}

/** A name that the table lacks is no harm where the modulus or the rate is given beside it; then it is only told. */
function material(stock: Stock | undefined, path: string): readonly Problem[] {
  if (stock?.material === undefined || springMaterial(stock.material) !== undefined) return [];
  const like = springMaterialsLike(stock.material);
  const enough = stock.shearModulus !== undefined || stock.rate !== undefined;
  const tell = enough ? warning : error;
  const found = tell(
    'material/unknown',
    `${path}.material`,
    `"${stock.material}" is not in the material table${enough ? '; stress and mass cannot be judged' : ''}`,
    like.length > 0
      ? `Did you mean ${like.map((name) => `"${name}"`).join(' or ')}?`
      : 'Give the shear modulus beside it.',
  );
  return [found];
}

function rising(
  rows: readonly Readonly<Record<string, Reading>>[] | undefined,
  column: string,
  path: string,
  what: string,
): readonly Problem[] {
  const values = (rows ?? []).map((row) => row[column]!.value);
  const at = values.findIndex((value, index) => index > 0 && value <= values[index - 1]!);
  if (at < 0) return [];
  return [
    error(
      'curve/not-rising',
      `${path}.${at}.${column}`,
      `the ${column} of the ${what} does not rise from row ${at} to row ${at + 1}`,
      'One row for each reading, smallest first.',
    ),
  ];
}

/** How far an anchor may stand off the rocker's axis before it is told, m: a bar that is bent in its bore. */
const OFF_AXIS = 0.003;

/** A bar lies on the rocker's axis and runs to its anchor; without the anchor its hand cannot be told. */
function anchor({ bar, points }: CornerForm, path: string): readonly Problem[] {
  if (bar === undefined) return [];
  const { barAnchor, rockerPivot, rockerAxis } = points;
  if (barAnchor === undefined) {
    return [
      warning(
        'bar/no-anchor',
        `${path}.points`,
        'where the anchor holds the torsion bar is not given (barAnchor), so nothing is said of its hand',
        'Measure the middle of the anchor spline.',
      ),
    ];
  }
  const axis = sub(rockerAxis.value, rockerPivot.value);
  const off = length(cross(axis, sub(barAnchor.value, rockerPivot.value))) / length(axis);
  if (!(off > OFF_AXIS)) return [];
  return [
    warning(
      'bar/off-axis',
      `${path}.points.barAnchor`,
      `the anchor of the torsion bar stands ${(off * 1000).toFixed(1)} mm off the rocker axis`,
      'Measure the anchor and the two points of the axis again.',
    ),
  ];
}

function cornerParts(corner: CornerForm, path: string): readonly Problem[] {
  const { bumpRubber } = corner;
  return [
    ...material(corner.coil, `${path}.coil`),
    ...material(corner.bar, `${path}.bar`),
    ...anchor(corner, path),
    ...walls(corner, path),
    ...rising(corner.damper?.curve, 'velocity', `${path}.damper.curve`, 'damper curve'),
    ...rising(bumpRubber?.curve, 'compression', `${path}.bumpRubber.curve`, 'bump rubber curve'),
    ...(bumpRubber !== undefined && bumpRubber.curve[0]!.compression.value !== 0
      ? [
          error(
            'curve/no-start',
            `${path}.bumpRubber.curve.0.compression`,
            'the bump rubber curve does not start at 0',
            'First row: compression: 0 mm, force: 0 N.',
          ),
        ]
      : []),
  ];
}

function barParts(form: Form, end: 'front' | 'rear'): readonly Problem[] {
  const bar = form[end].antiRollBar;
  if (bar === undefined) return [];
  const path = `${end}.antiRollBar`;
  const links = SIDES.flatMap((side) =>
    (['dropLinkRocker', 'dropLinkArm'] as const)
      .filter((name) => form[end][side].points[name] === undefined)
      .map((name) =>
        warning(
          'antiroll/no-link',
          `${end}.${side}.points`,
          `there is an anti-roll bar, but no point ${name}; the bar is left out`,
          'A bar works through its drop links: give dropLinkRocker and dropLinkArm on both sides.',
        ),
      ),
  );
  const { rate, shearModulus, material: name, bore, diameter } = bar.bar;
  return [
    ...links,
    ...material(bar.bar, `${path}.bar`),
    ...(bar.kind === 'T-bar' && bar.stemTop === undefined
      ? [
          error(
            'antiroll/no-stem',
            path,
            'a T-bar needs stemTop',
            'The middle of the cross arm, on the axis of the stem.',
          ),
        ]
      : []),
    ...(rate === undefined && shearModulus === undefined && name === undefined
      ? [
          error(
            'antiroll/no-rate',
            `${path}.bar`,
            'the anti-roll bar has no measured rate, no material and no shear modulus',
            'One of the three is needed.',
          ),
        ]
      : []),
    ...(bore !== undefined && bore.value >= diameter.value
      ? [
          error(
            'antiroll/bore',
            `${path}.bar.bore`,
            'the bore is not smaller than the anti-roll bar',
            'Measure both again.',
          ),
        ]
      : []),
  ];
}

function heaveParts(form: Form, end: 'front' | 'rear'): readonly Problem[] {
  if (form[end].heave === undefined) return [];
  return SIDES.filter((side) => form[end][side].points.heaveRocker === undefined).map((side) =>
    warning(
      'heave/no-eye',
      `${end}.${side}.points`,
      'there is a heave spring, but no point heaveRocker; it is left out',
      'Give heaveRocker on both sides.',
    ),
  );
}
