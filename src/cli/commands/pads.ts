/** `flatpatch scales` and `flatpatch levels`: pads under a known mass, and their heights by a water level. */
import type { Command } from 'commander';
import { type CarOptions, command, type MannerOptions, onCar, speaking } from '../command.ts';
import { askedByGauge, atWheels, each, gaugedTelling, OptionTexts } from '../gauged.ts';
import { tell } from '../tell.ts';

interface ScalesOptions extends CarOptions, MannerOptions {
  readonly known: string;
  readonly pad?: readonly string[];
  readonly read?: readonly string[];
}

interface LevelsOptions extends CarOptions, MannerOptions {
  readonly pad?: readonly string[];
}

const UNDER_KNOWN = atWheels(
  (wheel) => `shown.${wheel}`,
  (wheel) => `empty.${wheel}`,
);
const UNDER_CAR = atWheels((wheel) => `car.${wheel}`);
const DOWN = atWheels((wheel) => `down.${wheel}`);

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
  const typed = new OptionTexts();
  typed.put('--known', 'known', options.known);
  for (const text of options.pad ?? []) typed.place('--pad', text, UNDER_KNOWN, 1);
  for (const text of options.read ?? []) typed.place('--read', text, UNDER_CAR, 1);
  const of = { known: '--known', car: '--read' } as Readonly<Record<string, string>>;
  const question = askedByGauge('scales', typed.texts, {
    option: (key) => of[key.split('.')[0]!] ?? '--pad',
    nothing: 'Nothing was read: write --pad for each pad that had the known mass on it.',
    half: {
      code: 'pad',
      words: (key) => {
        const [name] = Object.entries(UNDER_KNOWN).find(([, keys]) => keys.includes(key))!;
        return `--read is given for ${name}, and no --pad tells what that pad is worth.`;
      },
    },
  });
  await tell(file, options, (found) =>
    gaugedTelling('scales', found, 'pads under a known mass', question, options),
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
  const typed = new OptionTexts();
  for (const text of options.pad ?? []) typed.place('--pad', text, DOWN, 1);
  const question = askedByGauge('levels', typed.texts, {
    option: () => '--pad',
    nothing: 'It takes two pads at least: write --pad for each.',
  });
  await tell(file, options, (found) =>
    gaugedTelling('levels', found, 'pads by a water level', question, options),
  );
}
