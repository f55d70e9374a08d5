/** One place on the floor: the car in plan from its own points, its name, and what stands in the way. */
import { useEffect, useMemo, useState } from 'react';
import { AS_SURVEYED, drawCar, stateOfReadings } from '../../questions/index.ts';
import { type CarFile, type CarOnFloor, fetchCar } from '../client.ts';
import { readFile } from '../sheet/car-file.tsx';
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

  const read = useMemo(() => (file === undefined ? undefined : readFile(file, undefined)), [file]);
  const drawing = useMemo(() => (read?.ok ? drawCar(read.car, AS_SURVEYED) : undefined), [read]);
  const state = read?.ok ? stateOfReadings(read.car) : undefined;
  const way = failed
    ? 'The file cannot be fetched.'
    : read === undefined
      ? ''
      : !read.ok
        ? `${read.problems.length === 1 ? 'One thing in the file needs' : `${read.problems.length} things in the file need`} a hand before it can be worked with.`
        : state !== undefined && state.usual > 0
          ? `${state.usual} of ${state.total} readings have only the usual spread.`
          : 'Every reading has its spread.';
  const warnings = read?.ok ? read.car.warnings.length : 0;

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
        <span className="bay-way">{way}</span>
        {warnings > 0 && (
          <span>{warnings === 1 ? 'One reading looks odd.' : `${warnings} readings look odd.`}</span>
        )}
      </span>
    </button>
  );
}
