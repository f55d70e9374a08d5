/** The gas path on the sheet: the drawing of a bank's primaries and the card beside it, over one finder. */
import { useState } from 'react';
import { partsOf } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { GasCard } from './gas-card.tsx';
import { GasDrawing } from './gas-drawing.tsx';
import { gripsOf, sameGrip } from './grips.ts';
import type { HandMode } from './hand-card.tsx';
import { PartsWay } from './parts-way.tsx';
import { useFinding } from './use-finding.ts';

export function GasWay() {
  const { car } = useCar();
  const { place } = usePage();
  if (car.form.exhaust === undefined) return <Untold />;
  if (place.both === true) return <PartsWay banks="both" />;
  return partsOf(car, place.bank).length > 1 ? <PartsWay banks={place.bank} /> : <OneBank />;
}

/** A bank with one collector and nothing behind it. */
function OneBank() {
  const finding = useFinding();
  const [lit, setLit] = useState<number>();
  const [pulses, setPulses] = useState(false);
  const [mode, setMode] = useState<HandMode>();
  const { hand, scene } = finding;
  // what was done by hand before is shown as such when the page is opened again
  const { on, chosen, mend } = mode ?? { on: (hand?.told.steps ?? 0) > 0, chosen: undefined, mend: true };
  const grips = hand === undefined || scene === undefined ? [] : gripsOf(hand.told, scene, undefined);
  // as it lies now
  const now = grips.find((grip) => chosen !== undefined && sameGrip(chosen, grip));
  const byHand = { on, mend, chosen: now };
  return (
    <>
      <GasDrawing
        finding={finding}
        lit={lit}
        pulses={pulses}
        onPulses={setPulses}
        mode={byHand}
        onMode={setMode}
      />
      <GasCard finding={finding} lit={lit} onLight={setLit} mode={byHand} onMode={setMode} />
    </>
  );
}

function Untold() {
  return (
    <>
      <main className="drawing gas" aria-label="Drawing">
        <header className="drawing-head">
          <h1>Primaries</h1>
        </header>
        <div className="paper">
          <p className="not-reached" role="status">
            The car file tells no exhaust, so there is nothing to draw yet.
          </p>
        </div>
      </main>
      <aside className="card" id="card" aria-label="Primaries" tabIndex={-1}>
        <h2>Primaries</h2>
        <p>
          Write under <code>exhaust</code> in the car file: the length that the engine builder gives and from
          where to where it counts, the tube, the bends on the rack, two points at each port, the collector,
          and what must be stayed clear of.
        </p>
        <p className="soft">docs/car-file.md tells each key; the demo’s V10 has a whole one.</p>
      </aside>
    </>
  );
}
