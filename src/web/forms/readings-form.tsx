/** The readings of the stop: each with how it stands, how well it is known, and the way to measure it again. */
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { type Field, fieldsOf } from './fields.ts';
import { PartField } from './part-field.tsx';
import { ReadingField } from './reading-field.tsx';
import { TableField } from './table-field.tsx';
import { WordField } from './word-field.tsx';

export function ReadingsForm() {
  const { place } = usePage();
  const { car, file } = useCar();
  const fields = fieldsOf(car, place.stop, place.wheel);
  const list = (of: readonly Field[]) => (
    <ul>
      {of.map((field) => (
        <li key={`${file.id} ${car.spec} ${field.kind} ${field.path.join('.')}`}>
          <FieldIs field={field} />
        </li>
      ))}
    </ul>
  );
  const parts = fields.filter((field) => field.kind === 'part');
  return (
    <div className="readings">
      {car.spec !== car.specs[0] && (
        <p className="note">
          What is kept here goes into the changes of the spec "{car.spec}", not into the file's own state.
        </p>
      )}
      {list(fields.filter((field) => field.kind !== 'part'))}
      {parts.length > 0 && (
        <>
          <h3>Parts that the file does not have</h3>
          {list(parts)}
        </>
      )}
      <p className="soft">Notes, and a part that is to be taken out, are changed in car.yaml itself.</p>
    </div>
  );
}

function FieldIs({ field }: { field: Field }) {
  switch (field.kind) {
    case 'word':
      return <WordField field={field} />;
    case 'table':
      return <TableField field={field} />;
    case 'part':
      return <PartField field={field} />;
    default:
      return <ReadingField field={field} />;
  }
}
