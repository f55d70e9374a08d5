/** Writes a sheet as PDF to a file, or to the output for `-`. */
import { writeFile } from 'node:fs/promises';
import type { AskedOf, PaperName, SheetKind } from '../sheets/index.ts';
import { complain } from './command.ts';
import { badAsk, NotReached } from './outcome.ts';

export const PAPERS: readonly PaperName[] = ['A4', 'Letter'];

/** @throws NotReached where there is no such sheet; BadInput where the file cannot be written */
export async function writeSheet<K extends SheetKind>(
  kind: K,
  asked: AskedOf[K],
  out: string,
): Promise<void> {
  // the printer's fonts take their time to load, which no other command should pay
  const { NoSheet, sheetPdf } = await import('../paper/index.ts');
  const pdf = await sheetPdf(kind, asked).catch((reason: unknown) => {
    if (reason instanceof NoSheet) throw new NotReached(reason.message);
    throw reason;
  });
  await writePdf(pdf, asked.paper, out);
}

/** @throws BadInput where the file cannot be written */
export async function writePdf(pdf: Uint8Array, paper: PaperName, out: string): Promise<void> {
  if (out === '-') {
    process.stdout.write(pdf);
    return;
  }
  try {
    await writeFile(out, pdf);
  } catch (reason) {
    throw badAsk('asked/out', `"${out}" cannot be written: ${(reason as NodeJS.ErrnoException).code}.`);
  }
  complain(`${out}: ${pdf.length} bytes, ${paper}.`);
}
