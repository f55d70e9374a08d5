/** One figure as a line of a card: what it is, its value with spread, and the way to its working. */

import type { Figure } from '../../questions/figure.ts';
import { unitAfter } from '../../units/show.ts';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';

interface Props {
  readonly figure: Figure;
  readonly number?: number | undefined;
  readonly onLight?: ((figure: Figure | undefined) => void) | undefined;
  /** Left out: the figure has no working of its own to open. */
  readonly onOpen?: ((figure: Figure) => void) | undefined;
}

export function FigureRow({ figure, number, onLight, onOpen }: Props) {
  const { speech } = usePage();
  const shown = spoken(figure.value, figure.unit, speech, figure.spread?.u);
  const inside = (
    <>
      <span className="row-means">
        {number !== undefined && (
          <span className="balloon" aria-hidden="true">
            {number}
          </span>
        )}
        {figure.means}
      </span>
      {Number.isFinite(figure.value) ? (
        <span className="row-value">
          <b className="number">{shown.text}</b>
          {shown.spread !== undefined && <span className="number soft"> ± {shown.spread}</span>}
          {unitAfter(shown.unit)}
        </span>
      ) : (
        <span className="row-value soft">not here</span>
      )}
      {figure.say !== undefined && <span className="row-say soft">{figure.say}</span>}
    </>
  );
  if (onOpen === undefined) return <div className={`figure-row rank-${figure.rank}`}>{inside}</div>;
  return (
    <button
      type="button"
      className={`figure-row rank-${figure.rank}`}
      title="Open the working"
      onPointerEnter={() => onLight?.(figure)}
      onPointerLeave={() => onLight?.(undefined)}
      onFocus={() => onLight?.(figure)}
      onBlur={() => onLight?.(undefined)}
      onClick={() => onOpen(figure)}
    >
      {inside}
    </button>
  );
}
