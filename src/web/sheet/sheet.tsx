/** The drawing sheet of one car: drawing, card of the stop, line of stops, title block, working slip. */
import { useEffect, useMemo, useState } from 'react';
import type { Figure } from '../../questions/figure.ts';
import type { Workshop } from '../client.ts';
import { Folded } from '../compare/folded.tsx';
import { DayWay } from '../day/day-way.tsx';
import { GasWay } from '../gas/gas-way.tsx';
import { useLoads } from '../loads/use-loads.ts';
import { PatchWay } from '../patch/patch-way.tsx';
import type { PadStop } from '../patch/words.ts';
import { dayOf } from '../place.ts';
import { PrintedSheet } from '../print/printed-sheet.tsx';
import { LOAD_FIGURE, WorkingSlip } from '../slip/working-slip.tsx';
import { usePage } from '../state.tsx';
import { Card } from '../stops/card.tsx';
import { CarDrawing } from './car-drawing.tsx';
import { useCar } from './car-file.tsx';
import { useKeys } from './keys.ts';
import { StopLine } from './stop-line.tsx';
import { TitleBlock } from './title-block.tsx';
import { useCorner } from './use-corner.ts';
import { WayCard } from './way-card.tsx';

export interface Lit {
  readonly figure?: Figure | undefined;
}

export function Sheet({ workshop }: { workshop: Workshop | undefined }) {
  const { place, go } = usePage();
  const { car } = useCar();
  const corner = useCorner(place);
  const loads = useLoads();
  // with the loads on the card they stand on the drawing too
  const drawn = useMemo(() => {
    if (loads === undefined || !loads.reached || !corner.reached) return corner;
    const figures = loads.wheels[0]!.figures.map((figure) => ({
      ...figure,
      id: `${LOAD_FIGURE}${figure.id}`,
    }));
    return { ...corner, figures };
  }, [corner, loads]);
  const [lit, setLit] = useState<Figure>();
  useKeys();

  // a figure that this stop does not have cannot stay lit
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a change of stop or wheel puts the light out
  useEffect(() => setLit(undefined), [place.stop, place.wheel, place.card]);

  const day = dayOf(place);
  // a day out puts the other spec beside on its own card
  const folded = day === undefined && place.against !== undefined && car.specs.includes(place.against);
  return (
    <div className="sheet" data-way={place.way} data-folded={folded}>
      {!folded && (
        <a className="skip word" href="#card">
          To the card of the stop
        </a>
      )}
      {folded ? (
        <Folded against={place.against!} />
      ) : place.way === 'gas' ? (
        <GasWay />
      ) : day !== undefined ? (
        <DayWay key={day} name={day} />
      ) : place.way === 'floor' ? (
        <PatchWay stop={place.floor as PadStop} />
      ) : (
        <>
          <CarDrawing corner={drawn} lit={lit} onLight={setLit} />
          {place.way === 'load' ? (
            <Card corner={corner} loads={loads} onLight={setLit} />
          ) : (
            <WayCard way={place.way} />
          )}
        </>
      )}
      <StopLine corner={corner} />
      <TitleBlock workshop={workshop} />
      <PrintedSheet workshop={workshop?.name} />
      {place.figure !== undefined && (
        <WorkingSlip key={place.figure} figure={place.figure} onClose={() => go({ figure: undefined })} />
      )}
    </div>
  );
}
