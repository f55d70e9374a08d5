/** Slips in the gears: a gear no taller than the one below, a pair that cannot stand at the shafts, a brake sheet out of order. */
import type { Problem } from '../measured/problem.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';
import type { Teeth } from './teeth.ts';

type Form = Placed<RawCar>;

const ratio = ({ driver, driven }: Teeth): number => driven / driver;

export const checkGearbox = (form: Form): readonly Problem[] => [
  ...fittedRises(form),
  ...pairsFit(form),
  ...sheetRises(form),
  ...growthWhole(form),
];

const tell = (
  code: string,
  path: string,
  message: string,
  remedy: string,
  weight: Problem['weight'] = 'error',
): Problem => ({ code, path, message: `${message}.`, remedy, weight });

function fittedRises({ gearbox }: Form): Problem[] {
  if (gearbox === undefined) return [];
  const slips = gearbox.fitted.flatMap((pair, k) => {
    const below = gearbox.fitted[k - 1];
    return below !== undefined && ratio(pair) >= ratio(below)
      ? [
          tell(
            'gearbox/order',
            `gearbox.fitted.${k}`,
            `Gear ${k + 1}, ${pair.text}, is no taller than gear ${k}, ${below.text}`,
            'First gear first; the driver’s teeth stand before the driven’s.',
          ),
        ]
      : [];
  });
  const { final } = gearbox;
  if (final.driver < final.driven) return slips;
  return [
    ...slips,
    tell(
      'gearbox/final',
      'gearbox.final',
      `The final drive ${final.text} turns the wheels no slower than the gearbox`,
      'The pinion’s teeth stand before the crown wheel’s.',
    ),
  ];
}

/** More than a module off the distance of its standard height no pair was ever cut. */
function pairsFit({ gearbox }: Form): Problem[] {
  if (gearbox?.centreDistance === undefined) return [];
  const distance = gearbox.centreDistance.value;
  const off = (pair: Teeth, module: number | undefined, path: string): Problem[] => {
    if (module === undefined) return [];
    const standard = (module * (pair.driver + pair.driven)) / 2;
    if (Math.abs(standard - distance) <= module) return [];
    const mm = (length: number): string => `${(1000 * length).toFixed(1)} mm`;
    return [
      tell(
        'gearbox/distance',
        path,
        `${pair.text} wants its shafts ${mm(standard)} apart at a module of ${mm(module)}; they are ${mm(distance)} apart`,
        'Of another box, or teeth counted wrong? Count both wheels again.',
        'warning',
      ),
    ];
  };
  return [
    ...gearbox.fitted.flatMap((pair, k) => off(pair, gearbox.module?.value, `gearbox.fitted.${k}`)),
    ...(gearbox.stock ?? []).flatMap(({ pair, module }, k) =>
      off(pair, (module ?? gearbox.module)?.value, `gearbox.stock.${k}.pair`),
    ),
  ];
}

function sheetRises({ engine }: Form): Problem[] {
  const sheet = engine?.brakeSheet ?? [];
  return sheet.flatMap(({ speed }, k) =>
    k > 0 && speed.value <= sheet[k - 1]!.speed.value
      ? [
          tell(
            'engine/brake-sheet',
            `engine.brakeSheet.${k}.speed`,
            `The brake sheet does not rise: ${speed.text} comes after ${sheet[k - 1]!.speed.text}`,
            'Lowest engine speed first, each once.',
          ),
        ]
      : [],
  );
}

function growthWhole({ rolling }: Form): Problem[] {
  if (rolling === undefined) return [];
  const missing = rolling.growth === undefined ? 'growth' : 'growthSpeed';
  if ((rolling.growth === undefined) === (rolling.growthSpeed === undefined)) return [];
  return [
    tell(
      'rolling/growth',
      'rolling',
      `The growth of the tyre needs both growth and growthSpeed; ${missing} is missing`,
      'So much per cent, at which speed?',
    ),
  ];
}
