/** `flatpatch scan`: a scan of the car file looked over and laid into the car. */
import type { Command } from 'commander';
import { scanForms, scanOf } from '../../questions/index.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
} from '../command.ts';
import { BadInput, badAsk } from '../outcome.ts';
import { table } from '../print.ts';
import { scanBytes } from '../scans.ts';
import { tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions {
  readonly scan?: string;
}

export function scanCommand(): Command {
  const made = command('scan', 'A scan of the bodywork: its size, holes and how its datum points meet', [
    'flatpatch scan ashgarth-501',
    'flatpatch scan ashgarth-501 --scan cover --json',
  ]);
  return speaking(onCar(made))
    .option('--scan <name>', 'name of the scan under exhaust, scans in the car file; left out, the only one')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  await tell(file, options, async ({ car, file: named, place }) => {
    const forms = scanForms(car);
    const names = Object.keys(forms);
    const name = options.scan ?? (names.length === 1 ? names[0] : undefined);
    if (name === undefined) {
      throw badAsk(
        'asked/scan',
        names.length === 0
          ? 'The car file names no scan: write it under exhaust, scans.'
          : `The car has several scans; write --scan with one of ${names.join(', ')}.`,
      );
    }
    const form = Object.hasOwn(forms, name) ? forms[name] : undefined;
    const bytes =
      form === undefined ? undefined : await scanBytes({ ...(place && { place }) }, form.file, options.files);
    const is = scanOf(car, name, bytes);
    if (!is.reached) throw new BadInput(is.problems);
    const { like, off, rms, doubts } = is;
    const unit = form!.unit;
    const sides = like.box.max.map((value, k) => value - like.box.min[k]!);
    const size = `${sides.map((side) => side.toFixed(unit === 'm' ? 3 : 1)).join(' × ')} ${unit}`;
    return {
      json: {
        ...header('scan'),
        car: carOut(car, named),
        scan: name,
        triangles: like.triangles,
        corners: like.corners,
        unit,
        sides,
        rims: like.holes.map(({ rim }) => rim),
        turnedEdges: like.turned,
        crowdedEdges: like.crowded,
        slivers: like.slivers,
        datums: off.map(({ name: of, by }) => ({ name: of, off: by })),
        rms,
        doubts: [...doubts],
      },
      lines: () => [
        ...headLines(car, `scan ${name}${form?.of === undefined ? '' : `, ${form.of}`}`),
        '',
        `${like.triangles} triangles on ${like.corners} corners; ${size} as it was scanned.`,
        `${like.holes.length} ${like.holes.length === 1 ? 'rim' : 'rims'}; ${like.turned} edges between faces turned opposite ways.`,
        '',
        ...table([
          ['Datum point', 'off'],
          ...off.map(({ name: of, by }) => [of, `${(1000 * by).toFixed(2)} mm`]),
          ['all, root mean square', `${(1000 * rms).toFixed(2)} mm`],
        ]),
        ...(doubts.length === 0 ? [] : ['', 'Odd in it:', ...doubts.map((each) => `- ${each}`)]),
      ],
      refusal: undefined,
    };
  });
}
