/** Force of the ground on one tyre, typed: with its load the rest may be typed too. */
import { type Contact, HANDED_ON, type HandedOn } from '../../questions/index.ts';
import { spokenUnit } from '../../units/show.ts';
import { usePage } from '../state.tsx';
import { TypedAmount } from '../typed-amount.tsx';

const BY_WORDS: Readonly<Record<HandedOn, string>> = {
  brake: 'the brake',
  shaft: 'the drive shaft',
  spin: 'the spin of the wheel',
};

interface Props {
  readonly name: string;
  readonly typed: Contact | undefined;
  /** Undefined: found again, and not given. */
  readonly onTake: (typed: Contact | undefined) => void;
}

export function ContactTyped({ name, typed, onTake }: Props) {
  const { speech } = usePage();
  const unit = spokenUnit('N', speech);
  return (
    <fieldset className="contact-typed">
      <legend>{name}</legend>
      <div className="typed-row">
        <span>up</span>
        <TypedAmount
          name={`${name}, up`}
          value={typed?.up}
          si="N"
          unit={unit}
          digits={0}
          onTake={(up) => onTake({ ...typed, up: Math.max(0, up) })}
          onEmpty={() => onTake(undefined)}
        />
      </div>
      {typed !== undefined && (
        <>
          {(['forward', 'left'] as const).map((way) => (
            <div key={way} className="typed-row">
              <span>{way}</span>
              <TypedAmount
                name={`${name}, ${way}`}
                value={typed[way]}
                si="N"
                unit={unit}
                digits={0}
                onTake={(force) => onTake({ ...typed, [way]: force })}
                onEmpty={() => onTake(without(typed, way))}
              />
            </div>
          ))}
          <label className="typed-row">
            <span>its torque is taken by</span>
            <select
              value={typed.by ?? ''}
              onChange={({ target }) => {
                const by = HANDED_ON.find((each) => each === target.value);
                onTake(by === undefined ? without(typed, 'by') : { ...typed, by });
              }}
            >
              <option value="">brake or shaft, by its sign</option>
              {HANDED_ON.map((each) => (
                <option key={each} value={each}>
                  {BY_WORDS[each]}
                </option>
              ))}
            </select>
          </label>
        </>
      )}
    </fieldset>
  );
}

function without(typed: Contact, key: 'forward' | 'left' | 'by'): Contact {
  const { [key]: _, ...rest } = typed;
  return rest as Contact;
}
