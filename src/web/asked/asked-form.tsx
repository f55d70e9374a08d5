/** Fields of a card, in lists that may be folded and in tables: what is typed is kept in the address. */
import { type ReactNode, useState } from 'react';
import type { FieldsRead } from '../../questions/index.ts';
import { usePage } from '../state.tsx';
import { ListField } from './field.tsx';
import { type FieldGroup, fieldsIn } from './fields.ts';
import { TypedTable } from './typed-table.tsx';

interface Props {
  /** Under this name the fields are kept in the address. */
  readonly card: string;
  readonly groups: readonly FieldGroup[];
  readonly read: Pick<FieldsRead<unknown>, 'wrong'>;
}

export function AskedForm({ card, groups, read }: Props) {
  return (
    <form className="question day-form" onSubmit={(event) => event.preventDefault()}>
      {groups.map((group, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the groups of a card stay where they are
        <Folding key={k} card={card} group={group}>
          {'fields' in group ? (
            group.fields.map((field) => (
              <ListField key={field.key} card={card} field={field} wrong={read.wrong[field.key]} />
            ))
          ) : (
            <TypedTable card={card} table={group} wrong={read.wrong} />
          )}
        </Folding>
      ))}
    </form>
  );
}

interface FoldingProps extends Pick<Props, 'card'> {
  readonly group: FieldGroup;
  readonly children: ReactNode;
}

function Folding({ card, group, children }: FoldingProps) {
  const { place } = usePage();
  // what was typed is not hidden when the page is opened again
  const [open, setOpen] = useState(fieldsIn([group]).some(({ key }) => `${card}.${key}` in place.asked));
  if (group.title === undefined) return <>{children}</>;
  return (
    <details open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary className="word">{group.title}</summary>
      <div className="day-group">{children}</div>
    </details>
  );
}
