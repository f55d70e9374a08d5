/** What a card of loads can be taken away as: sheets to print, and the table of all cases for a spreadsheet. */
import { JOINT_WORDS } from '../../questions/index.ts';
import type { LoadSheet } from '../../sheets/index.ts';
import { sheetAddress } from '../client.ts';
import { ask } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { useCase } from './use-case.ts';

interface Sheet {
  readonly kind: LoadSheet;
  readonly words: string;
  /** Whether it is of what the car is doing now. */
  readonly ofNow: boolean;
}

const OF_LOADS: readonly Sheet[] = [
  { kind: 'load', words: 'Print the load sheet of this case', ofNow: true },
  { kind: 'load', words: 'Print all cases', ofNow: false },
];

const OF_JOINT: readonly Sheet[] = [
  { kind: 'joint', words: 'Print the joint sheet', ofNow: true },
  { kind: 'tightening', words: 'Print the tightening card', ofNow: false },
];

export const LoadsToPrint = () => (
  <>
    <SheetWords sheets={OF_LOADS} />
    <CaseTable />
  </>
);

export function JointToPrint() {
  const { place } = usePage();
  return <SheetWords sheets={OF_JOINT} of={JOINT_WORDS[place.joint]} />;
}

function SheetWords({ sheets, of }: { sheets: readonly Sheet[]; of?: string }) {
  const { id, car } = useCar();
  const { place, speech } = usePage();
  const { doing, means, told } = useCase();
  // a case that has no name is written out
  const named = place.log === undefined && place.changed === undefined && told === undefined;
  const now = named ? { doing: place.doing } : { doing: JSON.stringify(doing), says: means };
  const on = {
    ...(car.spec === car.specs[0] ? {} : { spec: car.spec }),
    ...(of === undefined ? {} : { joint: place.joint }),
    paper: speech === 'mm-N' ? 'A4' : 'Letter',
    units: speech,
  };
  return (
    <p className="row">
      {sheets.map(({ kind, words, ofNow }) => (
        <a
          key={words}
          className="word"
          href={sheetAddress(id, kind, ofNow ? { ...on, ...now } : on)}
          target="_blank"
          rel="noreferrer"
        >
          {of === undefined ? words : `${words}, ${of}`}
        </a>
      ))}
    </p>
  );
}

function CaseTable() {
  const { id, source } = useCar();
  const { speech, say } = usePage();
  const take = async (separator: string, give: (text: string) => Promise<string> | string): Promise<void> => {
    say('Working all cases out.');
    try {
      const lines = await ask('caseTable', source, { rows: 'members', speech, separator });
      say(typeof lines === 'string' ? lines : await give(`${lines.join('\r\n')}\r\n`));
    } catch (reason) {
      say((reason as Error).message);
    }
  };
  const copy = async (text: string): Promise<string> => {
    await navigator.clipboard.writeText(text);
    return 'All cases are copied: paste them into a spreadsheet.';
  };
  const save = (text: string): string => {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type: 'text/csv' }));
    link.download = `${id}-cases.csv`;
    link.click();
    URL.revokeObjectURL(link.href);
    return 'All cases are saved as CSV.';
  };
  return (
    <p className="row">
      <button type="button" className="word" onClick={() => void take('\t', copy)}>
        Copy all cases, member by member
      </button>
      <button type="button" className="word" onClick={() => void take(',', save)}>
        Save them as CSV
      </button>
    </p>
  );
}
