/** A sheet of a car as PDF, worked out and laid out here because the page has no printer's fonts. */

import type { Car, CarRead, CarSource } from '../car/read.ts';
import type { Problem } from '../measured/problem.ts';
import { type BarAsked, barForCoil } from '../questions/bar-for-coil.ts';
import { carWithBar } from '../questions/bar-in-place.ts';
import type { Wheel } from '../questions/figure.ts';
import { openCar } from '../questions/open-car.ts';
import { CAR_FILE, carText, sourceOf, workshopNotes } from '../workshop/folder.ts';
import { VERSION } from '../workshop/home.ts';
import { today } from '../workshop/today.ts';
import type { AskedSheet } from './asked.ts';

/** @throws FolderError where there is no such car */
export async function sheetResponse(home: string, id: string, asked: AskedSheet): Promise<Response> {
  const { kind, spec, bar, ...rest } = asked;
  const source = sourceOf(await carText(home, id), `${id}/${CAR_FILE}`, spec);
  const filed = openCar(source);
  if (!filed.ok) return refused(filed.problems);
  const read = bar === undefined ? filed : withBar(source, filed.car, rest.wheel, bar);
  if (!read.ok) return refused(read.problems);
  const { name: workshop } = await workshopNotes(home);
  // the printer's fonts take their time to load: they come with the first sheet
  const { NoSheet, sheetPdf } = await import('../paper/index.ts');
  try {
    const pdf = await sheetPdf(kind, { ...rest, car: read.car, workshop, date: today(), version: VERSION });
    return new Response(new Uint8Array(pdf), {
      headers: {
        'Content-Type': 'application/pdf',
        'Content-Disposition': `inline; filename="${id}-${kind}-${rest.wheel.end}-${rest.wheel.side}.pdf"`,
      },
    });
  } catch (reason) {
    if (!(reason instanceof NoSheet)) throw reason;
    return refused([none(reason.message)]);
  }
}

const none = (message: string): Problem => ({ code: 'sheet/none', message, path: '', weight: 'error' });

/** The car with the bar that is asked for in the coil's place. */
function withBar(source: CarSource, car: Car, wheel: Wheel, asked: BarAsked): CarRead {
  const proposal = barForCoil(car, wheel, asked);
  return proposal.reached
    ? carWithBar(source, car, proposal)
    : { ok: false, problems: [none(proposal.message)] };
}

const refused = (problems: readonly Problem[]): Response => Response.json({ problems }, { status: 422 });
