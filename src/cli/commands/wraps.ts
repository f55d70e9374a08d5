/** `flatpatch wraps`: templates in true size for a set of primaries. */
import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { primariesShop, primariesTemplates } from '../../questions/index.ts';
import type { PaperName } from '../../sheets/index.ts';
import { VERSION } from '../../workshop/home.ts';
import { today } from '../../workshop/today.ts';
import {
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
  tailLines,
} from '../command.ts';
import { NotReached } from '../outcome.ts';
import { checkedSet, onSet, partOut, type SetOptions } from '../primaries-asked.ts';
import { PAPERS } from '../sheet-file.ts';
import { tell } from '../tell.ts';
import { makeFolder, writeWhole } from '../whole-file.ts';

interface Options extends SetOptions, MannerOptions {
  readonly out: string;
  readonly form: 'svg' | 'pdf' | 'dxf';
  readonly paper: PaperName;
}

export function wrapsCommand(): Command {
  const made = command(
    'wraps',
    'Templates in true size for a set of primaries: cuts of its bends, merge cut of the collector, flange',
    [
      'flatpatch primaries ashgarth-501 --bank left --solution left.json && flatpatch wraps ashgarth-501 --bank left --solution left.json --out templates',
    ],
  );
  return speaking(onSet(onCar(made)))
    .requiredOption('--out <folder>', 'folder to write them to; made where it is not there')
    .addOption(
      new Option(
        '--form <form>',
        'pdf: one file to print; svg, dxf: a file each, for a screen or a cutting table',
      )
        .choices(['pdf', 'svg', 'dxf'])
        .default('pdf'),
    )
    .addOption(new Option('--paper <size>', 'paper of the pdf').choices(PAPERS).default('A4'))
    .addHelpText('after', '\nLay a rule on the printed ruler first: a printer that fits pages shrinks them.')
    .action(answer);
}

const fileName = (name: string): string => name.replaceAll(/[^A-Za-z0-9]+/g, '-');

async function answer(file: string, options: Options): Promise<void> {
  const { bank, form, out, paper } = options;
  await tell(file, options, async (found) => {
    const { car, workshop } = found;
    const { set, car: of, part } = await checkedSet(found, options);
    const { templates, notes } = primariesTemplates(of, bank, set, primariesShop(of, bank, set));
    const named = [bank, ...(part.name === undefined ? [] : [fileName(part.name)])].join('-');
    if (templates.length === 0) throw new NotReached(`There is nothing to draw. ${notes.join(' ')}`);
    // printer and drawing packages take their time to load, which no other command should pay
    const { wrapDxf, wrapPdf, wrapSvg } = await import('../../drafts/index.ts');
    const written: { readonly file: string; readonly contents: string | Uint8Array }[] =
      form === 'pdf'
        ? [
            {
              file: `${named}-templates.pdf`,
              contents: await wrapPdf(templates, {
                title: `${car.form.car.name}: templates of the ${part.title}`,
                workshop,
                date: today(),
                version: VERSION,
                paper,
              }),
            },
          ]
        : templates.map((each) => ({
            file: `${named}-${fileName(each.name)}.${form}`,
            contents: form === 'svg' ? wrapSvg(each) : wrapDxf(each),
          }));
    await makeFolder(out);
    for (const each of written) await writeWhole(join(out, each.file), each.contents);
    return {
      json: {
        ...header('wraps'),
        car: carOut(car, found.file),
        bank,
        ...partOut(part),
        files: written.map((each) => each.file),
        templates: templates.map(({ name }) => name),
        notes: [...notes],
        cautions: [...set.cautions],
      },
      lines: () => [
        ...headLines(car, `templates of the ${part.title}`),
        '',
        `${templates.length} templates in ${written.length} ${written.length === 1 ? 'file' : 'files'} in ${out}:`,
        ...written.map((each) => `  ${each.file}`),
        'In true size: measure the printed ruler of 100 mm before a line is cut.',
        ...tailLines(notes, set.cautions),
      ],
      refusal: undefined,
    };
  });
}
