/** A stop of the day out on the sheet: its drawing and its card over one question. */
import type { DayName } from '../../questions/index.ts';
import { DayCard } from './day-card.tsx';
import { DayDrawing } from './day-drawing.tsx';
import { useDay } from './use-day.ts';

export function DayWay({ name }: { readonly name: DayName }) {
  const day = useDay(name);
  return (
    <>
      <DayDrawing name={name} day={day} />
      <DayCard name={name} day={day} />
    </>
  );
}
