/** A sheet of a car as PDF, worked out and laid out here because the page has no printer's fonts. */

import type { Car, CarRead, CarSource } from '../car/read.ts';
import type { Problem } from '../measured/problem.ts';
import { type BarAsked, barForCoil } from '../questions/bar-for-coil.ts';
import { carWithBar } from '../questions/bar-in-place.ts';
import type { Wheel } from '../questions/figure.ts';
import { openLately } from '../questions/open-car.ts';
import { CAR_FILE, carText, sourceOf, workshopNotes } from '../workshop/folder.ts';
import { VERSION } from '../workshop/home.ts';
import { today } from '../workshop/today.ts';
import { type AskedSheet, isAskedOfCorner, isAskedOfFloor } from './asked.ts';
import { checkedDoing } from './asked-doing.ts';

/** @throws FolderError where there is no such car */
export async function sheetResponse(home: string, id: string, asked: AskedSheet): Promise<Response> {
  const text = await carText(home, id);
  const source = sourceOf(text, `${id}/${CAR_FILE}`, asked.spec);
  const filed = openLately(source);
  if (!filed.ok) return refused(filed.problems);
  const { name: workshop } = await workshopNotes(home);
  const on = { workshop, date: today(), version: VERSION, paper: asked.paper, speech: asked.speech };
  // the printer's fonts take their time to load: they come with the first sheet
  const { NoSheet, sheetPdf } = await import('../paper/index.ts');
  try {
    if (isAskedOfFloor(asked)) {
      const { kind } = asked;
      const pdf = await sheetPdf(kind, { ...on, car: filed.car, fileVersion: text.version });
      return pdfResponse(pdf, `${id}-${kind}`);
    }
    if (!isAskedOfCorner(asked)) {
      const { kind, joint, doing } = asked;
      const found = doing === undefined ? undefined : checkedDoing(doing, filed.car);
      if (found?.ok === false) return refused([found.problem]);
      const more = {
        ...(joint === undefined ? {} : { joint }),
        ...(found === undefined ? {} : { doing: found.is }),
      };
      return pdfResponse(await sheetPdf(kind, { ...on, ...more, car: filed.car }), `${id}-${kind}`);
    }
    const { kind, bar, wheel, at } = asked;
    const read = bar === undefined ? filed : withBar(source, filed.car, wheel, bar);
    if (!read.ok) return refused(read.problems);
    const pdf = await sheetPdf(kind, { ...on, car: read.car, wheel, at });
    return pdfResponse(pdf, `${id}-${kind}-${wheel.end}-${wheel.side}`);
  } catch (reason) {
    if (!(reason instanceof NoSheet)) throw reason;
    return refused([none(reason.message)]);
  }
}

export const pdfResponse = (pdf: Buffer, name: string): Response =>
  new Response(new Uint8Array(pdf), {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${name}.pdf"`,
    },
  });

export const none = (message: string): Problem => ({
  code: 'sheet/none',
  message,
  path: '',
  weight: 'error',
});

/** The car with the bar that is asked for in the coil's place. */
function withBar(source: CarSource, car: Car, wheel: Wheel, asked: BarAsked): CarRead {
  const proposal = barForCoil(car, wheel, asked);
  return proposal.reached
    ? carWithBar(source, car, proposal)
    : { ok: false, problems: [none(proposal.message)] };
}

export const refused = (problems: readonly Problem[]): Response =>
  Response.json({ problems }, { status: 422 });
