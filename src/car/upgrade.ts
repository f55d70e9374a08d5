/**
 * Car files of older versions, brought up to the present form.
 *
 * Each step turns version n into n + 1 and is never edited once released; a file of every released version is
 * kept in tests/old-files for ever.
 */
import { CAR_FILE_VERSION } from './form/car.ts';

type PlainFile = Record<string, unknown>;

const STEPS: Readonly<Record<number, (file: PlainFile) => PlainFile>> = {};

export type Upgrade =
  | { readonly ok: true; readonly file: PlainFile }
  | { readonly ok: false; readonly why: string };

export function upgrade(file: PlainFile): Upgrade {
  const { flatpatch } = file;
  if (typeof flatpatch !== 'number' || !Number.isInteger(flatpatch) || flatpatch < 1) {
    return {
      ok: false,
      why: `The first key must say the version of the form: flatpatch: ${CAR_FILE_VERSION}.`,
    };
  }
  if (flatpatch > CAR_FILE_VERSION) {
    return {
      ok: false,
      why: `The file is of version ${flatpatch}; this program reads up to ${CAR_FILE_VERSION}. A newer Flatpatch wrote it.`,
    };
  }
  let present = file;
  for (let version = flatpatch; version < CAR_FILE_VERSION; version += 1) present = STEPS[version]!(present);
  return { ok: true, file: present };
}
