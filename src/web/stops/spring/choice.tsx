/** A question's choice out of a few words, on one line with its name. */
import { useId } from 'react';
import { materialChoices } from '../../../questions/index.ts';

interface ChoiceProps<T extends string> {
  readonly name: string;
  readonly of: readonly T[];
  readonly chosen: T;
  readonly onChoose: (chosen: T) => void;
  /** A line of its own for the words, where they are long. */
  readonly wide?: boolean;
}

export function Choice<T extends string>({ name, of, chosen, onChoose, wide = false }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className="asked">
      <label htmlFor={id} className={wide ? 'whole' : undefined}>
        {name}
      </label>
      <select
        id={id}
        className={wide ? 'whole' : undefined}
        value={chosen}
        onChange={(event) => onChoose(of.find((each) => each === event.target.value) ?? chosen)}
      >
        {of.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
    </div>
  );
}

const MATERIALS = materialChoices();

interface MaterialProps {
  readonly kind: 'bar' | 'wire';
  readonly chosen: string;
  readonly onChoose: (name: string) => void;
}

/** A material of the table, of the form that is wanted. */
export function Material({ kind, chosen, onChoose }: MaterialProps) {
  const of = MATERIALS.filter((material) => material.kind === kind);
  return (
    <>
      <Choice
        name="material, from the table"
        of={of.map(({ name }) => name)}
        chosen={chosen}
        onChoose={onChoose}
        wide
      />
      <p className="soft">{of.find(({ name }) => name === chosen)?.means}</p>
    </>
  );
}
