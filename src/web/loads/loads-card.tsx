/** What this stop of this wheel carries while the car does something; the wheel goes where the load puts it. */
import { useEffect } from 'react';
import type { Figure } from '../../questions/figure.ts';
import { LOAD_FIGURE } from '../slip/working-slip.tsx';
import { usePage } from '../state.tsx';
import { FigureRow } from '../stops/figure-row.tsx';
import { DoingChoice } from './doing-choice.tsx';
import { LoadsToPrint } from './print-words.tsx';
import { Remarks } from './remarks.tsx';
import { useDoing } from './use-case.ts';
import type { useLoads } from './use-loads.ts';

interface Props {
  readonly loads: NonNullable<ReturnType<typeof useLoads>>;
  readonly onLight: (figure: Figure | undefined) => void;
}

/** The travel stands in the address in tenths of a millimetre. */
const tenth = (travel: number): number => Math.round(travel * 1e4) / 1e4;

export function LoadsCard({ loads, onLight }: Props) {
  const { place, go } = usePage();
  const doing = useDoing();
  const figures = loads.reached ? loads.wheels[0]!.figures : [];
  const travel = figures.find(({ id }) => id === 'travelUnderLoad')?.value;
  const goes = travel === undefined ? undefined : tenth(travel);
  useEffect(() => {
    if (goes !== undefined) go({ travel: goes, mode: 'wheel', rack: doing.rack });
  }, [goes, doing, go]);
  const own = figures.filter(({ stop }) => stop === place.stop);
  return (
    <>
      <DoingChoice />
      {!loads.reached && <p role="status">{loads.message}</p>}
      {loads.reached && (
        <>
          <div className="figure-rows">
            {own.map((figure) => (
              <FigureRow
                key={figure.id}
                figure={figure}
                onLight={onLight}
                onOpen={() => go({ figure: `${LOAD_FIGURE}${figure.id}` })}
              />
            ))}
          </div>
          <LoadsToPrint />
          <Remarks notes={loads.notes} cautions={loads.cautions} />
        </>
      )}
    </>
  );
}
