/** One place on the floor: the car in plan from its own points, its name, and what stands in the way. */
import { useEffect, useMemo, useState } from 'react';
import { AS_SURVEYED, drawCar, stateOfReadings } from '../../questions/index.ts';
import { type CarFile, type CarOnFloor, fetchCar } from '../client.ts';
import type { Opened } from '../engine/answers.ts';
import { useOpened } from '../engine/opened.ts';
import { sourceOf } from '../sheet/use-car-file.ts';
import { doubtWords } from '../stops/doubts.ts';
import { PlanOfCar } from './plan-of-car.tsx';

interface Props {
  readonly car: CarOnFloor;
  readonly place: string;
  readonly kind: 'patch' | 'bay';
  readonly onOpen: () => void;
}

export function Bay({ car, place, kind, onOpen }: Props) {
  const [file, setFile] = useState<CarFile>();
  const [failed, setFailed] = useState(false);

  useEffect(() => {
    let current = true;
    fetchCar(car.id).then(
      (answer) => current && setFile(answer),
      () => current && setFailed(true),
    );
    return () => {
      current = false;
    };
  }, [car]);

  const source = useMemo(() => (file === undefined ? undefined : sourceOf(file, undefined)), [file]);
  const opened = useOpened(source);
  const read = opened.state === 'answered' ? opened.answer : undefined;
  const drawing = useMemo(() => (read?.ok ? drawCar(read.car, AS_SURVEYED) : undefined), [read]);

  return (
    <button type="button" className={`bay ${kind === 'patch' ? 'patch' : 'plain'}`} onClick={onOpen}>
      <span className="bay-name">{place}</span>
      <PlanOfCar drawing={drawing} kind={kind} />
      <span className="ruler-words soft">1 m</span>
      <span className="bay-words">
        <b className="car-name">{car.name}</b>
        {car.chassis !== '' && <span>chassis {car.chassis}</span>}
        {car.manner !== '' && <span className="soft">in the manner of {car.manner}</span>}
        {car.invented && <span className="invented">invented example</span>}
        {wordsOf(failed || opened.state === 'failed', read).map((sentence) => (
          <span key={sentence} className="bay-way">
            {sentence}
          </span>
        ))}
      </span>
    </button>
  );
}

/** What stands in the way, and how well the car is known. */
function wordsOf(failed: boolean, read: Opened | undefined): readonly string[] {
  if (failed) return ['The file cannot be fetched.'];
  if (read === undefined) return ['Reading the car.'];
  if (!read.ok) {
    const { length } = read.problems;
    const what = length === 1 ? 'One thing in the file needs' : `${length} things in the file need`;
    return [`${what} a hand before it can be worked with.`];
  }
  const { usual, total } = stateOfReadings(read.car);
  const known =
    usual > 0 ? `${usual} of ${total} readings have only the usual spread.` : 'Every reading has its spread.';
  const { warnings } = read.car;
  return warnings.length === 0 ? [known] : [doubtWords(warnings), known];
}
