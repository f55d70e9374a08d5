/** `flatpatch solids`: a set of primaries as solids for other programs. */
import { extname } from 'node:path';
import type { Command } from 'commander';
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
import { badAsk } from '../outcome.ts';
import { checkedSet, onSet, partOut, type SetOptions } from '../primaries-asked.ts';
import { tell } from '../tell.ts';
import { writeWhole } from '../whole-file.ts';

interface Options extends SetOptions, MannerOptions {
  readonly out: string;
}

const FORMS = ['.step', '.stl', '.glb'] as const;
type Form = (typeof FORMS)[number];
const isForm = (of: string): of is Form => (FORMS as readonly string[]).includes(of);

export function solidsCommand(): Command {
  const made = command('solids', 'A set of primaries as solids: STEP, STL or GLB by the ending of the file', [
    'flatpatch primaries ashgarth-501 --bank left --solution left.json && flatpatch solids ashgarth-501 --bank left --solution left.json --out left.step',
  ]);
  return speaking(onSet(onCar(made)))
    .requiredOption('--out <file>', 'file to write; it ends in .step, .stl or .glb')
    .addHelpText(
      'after',
      '\nSTEP and STL are in mm in the axes of the car; GLB is in m with y up, as its standard says.',
    )
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const { bank, out } = options;
  const form = extname(out).toLowerCase();
  if (!isForm(form)) {
    throw badAsk('asked/out', `--out "${out}" must end in one of ${FORMS.join(', ')}.`);
  }
  await tell(file, options, async (found) => {
    const { car } = found;
    const { set, part } = await checkedSet(found, options);
    const pipes = set.pipes.map(({ pipe }) => pipe);
    // the CAD kernel takes a second to load
    const { glbOfPipes, stepOf, stlOf } = await import('../../drafts/index.ts');
    const contents =
      form === '.step'
        ? await stepOf(pipes, today())
        : await (form === '.stl' ? stlOf(pipes) : glbOfPipes(pipes));
    await writeWhole(out, contents);
    const bytes = Buffer.byteLength(contents);
    return {
      json: {
        ...header('solids'),
        car: carOut(car, found.file),
        bank,
        ...partOut(part),
        file: out,
        bytes,
        pipes: set.pipes.map(({ cylinder, length }) => ({ cylinder, length })),
        cautions: [...set.cautions],
      },
      lines: () => [
        ...headLines(car, `solids of the ${part.title}`),
        '',
        `${out}: ${pipes.length} pipes, ${bytes} bytes.`,
        ...tailLines([], set.cautions),
      ],
      refusal: undefined,
    };
  });
}
