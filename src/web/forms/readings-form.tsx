/** The readings of the stop: each with how it stands, how well it is known, and the way to measure it again. */
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { fieldsOf } from './fields.ts';
import { ReadingField } from './reading-field.tsx';

export function ReadingsForm() {
  const { place } = usePage();
  const { car, file } = useCar();
  const fields = fieldsOf(car, place.stop, place.wheel);
  const warnings = car.warnings.filter((problem) =>
    problem.path.startsWith(`${place.wheel.end}.${place.wheel.side}`),
  );
  return (
    <div className="readings">
      {car.spec !== car.specs[0] && (
        <p className="note">
          What is kept here goes into the changes of the spec "{car.spec}", not into the file's own state.
        </p>
      )}
      {warnings.map((problem) => (
        <p key={`${problem.code} ${problem.path}`} className="note">
          {problem.message} {problem.remedy}
        </p>
      ))}
      <ul>
        {fields.map((field) => (
          <li key={field.path.join('.')}>
            <ReadingField key={`${file.id} ${car.spec} ${field.path.join('.')}`} field={field} />
          </li>
        ))}
      </ul>
      <p className="soft">Curves of dampers and rubbers, choices and notes are changed in car.yaml itself.</p>
    </div>
  );
}
