/** Sheets of a set of primaries as PDF: the set is sent, checked against the car as it is filed, and laid out. */
import { join } from 'node:path';
import {
  type CarPart,
  openLately,
  primariesShop,
  type ScanInCar,
  scanForms,
  scanOf,
  setFiled,
} from '../questions/index.ts';
import type { PaperName } from '../sheets/index.ts';
import type { Speech } from '../units/show.ts';
import { CAR_FILE, carText, readScan, sourceOf, workshopNotes } from '../workshop/folder.ts';
import { VERSION } from '../workshop/home.ts';
import { today } from '../workshop/today.ts';
import type { Checked } from './asked.ts';
import { isMapping, wrong } from './asked-form.ts';
import { none, pdfResponse, refused } from './sheet.ts';

export interface AskedPrimaries {
  readonly bank: 'left' | 'right';
  /** Which part of the bank, where it has several. */
  readonly part?: string;
  /** The set in its exchange form, as text. */
  readonly set: string;
  readonly paper: PaperName;
  readonly speech: Speech;
  readonly spec?: string;
}

export function askedPrimaries(body: unknown): Checked<AskedPrimaries> {
  if (!isMapping(body)) return wrong('Send { bank, part, set, paper, units, spec }.');
  const { bank, part, set, paper = 'A4', units = 'mm-N', spec } = body;
  if (bank !== 'left' && bank !== 'right') return wrong('"bank" is left or right.');
  if (typeof set !== 'string') return wrong('"set" is the text of a set of primaries.');
  if (paper !== 'A4' && paper !== 'Letter') return wrong('"paper" is A4 or Letter.');
  if (units !== 'mm-N' && units !== 'in-lbf') return wrong('"units" is mm-N or in-lbf.');
  if (part !== undefined && typeof part !== 'string')
    return wrong('"part" is the name of a part of the bank.');
  if (spec !== undefined && typeof spec !== 'string') return wrong('"spec" is the name of a spec.');
  return {
    ok: true,
    is: {
      bank,
      set,
      paper,
      speech: units,
      ...(part === undefined ? {} : { part }),
      ...(spec === undefined ? {} : { spec }),
    },
  };
}

/** @throws FolderError where there is no such car, or a scan that it names is not there */
export async function primariesSheetResponse(
  home: string,
  id: string,
  { bank, part: partName, set: text, paper, speech, spec }: AskedPrimaries,
): Promise<Response> {
  const read = openLately(sourceOf(await carText(home, id), `${id}/${CAR_FILE}`, spec));
  if (!read.ok) return refused(read.problems);
  const { car } = read;
  const scans: ScanInCar[] = [];
  for (const [name, { file }] of Object.entries(scanForms(car))) {
    const is = scanOf(car, name, new Uint8Array(await readScan(join(home, id), file)));
    if (!is.reached) return refused(is.problems);
    scans.push(is);
  }
  const is = setFiled(car, { side: bank, part: partName, text }, scans);
  if (!is.reached) {
    return refused([
      none(
        is.what === 'set'
          ? `The set does not suit the car as it is filed now: ${is.breaches[0]}`
          : is.message,
      ),
    ]);
  }
  const { set, part } = is;
  const looked = is.looked();
  const { name: workshop } = await workshopNotes(home);
  // the printer's fonts take their time to load: they come with the first sheet
  const { primariesPdf } = await import('../paper/index.ts');
  const pdf = await primariesPdf({
    car,
    workshop,
    date: today(),
    version: VERSION,
    paper,
    speech,
    matter: {
      side: bank,
      ...(part.name === undefined ? {} : { part }),
      set,
      shop: primariesShop(is.car, bank, set),
      notes: is.put.notes,
      ...(looked === undefined ? {} : { looked }),
    },
  });
  return pdfResponse(pdf, fileName(id, part));
}

/** A name of a part may hold what is none of a file's. */
const fileName = (id: string, { side, name }: CarPart): string =>
  [id, 'primaries', side, ...(name === undefined ? [] : [name.replace(/[^\w.+-]+/g, '-')])].join('-');
