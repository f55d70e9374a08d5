/** A reading by hand on the sheet: its drawing and its card over one question. */
import type { Step } from '../patch/steps.ts';
import type { Running } from '../patch/use-run.ts';
import type { PadStop } from '../patch/words.ts';
import { BumpSteerLines } from './bump-steer.tsx';
import { GaugeCard } from './gauge-card.tsx';
import { GaugeDrawing } from './gauge-drawing.tsx';
import { useGauge } from './use-gauge.ts';
import type { PageGauge } from './words.ts';

interface Props {
  readonly stop: PadStop;
  readonly name: PageGauge;
  readonly steps: readonly Step[];
  readonly running: Running;
}

export function GaugeWay({ stop, name, steps, running }: Props) {
  const gauge = useGauge(name);
  return (
    <>
      {name === 'bump-steer' ? <BumpSteerLines gauge={gauge} /> : <GaugeDrawing gauge={gauge} />}
      <GaugeCard stop={stop} gauge={gauge} steps={steps} running={running} />
    </>
  );
}
