/** `flatpatch demo`: the invented workshop, worked through the same questions as any car, in a few lines. */
import type { Command } from 'commander';
import type { Car } from '../../car/read.ts';
import { type CornerAnswer, cornerFigures } from '../../questions/corner.ts';
import type { Figure } from '../../questions/figure.ts';
import { openCar } from '../../questions/open-car.ts';
import { putDemo } from '../../workshop/demo.ts';
import { CAR_FILE, carIds, carText, sourceOf, workshopNotes } from '../../workshop/folder.ts';
import { workshopHome } from '../../workshop/home.ts';
import { WHEELS, wheelWords } from '../asked.ts';
import { command, type MannerOptions, sayLines, speakingWords } from '../command.ts';
import { figureText, table } from '../print.ts';
import { askedPort, sayDemo, serve } from './serve.ts';

/** The figures that a car is known by. Those of a bar stand only where there is a bar. */
const HEADLINES = ['wheelRate', 'barTwist', 'barStress', 'coilStress'];

export function demoCommand(): Command {
  const made = command(
    'demo',
    'Work every car of the workshop, which is filled with invented cars where it is empty',
    ['flatpatch demo', 'flatpatch demo --serve'],
  );
  return speakingWords(made)
    .option('--serve', 'then open the workshop for the browser')
    .action(async (options: Pick<MannerOptions, 'units'> & { readonly serve?: true }) => {
      const port = options.serve ? askedPort() : undefined;
      const home = workshopHome();
      sayDemo(await putDemo(home), home);
      await sayWorkshop(home, options);
      if (options.serve) await serve(home, port);
    });
}

async function sayWorkshop(home: string, options: Pick<MannerOptions, 'units'>): Promise<void> {
  const { name, invented } = await workshopNotes(home);
  sayLines([`${name}${invented ? ', an invented workshop with invented cars' : ''}`]);
  for (const id of await carIds(home)) {
    const read = openCar(sourceOf(await carText(home, id), `${id}/${CAR_FILE}`));
    sayLines(
      read.ok
        ? carLines(read.car, options)
        : ['', `${id}: cannot be read yet; flatpatch check ${id} says why.`],
    );
  }
}

function carLines(car: Car, options: Pick<MannerOptions, 'units'>): string[] {
  const answers = WHEELS.map((wheel) => cornerFigures(car, wheel, { travel: 0, rack: 0 }, { spread: true }));
  const figures = HEADLINES.flatMap((id) => headline(id, answers));
  const rows = [
    ['', ...WHEELS.map(wheelWords)],
    ...figures.map(({ means, of }) => [
      means,
      ...of.map((each) => (each === undefined ? '' : figureText(each, options.units))),
    ]),
  ];
  const { name, manner, invented } = car.form.car;
  const about = [
    manner === undefined ? '' : `in the manner of ${manner}`,
    invented === true ? 'an invented example' : '',
  ];
  return [
    '',
    [`${name}, spec "${car.spec}"`, ...about.filter((each) => each !== '')].join(', '),
    ...table(rows).map((line) => `  ${line}`),
    ...answers.flatMap((each) => (each.reached ? [] : [`  ${wheelWords(each.wheel)}: ${each.message}`])),
  ];
}

interface Headline {
  readonly means: string;
  readonly of: readonly (Figure | undefined)[];
}

function headline(id: string, answers: readonly CornerAnswer[]): Headline[] {
  const of = answers.map((each) =>
    each.reached ? each.figures.find((figure) => figure.id === id) : undefined,
  );
  const first = of.find((each) => each !== undefined);
  return first === undefined ? [] : [{ means: first.means, of }];
}
