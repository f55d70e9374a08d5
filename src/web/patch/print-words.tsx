/** What the flat floor can be taken away as: the set-up sheet and the adjustment card, to print. */
import type { FloorSheet } from '../../sheets/index.ts';
import { sheetAddress } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

const WORDS: Readonly<Record<FloorSheet, string>> = {
  'set-up': 'Print the set-up sheet',
  adjustments: 'Print the adjustment card',
};

export function FloorToPrint({ kinds }: { readonly kinds: readonly FloorSheet[] }) {
  const { id, car } = useCar();
  const { speech } = usePage();
  const on = {
    ...(car.spec === car.specs[0] ? {} : { spec: car.spec }),
    paper: speech === 'mm-N' ? 'A4' : 'Letter',
    units: speech,
  };
  return (
    <p className="row">
      {kinds.map((kind) => (
        <a key={kind} className="word" href={sheetAddress(id, kind, on)} target="_blank" rel="noreferrer">
          {WORDS[kind]}
        </a>
      ))}
    </p>
  );
}
