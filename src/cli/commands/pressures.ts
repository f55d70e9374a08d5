/** `flatpatch pressures`: what to set the tyres to, cold, for what is wanted hot; what to bleed to. */
import { type Command, Option } from 'commander';
import { type NowRead, pressuresFor, type RunRead, type TyrePlace } from '../../questions/index.ts';
import { floorOut } from '../answers/floor-figures.ts';
import { askedCount, askedReading, maybeReading } from '../asked.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
  withShares,
} from '../command.ts';
import {
  type AskedWorking,
  besideLines,
  checkWorking,
  floorFigureLines,
  floorLines,
  takingWorking,
} from '../floor-lines.ts';
import { badAsk } from '../outcome.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedWorking {
  readonly air: string;
  readonly set?: string;
  readonly humidity?: string;
  readonly barometer?: string;
  readonly seaLevel?: string;
  readonly height?: string;
  readonly setBarometer?: string;
  readonly setHeight?: string;
  readonly fill?: 'compressed air' | 'dry nitrogen';
  readonly receiver?: string;
  readonly receiverTemperature?: string;
  readonly water?: string;
  readonly purges?: string;
  readonly hot?: readonly string[];
  readonly gas?: readonly string[];
  readonly run?: readonly string[];
  readonly now?: readonly string[];
}

const each = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];

const TYRES: Readonly<Record<string, TyrePlace>> = {
  front: { end: 'front' },
  rear: { end: 'rear' },
  'front-left': { end: 'front', side: 'left' },
  'front-right': { end: 'front', side: 'right' },
  'rear-left': { end: 'rear', side: 'left' },
  'rear-right': { end: 'rear', side: 'right' },
};

export function pressuresCommand(): Command {
  const made = command(
    'pressures',
    'Cold pressures for hot targets, in absolute pressure with moisture; what to bleed to',
    [
      'flatpatch pressures fenwold-201 --air "14 degC" --height "180 m" --humidity "80 %"',
      'flatpatch pressures fenwold-201 --air "14 degC" --barometer "1004 mbar" --set "55 degC ± 3 K" --shares',
      'flatpatch pressures fenwold-201 --air "18 degC" --run "front-left 1.20 bar, 15 degC, 1.72 bar" --now "front-left 1.76 bar, 80 degC"',
      'flatpatch pressures fenwold-201 --air "18 degC" --fill "dry nitrogen" --purges 3 --working front.coldPressure',
    ],
  );
  return takingWorking(withShares(speaking(onCar(made))))
    .requiredOption(
      '--air <temperature>',
      'temperature of the air, such as "14 degC"; ± may follow here and below',
    )
    .option('--set <temperature>', 'temperature of the gas when it is set; left out, that of the air')
    .option('--humidity <share>', 'relative humidity, such as "80 %"')
    .option('--barometer <pressure>', 'pressure of the air at the track as it stands, such as "1004 mbar"')
    .option(
      '--sea-level <pressure>',
      'or the pressure at sea level, as the weather report and airfields give it',
    )
    .option('--height <height>', 'with it, the height of the track above the sea, such as "180 m"')
    .option('--set-barometer <pressure>', 'pressure of the air where the tyres are set, if elsewhere')
    .option('--set-height <height>', 'height where the tyres are set, if elsewhere')
    .addOption(
      new Option('--fill <gas>', 'what goes through the valve').choices(['compressed air', 'dry nitrogen']),
    )
    .option('--receiver <pressure>', 'gauge pressure in the receiver of the compressor')
    .option('--receiver-temperature <temperature>', 'its temperature; left out, that of the air')
    .option('--water <mass>', 'water that mounting left in each tyre, such as "5 g"')
    .option('--purges <count>', 'how often the tyres were filled and let down before', '0')
    .option('--hot <tyre and pressure>', 'wanted hot, such as "rear 1.45 bar"; may be given again', each)
    .option(
      '--gas <tyre and temperature>',
      'of the gas hot, such as "rear 95 degC ± 5 K"; may be given again',
      each,
    )
    .option(
      '--run <tyre, cold, at, hot>',
      'a run: "front-left 1.20 bar, 15 degC, 1.72 bar", read cold at that temperature of the gas and then hot; it tells how hot the gas gets; may be given again',
      each,
    )
    .option(
      '--now <tyre, pressure, temperature>',
      'what a tyre reads now, warm: "front-left 1.76 bar, 80 degC"; tells what to bleed to; may be given again',
      each,
    )
    .action(answer);
}

/** The tyre that an option names first, and the amounts behind it. @throws BadInput */
function placed(option: string, text: string, count: number): { place: TyrePlace; amounts: string[] } {
  const [, name, rest] = /^\s*([a-z-]+)\s+(.*)$/s.exec(text) ?? [];
  const place = name === undefined ? undefined : TYRES[name];
  const amounts = (rest ?? '').split(/\s*,\s*/).filter((part) => part !== '');
  if (place === undefined || amounts.length !== count) {
    throw badAsk(
      'asked/tyre',
      `${option} "${text}" is not a tyre and ${count === 1 ? 'an amount' : `${count} amounts with commas between`}.`,
      `The tyre is one of ${Object.keys(TYRES).join(', ')}.`,
    );
  }
  return { place, amounts };
}

const one = (option: string, texts: readonly string[] | undefined, like: string) =>
  texts?.map((text) => {
    const { place, amounts } = placed(option, text, 1);
    return { place, amount: askedReading(option, amounts[0]!, like) };
  });

const runOf = (text: string): RunRead => {
  const { place, amounts } = placed('--run', text, 3);
  const [cold, at, hot] = amounts as [string, string, string];
  return {
    place,
    cold: askedReading('--run', cold, 'Pa'),
    at: askedReading('--run', at, 'K'),
    hot: askedReading('--run', hot, 'Pa'),
  };
};

const nowOf = (text: string): NowRead => {
  const { place, amounts } = placed('--now', text, 2);
  return {
    place,
    pressure: askedReading('--now', amounts[0]!, 'Pa'),
    temperature: askedReading('--now', amounts[1]!, 'K'),
  };
};

/** What was typed and is there, without what was not. */
const told = <T extends object>(of: T): { [K in keyof T]?: NonNullable<T[K]> } =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  };

async function answer(file: string, options: Options): Promise<void> {
  const asked = {
    air: askedReading('--air', options.air, 'K'),
    spread: options.spread,
    purges: askedCount('--purges', options.purges ?? '0', 0, 9),
    ...told({
      set: maybeReading('--set', options.set, 'K'),
      humidity: maybeReading('--humidity', options.humidity, '1'),
      barometer: maybeReading('--barometer', options.barometer, 'Pa'),
      seaLevel: maybeReading('--sea-level', options.seaLevel, 'Pa'),
      height: maybeReading('--height', options.height, 'm'),
      barometerSet: maybeReading('--set-barometer', options.setBarometer, 'Pa'),
      heightSet: maybeReading('--set-height', options.setHeight, 'm'),
      receiver: maybeReading('--receiver', options.receiver, 'Pa'),
      receiverTemperature: maybeReading('--receiver-temperature', options.receiverTemperature, 'K'),
      water: maybeReading('--water', options.water, 'kg'),
      fill: options.fill,
      hot: one('--hot', options.hot, 'Pa'),
      gas: one('--gas', options.gas, 'K'),
      runs: options.run?.map(runOf),
      now: options.now?.map(nowOf),
      working: options.working,
    }),
  };
  await tell(file, options, ({ car, file: named }) => {
    const is = pressuresFor(car, asked);
    checkWorking(is, options.working);
    return {
      json: { ...header('pressures'), car: carOut(car, named), is: floorOut(is) },
      lines: () => [
        ...headLines(car, 'tyre pressures, gauge'),
        ...floorLines(is, options, ({ figures }) =>
          options.shares === true
            ? floorFigureLines(figures, options)
            : ['', ...besideLines(figures, options.units)],
        ),
      ],
      refusal: refusalOf(is),
    };
  });
}
