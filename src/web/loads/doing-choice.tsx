/** What the car is doing: a case by its picture, a row of a log, or figures of one's own. */
import { doingsOf, logNames } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { CarPicture } from './car-picture.tsx';
import { Following } from './following.tsx';
import { InFigures } from './in-figures.tsx';
import { LogRow } from './log-row.tsx';
import { useCase } from './use-case.ts';

/** The cases alone, each by its picture. */
export function DoingPictures() {
  const { place, go } = usePage();
  const { car } = useCar();
  const plain = place.log === undefined && place.changed === undefined;
  return (
    <fieldset className="words doings">
      <legend className="unseen">What the car is doing</legend>
      {doingsOf(car).map(({ name, means: words, doing }) => (
        <button
          key={name}
          type="button"
          aria-pressed={plain && place.doing === name}
          title={words}
          onClick={() => go({ doing: name, log: undefined, row: undefined, changed: undefined })}
        >
          <CarPicture doing={doing} />
          {name.replaceAll('-', ' ')}
        </button>
      ))}
    </fieldset>
  );
}

export function DoingChoice() {
  const { car } = useCar();
  const { means, told, notes } = useCase();
  return (
    <>
      <DoingPictures />
      <p className="doing-means">{means}</p>
      {told !== undefined && <p role="status">{told}</p>}
      <Following />
      <InFigures />
      {logNames(car).length > 0 && <LogRow />}
      {notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
    </>
  );
}
