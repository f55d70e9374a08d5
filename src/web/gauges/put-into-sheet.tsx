/** What strings, plates or scales give, put into the sheet that is being read on the pads. */
import { useMemo } from 'react';
import { type ForSheet, forSheet, type GaugedAnswer } from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import type { Step } from '../patch/steps.ts';
import type { Running } from '../patch/use-run.ts';
import { kindOf, TYPED } from '../patch/words.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { GAUGE_WORDS, type PageGauge } from './words.ts';

interface Props {
  readonly answer: GaugedAnswer;
  readonly steps: readonly Step[];
  readonly running: Running;
}

export function PutIntoSheet({ answer, steps, running }: Props) {
  const { go, say, speech } = usePage();
  const { car } = useCar();
  const { run, change } = running;
  const all = useMemo(() => forSheet(car, answer), [car, answer]);
  if (run === undefined) return null;
  const wanted = all.filter(({ id }) => steps.some((step) => step.what === 'read' && step.id === id));
  if (wanted.length === 0) return null;
  const what = kindOf(wanted[0]!.id) === 'weight' ? 'weights' : 'toes';
  const put = (): void => {
    const texts = wanted.map((each) => [each, textOf(each, speech)] as const);
    change(({ typed, worked }) => ({
      typed: { ...typed, ...Object.fromEntries(texts.map(([{ id }, text]) => [id, text])) },
      worked: {
        ...worked,
        ...Object.fromEntries(texts.map(([{ id, from }, text]) => [id, { from, text }])),
      },
    }));
    say(`The ${what} are in the sheet.`);
    go({ gauge: undefined, figure: undefined });
  };
  return (
    <p className="row">
      <button type="button" className="word chief pad-wide" onClick={put}>
        Put these {what} into the sheet being read
      </button>
    </p>
  );
}

/** As it is typed into a sheet: `0.86 mm ± 0.35 mm`. */
function textOf({ id, value, u }: ForSheet, speech: Speech): string {
  const { units, digits } = TYPED[kindOf(id)]!;
  const k = speech === 'mm-N' ? 0 : 1;
  const text = (of: number): string => `${fromSI(of, units[k]).toFixed(digits[k] + 1)} ${units[k]}`;
  return `${text(value)} ± ${text(u)}`;
}

const GAUGES_FOR: Readonly<Record<string, readonly PageGauge[]>> = {
  toe: ['strings', 'plates'],
  toeAtRim: ['strings', 'plates'],
  weight: ['scales'],
};

/** At the step of a reading: the way to the gauges that give it. */
export function FromGauge({ id }: { readonly id: string }) {
  const { go } = usePage();
  const kind = kindOf(id);
  const gauges = GAUGES_FOR[kind] ?? [];
  if (gauges.length === 0) return null;
  return (
    <p className="row">
      {gauges.map((gauge) => (
        <button
          key={gauge}
          type="button"
          className="word"
          onClick={() => go({ floor: kind === 'weight' ? 'weights' : 'angles', gauge, figure: undefined })}
        >
          Work it out from {GAUGE_WORDS[gauge].name}
        </button>
      ))}
    </p>
  );
}
