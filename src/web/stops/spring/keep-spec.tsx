/** Keeps a proposal as a spec of the car file: its own name, what it starts from, who proposed it. */
import { useId, useState } from 'react';
import { sheetAddress } from '../../client.ts';
import { useCar } from '../../sheet/car-file.tsx';
import { DATE } from '../../sheet/title-block.tsx';
import { usePage } from '../../state.tsx';
import { Told } from './typed-amount.tsx';

interface Props {
  readonly suggested: string;
  readonly note: string;
  /** The part of the car file that differs. */
  readonly changes: unknown;
}

export function KeepSpec({ suggested, note, changes }: Props) {
  const id = useId();
  const { car, keep, takeTheirs, id: carId } = useCar();
  const { place, go, say, speech } = usePage();
  const [name, setName] = useState(suggested);
  const [by, setBy] = useState(localStorage.getItem('own hand') ?? '');
  const [told, setTold] = useState<string>();
  const [kept, setKept] = useState<string>();
  const taken = car.specs.includes(name.trim());

  const take = async (): Promise<void> => {
    setTold(undefined);
    const from = car.spec === car.specs[0] ? {} : { from: car.spec };
    const whose = by.trim() === '' ? {} : { by: by.trim() };
    const value = { ...from, ...whose, on: DATE.format(new Date()), note, changes };
    try {
      const answer = await keep([{ path: ['specs', name.trim()], value }]);
      if (answer.kind === 'kept') {
        setKept(name.trim());
        say(`Spec ${name.trim()} kept.`);
      } else if (answer.kind === 'conflict') {
        takeTheirs(answer.theirs, answer.version);
        setTold(
          'Another hand changed this file meanwhile, and nothing was written. The page has taken it in: look at what it says now, then keep the proposal again.',
        );
      } else setTold(answer.problems.map((problem) => problem.message).join(' '));
    } catch (reason) {
      setTold(`${(reason as Error).message} What you typed is still here.`);
    }
  };

  if (kept !== undefined) {
    const asked = {
      spec: kept,
      end: place.wheel.end,
      side: place.wheel.side,
      paper: speech === 'mm-N' ? 'A4' : 'Letter',
      units: speech,
    };
    return (
      <div className="question">
        <p>
          Kept as the spec <b>{kept}</b>.
        </p>
        <p className="row">
          <a
            className="word chief"
            href={sheetAddress(carId, 'bar-order', asked)}
            target="_blank"
            rel="noreferrer"
          >
            Print the order sheet
          </a>
          <button type="button" className="word" onClick={() => go({ against: kept })}>
            Put it beside {car.spec}
          </button>
        </p>
      </div>
    );
  }
  return (
    <form
      className="question"
      onSubmit={(event) => {
        event.preventDefault();
        void take();
      }}
    >
      <label htmlFor={`${id} name`}>Keep it as a spec named</label>
      <input id={`${id} name`} value={name} onChange={(event) => setName(event.target.value)} />
      <label htmlFor={`${id} by`}>proposed by</label>
      <input id={`${id} by`} value={by} onChange={(event) => setBy(event.target.value)} />
      {taken && <p className="told">The car has a spec of this name. Choose another.</p>}
      <Told message={told} />
      <button type="submit" className="word" disabled={name.trim() === '' || taken}>
        Keep the proposal
      </button>
      <p className="soft">
        The order sheet is printed from a kept spec, so that paper and file say the same.
      </p>
    </form>
  );
}
