/** The ratio chart of a car as PDF, for what is typed at the stop of the ratios. */
import { openLately, ratiosOf, readDay } from '../questions/index.ts';
import type { PaperName } from '../sheets/index.ts';
import type { Speech } from '../units/show.ts';
import { CAR_FILE, carText, sourceOf, workshopNotes } from '../workshop/folder.ts';
import { VERSION } from '../workshop/home.ts';
import { today } from '../workshop/today.ts';
import type { Checked } from './asked.ts';
import { isMapping, wrong } from './asked-form.ts';
import { none, pdfResponse, refused } from './sheet.ts';

export interface AskedRatios {
  /** Fields of the stop as they are typed. */
  readonly asked: Readonly<Record<string, string>>;
  readonly paper: PaperName;
  readonly speech: Speech;
  readonly spec?: string;
}

export function askedRatioSheet(body: unknown): Checked<AskedRatios> {
  if (!isMapping(body)) return wrong('Send { asked, paper, units, spec }.');
  const { asked = {}, paper = 'A4', units = 'mm-N', spec } = body;
  if (!isMapping(asked) || Object.values(asked).some((each) => typeof each !== 'string'))
    return wrong('"asked" is texts by the names of their fields.');
  if (paper !== 'A4' && paper !== 'Letter') return wrong('"paper" is A4 or Letter.');
  if (units !== 'mm-N' && units !== 'in-lbf') return wrong('"units" is mm-N or in-lbf.');
  if (spec !== undefined && typeof spec !== 'string') return wrong('"spec" is the name of a spec.');
  const texts = asked as Readonly<Record<string, string>>;
  return { ok: true, is: { asked: texts, paper, speech: units, ...(spec === undefined ? {} : { spec }) } };
}

/** @throws FolderError where there is no such car */
export async function ratioSheetResponse(
  home: string,
  id: string,
  { asked, paper, speech, spec }: AskedRatios,
): Promise<Response> {
  const read = openLately(sourceOf(await carText(home, id), `${id}/${CAR_FILE}`, spec));
  if (!read.ok) return refused(read.problems);
  const { wrong: amiss, question } = readDay('ratios', asked, read.car);
  if (question?.name !== 'ratios') return refused([none(Object.values(amiss).join('; '))]);
  const matter = ratiosOf(read.car, question.asked);
  if (!matter.reached) return refused([none(matter.message)]);
  const { name: workshop } = await workshopNotes(home);
  // the printer's fonts take their time to load: they come with the first sheet
  const { ratioPdf } = await import('../paper/index.ts');
  const on = { car: read.car, workshop, date: today(), version: VERSION, paper, speech };
  return pdfResponse(await ratioPdf({ ...on, matter }), `${id}-ratios`);
}
