/** `flatpatch as-built`: primaries as they were made against their drawing. */
import type { Command } from 'commander';
import { primariesMade } from '../../questions/index.ts';
import { askedAmount } from '../asked.ts';
import { textOf } from '../car-argument.ts';
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
import { madePipes } from '../made-file.ts';
import { BadInput, badAsk } from '../outcome.ts';
import { checkedSet, onSet, partOut, type SetOptions } from '../primaries-asked.ts';
import { amountText, table } from '../print.ts';
import { tell } from '../tell.ts';

interface Options extends SetOptions, MannerOptions {
  readonly measured: string;
  readonly speed?: string;
  readonly sound?: string;
}

export function asBuiltCommand(): Command {
  const made = command(
    'as-built',
    'Primaries as they were made against their drawing: longer or shorter, equal within what',
    [
      `flatpatch primaries ashgarth-501 --bank left --solution left.json && printf 'pipe,length mm,along\\n1,648.1,middle\\n2,646.2,middle\\n' | flatpatch as-built ashgarth-501 --bank left --solution left.json --measured - --speed "15000 rpm" --sound "550 m/s"`,
    ],
  );
  return speaking(onSet(onCar(made)))
    .requiredOption('--measured <file>', 'what was measured, as CSV, or - for standard input')
    .option('--speed <speed>', 'of the engine, with --sound: what the difference is at the crank')
    .option('--sound <speed>', 'of sound in the hot gas')
    .addHelpText(
      'after',
      '\nThe CSV has a heading. Either a row a pipe: pipe, length mm, along (outside, side or inside of every bend for a cord\non the skin; middle), and u mm for its spread if it is known; or a row a point, flange, corner of each bend and mouth\nin the order of the flow: pipe, x mm, y mm, z mm.',
    )
    .action(answer);
}

/** Engine speed in rad/s: the trade says revolutions a minute and nothing else. @throws BadInput */
function askedSpeed(text: string): number {
  const read = /^(\d+(?:\.\d+)?)\s*(?:rpm|1\/min)$/.exec(text.trim());
  if (read === null) throw badAsk('asked/amount', `--speed "${text}": write it as 15000 rpm.`);
  return (Number(read[1]) * 2 * Math.PI) / 60;
}

async function answer(file: string, options: Options): Promise<void> {
  const { speed, sound, measured, bank, units } = options;
  if ((speed === undefined) !== (sound === undefined)) {
    throw badAsk('asked/crank', '--speed and --sound go together: degrees of crank need both.');
  }
  const crank =
    speed === undefined || sound === undefined
      ? undefined
      : {
          speed: askedSpeed(speed),
          sound: askedAmount('--sound', sound, 'm/s'),
        };
  const pipes = madePipes(await textOf(measured), measured === '-' ? 'standard input' : measured);
  await tell(file, options, async (found) => {
    const { car } = found;
    const { set, part } = await checkedSet(found, options);
    const is = primariesMade(set, pipes, crank);
    if (!is.reached) {
      throw new BadInput(
        is.faults.map((message) => ({ code: 'made/pipe', message, path: measured, weight: 'error' })),
      );
    }
    const length = (value: number, u: number): string => amountText(value, 'm', units, u);
    const { within, longest, shortest } = is.equal;
    const degrees = is.crank === undefined ? undefined : (is.crank * 180) / Math.PI;
    return {
      json: {
        ...header('as-built'),
        car: carOut(car, found.file),
        bank,
        ...partOut(part),
        pipes: is.pipes.map(({ pipe, drawn, made, difference }) => ({
          pipe,
          drawn,
          made: made.length,
          u: made.u,
          difference: difference.length,
        })),
        within: within.length,
        u: within.u,
        told: !is.equal.notTold,
        ...(is.crank === undefined ? {} : { crank: is.crank }),
        notes: [...is.notes],
        cautions: [...set.cautions],
      },
      lines: () => [
        ...headLines(car, `${part.name === undefined ? `${part.stage} of the ` : ''}${part.title}, as made`),
        '',
        ...table([
          ['Pipe', 'drawn', 'made', 'longer by'],
          ...is.pipes.map(({ pipe, drawn, made, difference }) => [
            pipe,
            amountText(drawn, 'm', units),
            length(made.length, made.u),
            length(difference.length, difference.u),
          ]),
        ]),
        '',
        `Equal within ${length(within.length, within.u)}: pipe ${longest.pipe} is the longest, pipe ${shortest.pipe} the shortest.`,
        ...(degrees === undefined
          ? []
          : [`That is ${degrees.toFixed(1)}° of crank by which the wave comes back later in the longest.`]),
        ...tailLines(is.notes, set.cautions),
      ],
      refusal: undefined,
    };
  });
}
