/** The flat floor at the pads on the sheet: the car on its pads with its readings, and the card beside it. */
import { useMemo } from 'react';
import { type FloorSheets, floorSheets } from '../../questions/index.ts';
import { GaugeWay } from '../gauges/gauge-way.tsx';
import { gaugeOf } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { movesAtWheels } from './moves.ts';
import { PatchCard } from './patch-card.tsx';
import { PatchDrawing } from './patch-drawing.tsx';
import { type Step, stepsOf } from './steps.ts';
import { type Running, readSoFar, useRun } from './use-run.ts';
import { useSetUp } from './use-set-up.ts';
import type { PadStop } from './words.ts';

export function PatchWay({ stop }: { readonly stop: PadStop }) {
  const { place } = usePage();
  const { id, car } = useCar();
  const sheets = useMemo(() => floorSheets(car), [car]);
  const steps = useMemo(() => stepsOf(sheets), [sheets]);
  const running = useRun(id);
  const gauge = gaugeOf(place);
  return gauge === undefined ? (
    <PadsWay stop={stop} sheets={sheets} steps={steps} running={running} />
  ) : (
    <GaugeWay key={gauge} stop={stop} name={gauge} steps={steps} running={running} />
  );
}

interface PadsProps {
  readonly stop: PadStop;
  readonly sheets: FloorSheets;
  readonly steps: readonly Step[];
  readonly running: Running;
}

function PadsWay({ stop, sheets, steps, running }: PadsProps) {
  const { place } = usePage();
  const setUp = useSetUp();
  const answer = setUp.state === 'answered' && setUp.answer.reached ? setUp.answer : undefined;
  const { run } = running;
  const step = run === undefined ? undefined : steps[run.at];
  const shown = useMemo(() => (run === undefined ? undefined : readSoFar(run)), [run]);
  const read = sheets.read.find(({ name }) => name === place.read) ?? sheets.read.at(-1);
  return (
    <>
      <PatchDrawing
        stop={stop}
        sheets={sheets}
        read={shown ?? read}
        moves={answer === undefined ? undefined : movesAtWheels(answer.moves)}
        asked={step?.what === 'read' ? step.id : undefined}
      />
      <PatchCard stop={stop} sheets={sheets} read={read} steps={steps} running={running} setUp={setUp} />
    </>
  );
}
