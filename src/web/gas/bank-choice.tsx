/** Which bank is looked at and found, or both at once, each clear of the other. */
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

export function BankChoice() {
  const { place, go } = usePage();
  const { car } = useCar();
  const sides = (['left', 'right'] as const).filter((side) => car.form.exhaust?.[side] !== undefined);
  return (
    <fieldset className="words card-words">
      <legend className="unseen">Bank</legend>
      {sides.map((side) => (
        <button
          key={side}
          type="button"
          aria-pressed={place.both === undefined && place.bank === side}
          onClick={() => go({ bank: side, both: undefined })}
        >
          {side} bank
        </button>
      ))}
      {sides.length === 2 && (
        <button type="button" aria-pressed={place.both === true} onClick={() => go({ both: true })}>
          both banks
        </button>
      )}
    </fieldset>
  );
}
