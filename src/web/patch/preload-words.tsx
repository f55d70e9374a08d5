/** What a tenth of a turn of a drop link does, told where the bars go on. */
import { spokenAmount } from '../../units/show.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

export function PreloadWords() {
  const { speech } = usePage();
  const { key, source } = useCar();
  const asked = useAnswer(`bar preload ${key}`, () => ask('barPreload', source), 0);
  if (asked.state !== 'answered') return null;
  return asked.answer.map(({ end, torque, cross }) => (
    <p key={end} className="soft">
      A tenth of a turn of a {end} link is {spokenAmount(torque, 'N m', 1, speech)} in the bar and{' '}
      {(100 * cross).toFixed(2)} % of cross weight.
    </p>
  ));
}
