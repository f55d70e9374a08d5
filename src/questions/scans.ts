/** A scan of the car file: read, looked over, its unit doubted by its size, laid into the car by its datum points. */
import type { ExhaustForm } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Problem } from '../measured/problem.ts';
import { type LaidIn, type LookedOver, laidIn, lookOver, possibleUnits, readMesh } from '../scan/index.ts';
import type { Metre } from '../units/quantity.ts';
import type { ScanInCar } from './primaries-problem.ts';

export type ScanForm = NonNullable<ExhaustForm['scans']>[string];

export interface ScanReached extends ScanInCar {
  readonly reached: true;
  /** As in the file, lengths in the unit of the scan. */
  readonly like: LookedOver;
  readonly off: LaidIn['off'];
  readonly rms: Metre;
  /** Told beside it; nothing of it keeps the scan from being used. */
  readonly doubts: readonly string[];
}

export type ScanAnswer = ScanReached | { readonly reached: false; readonly problems: readonly Problem[] };

export const scanForms = (car: Car): Readonly<Record<string, ScanForm>> => car.form.exhaust?.scans ?? {};

/** Datum points that meet worse than this were read at another place, or the scan has warped (common practice, no source). */
const DATUM_OFF: Metre = 0.002;
/** Of the rims beyond the outer edge: shorter ones let no pipe through unseen. In shares of the longest side. */
const HOLE_SHARE = 0.1;
/** Turned edges by chance are few; more are told. */
const TURNED_SHARE = 0.001;

/** @param bytes  of the file that the scan names; undefined where it is not there */
export function scanOf(car: Car, name: string, bytes: Uint8Array | undefined): ScanAnswer {
  const forms = scanForms(car);
  const form = Object.hasOwn(forms, name) ? forms[name] : undefined;
  const failed = (code: string, message: string, remedy: string): ScanAnswer => ({
    reached: false,
    problems: [
      {
        code,
        path: `exhaust.scans.${name}`,
        message,
        remedy,
        weight: 'error',
        ...(form === undefined ? {} : { file: form.file }),
      },
    ],
  });
  if (form === undefined) {
    const names = Object.keys(forms);
    return failed(
      'scan/unknown',
      `The car file names no scan "${name}".`,
      names.length === 0 ? 'Name it under exhaust, scans.' : `It names ${names.join(', ')}.`,
    );
  }
  if (bytes === undefined) {
    return failed('scan/no-file', `There is no scan "${form.file}" here.`, 'Put it beside the car file.');
  }
  const read = readMesh(bytes, form.file);
  if (!read.ok) return failed('scan/unreadable', read.message, read.remedy);
  const like = lookOver(read.mesh);
  const longest = Math.max(...like.box.max.map((value, k) => value - like.box.min[k]!));
  const could = possibleUnits(longest);
  if (!could.includes(form.unit)) {
    return failed(
      'scan/unit',
      `In ${form.unit} the scan is ${shown(longest)} ${form.unit} long, and no part of a car is that.`,
      could.length === 0
        ? 'Look whether the file is the right one.'
        : `Written in ${could.join(' or ')} it could be one.`,
    );
  }
  const numbers = new Numbers(car.values);
  const laid = laidIn(
    read.mesh,
    form.unit,
    form.datums.map((datum) => ({
      name: datum.name,
      onScan: datum.onScan,
      onCar: numbers.point(datum.onCar),
    })),
  );
  if (!laid.ok) return failed('scan/datums', laid.message, laid.remedy);
  const { mesh, off, rms } = laid;
  return { reached: true, name, mesh, like, off, rms, doubts: doubtsOf(like, longest, off, form) };
}

function doubtsOf(like: LookedOver, longest: number, off: LaidIn['off'], { unit }: ScanForm): string[] {
  // the outer rim of an open shell is the longest; a closed one has none
  const holes = like.holes.slice(1).filter(({ rim }) => rim > HOLE_SHARE * longest);
  return [
    ...off
      .filter(({ by }) => by > DATUM_OFF)
      .map(
        ({ name, by }) =>
          `Datum point ${name} is ${(1000 * by).toFixed(1)} mm off the others: read it again.`,
      ),
    ...holes.map(
      ({ rim }) =>
        `A hole with a rim of ${shown(rim)} ${unit}: what is behind it is not seen, so measure there by hand.`,
    ),
    ...(like.turned > TURNED_SHARE * like.triangles
      ? [
          `${like.turned} edges lie between faces turned opposite ways; clearance is taken from either side of them.`,
        ]
      : []),
    ...(like.slivers > 0
      ? [`${like.slivers} triangles have next to no area; they count as the lines that they are.`]
      : []),
  ];
}

const shown = (value: number): string => String(Number(value.toPrecision(3)));
