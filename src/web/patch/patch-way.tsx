/** The flat floor at the pads on the sheet: the car on its pads with its readings, and the card beside it. */
import { useMemo } from 'react';
import { floorSheets } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { movesAtWheels } from './moves.ts';
import { PatchCard } from './patch-card.tsx';
import { PatchDrawing } from './patch-drawing.tsx';
import { readSoFar } from './run.ts';
import { stepsOf } from './steps.ts';
import { useRun } from './use-run.ts';
import { useSetUp } from './use-set-up.ts';
import type { PadStop } from './words.ts';

export function PatchWay({ stop }: { readonly stop: PadStop }) {
  const { place } = usePage();
  const { id, car } = useCar();
  const sheets = useMemo(() => floorSheets(car), [car]);
  const setUp = useSetUp();
  const answer = setUp.state === 'answered' && setUp.answer.reached ? setUp.answer : undefined;
  const running = useRun(id);
  const { run } = running;
  const steps = useMemo(() => (run === undefined ? [] : stepsOf(sheets, run)), [sheets, run]);
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
