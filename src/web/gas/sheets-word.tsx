/** The sheets of the set on the card: route, cut list, bend table and jig points, laid out by the workshop. */
import { useState } from 'react';
import { fetchPrimariesSheet } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

interface Props {
  /** The set in its exchange form, or those of all parts as one file. */
  readonly file: string;
  readonly side: 'left' | 'right';
  /** The part of that bank, where it has several. */
  readonly part?: string | undefined;
}

export function SheetsWord({ file, side, part }: Props) {
  const { speech, say } = usePage();
  const { id, car } = useCar();
  const [asked, ask] = useState<'no' | 'waiting' | { readonly why: string }>('no');
  const take = async (): Promise<void> => {
    ask('waiting');
    say('Laying the sheets out.');
    try {
      const pdf = await fetchPrimariesSheet(id, {
        bank: side,
        ...(part === undefined ? {} : { part }),
        set: file,
        paper: speech === 'mm-N' ? 'A4' : 'Letter',
        units: speech,
        ...(car.spec === car.specs[0] ? {} : { spec: car.spec }),
      });
      const link = document.createElement('a');
      link.href = URL.createObjectURL(pdf);
      link.download = `${[id, 'primaries', side, ...(part === undefined ? [] : [part])].join('-')}.pdf`;
      link.click();
      URL.revokeObjectURL(link.href);
      ask('no');
      say('The sheets are saved.');
    } catch (reason) {
      ask({ why: (reason as Error).message });
    }
  };
  return (
    <>
      <button type="button" className="word" disabled={asked === 'waiting'} onClick={() => void take()}>
        {asked === 'waiting' ? 'Laying the sheets out …' : 'Save its sheets'}
      </button>
      {typeof asked === 'object' && <span role="alert">{asked.why}</span>}
    </>
  );
}
