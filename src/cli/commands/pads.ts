/** `flatpatch scales` and `flatpatch levels`: pads under a known mass, and their heights by a water level. */
import type { Command } from 'commander';
import { levelsOfPads, scalesChecked } from '../../questions/index.ts';
import { WHEELS, wheelName } from '../asked.ts';
import { type CarOptions, command, type MannerOptions, onCar, speaking } from '../command.ts';
import { askedGauge, each, gaugedTelling, placedGauges } from '../gauged.ts';
import { badAsk } from '../outcome.ts';
import { tell } from '../tell.ts';
import { refuseTwice } from './strings.ts';

interface ScalesOptions extends CarOptions, MannerOptions {
  readonly known: string;
  readonly pad?: readonly string[];
  readonly read?: readonly string[];
}

interface LevelsOptions extends CarOptions, MannerOptions {
  readonly pad?: readonly string[];
}

const AT_WHEELS = Object.fromEntries(WHEELS.map((wheel) => [wheelName(wheel), wheel] as const));

/** A pad reads to 0.1 kg, a water level to half a millimetre: common practice, no source. */
const PAD = 0.1;
const WATER = 0.3e-3;

export function scalesCommand(): Command {
  const made = command(
    'scales',
    'Pads under a known mass: what each shows over what is true, and weights of the wheels put right',
    [
      'flatpatch scales fenwold-201 --known "20 kg ± 0.01 kg" --pad "front-left 20.1 kg" --pad "front-right 20.0 kg" --pad "rear-left 20.4 kg" --pad "rear-right 19.9 kg"',
      'flatpatch scales fenwold-201 --known "60 kg ± 0.05 kg" --pad "rear-left 61.3 kg, 0.2 kg" --read "rear-left 181.4 kg" --json',
    ],
  );
  return speaking(onCar(made))
    .requiredOption('--known <mass>', 'the known mass, with its ±')
    .option(
      '--pad <wheel, shown, empty>',
      'what a pad shows with the known mass on it, and behind a comma what with nothing; may be given again',
      each,
    )
    .option(
      '--read <wheel and mass>',
      'what a pad of these showed under the car, to be put right; may be given again',
      each,
    )
    .action(answerScales);
}

async function answerScales(file: string, options: ScalesOptions): Promise<void> {
  const known = askedGauge('--known', options.known, 'kg', 0);
  const pads = (options.pad ?? []).map((text) => {
    const how = { least: 1, most: 2, like: 'kg', usual: PAD };
    const { place: wheel, amounts } = placedGauges('--pad', text, AT_WHEELS, how);
    const [shown, empty] = amounts;
    return { wheel, shown: shown!, ...(empty === undefined ? {} : { empty }) };
  });
  const read = (options.read ?? []).map((text) => {
    const how = { least: 1, most: 1, like: 'kg', usual: PAD };
    const { place: wheel, amounts } = placedGauges('--read', text, AT_WHEELS, how);
    return { wheel, car: amounts[0]! };
  });
  if (pads.length === 0)
    throw badAsk(
      'asked/nothing',
      'Nothing was read: write --pad for each pad that had the known mass on it.',
    );
  const names = (of: readonly { readonly wheel: (typeof WHEELS)[number] }[]): string[] =>
    of.map(({ wheel }) => wheelName(wheel));
  refuseTwice('--pad', names(pads));
  refuseTwice('--read', names(read));
  const lone = names(read).find((name) => !names(pads).includes(name));
  if (lone !== undefined)
    throw badAsk('asked/pad', `--read is given for ${lone}, and no --pad tells what that pad is worth.`);
  await tell(file, options, (found) =>
    gaugedTelling(
      'scales',
      found,
      'pads under a known mass',
      scalesChecked({
        known,
        pads: pads.map((pad) => ({ ...pad, ...read.find(({ wheel }) => wheel === pad.wheel) })),
      }),
      options,
    ),
  );
}

export function levelsCommand(): Command {
  const made = command(
    'levels',
    'Heights of the pads over one another by a water level, the packing that levels them, and their warp',
    [
      'flatpatch levels fenwold-201 --pad "front-left 212.0 mm" --pad "front-right 211.6 mm" --pad "rear-left 212.3 mm" --pad "rear-right 212.1 mm"',
      'flatpatch levels fenwold-201 --pad "front-left 212.0 mm ± 0.2 mm" --pad "rear-left 212.3 mm ± 0.2 mm" --json',
    ],
  );
  return speaking(onCar(made))
    .option(
      '--pad <wheel and length>',
      "from the water's surface down to a pad: more is lower; given for each pad",
      each,
    )
    .action(answerLevels);
}

async function answerLevels(file: string, options: LevelsOptions): Promise<void> {
  const pads = (options.pad ?? []).map((text) => {
    const how = { least: 1, most: 1, like: 'm', usual: WATER };
    const { place: wheel, amounts } = placedGauges('--pad', text, AT_WHEELS, how);
    return { wheel, down: amounts[0]! };
  });
  if (pads.length < 2) throw badAsk('asked/nothing', 'It takes two pads at least: write --pad for each.');
  refuseTwice(
    '--pad',
    pads.map(({ wheel }) => wheelName(wheel)),
  );
  await tell(file, options, (found) => {
    const filed = found.car.form.floor?.patch?.pads;
    const heights = Object.fromEntries(
      Object.entries(filed ?? {}).flatMap(([key, pad]) => (pad === undefined ? [] : [[key, pad.value]])),
    );
    return gaugedTelling(
      'levels',
      found,
      'pads by a water level',
      levelsOfPads({ pads, filed: heights }),
      options,
    );
  });
}
