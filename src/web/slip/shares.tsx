/** What the ± is made of: each reading's share as a bar, the worst first. */

import { spreadWords } from '../../measured/reading.ts';
import type { Spread } from '../../measured/spread.ts';
import type { WorkingReached } from '../../questions/index.ts';
import { type Speech, unitAfter } from '../../units/show.ts';
import { ownUnit } from '../../units/unit.ts';
import { type SpokenFigure, spokenOwn } from '../spoken.ts';
import { usePage } from '../state.tsx';

const MOST = 8;
const percent = (share: number): string => (share >= 0.01 ? `${Math.round(share * 100)} %` : 'under 1 %');

interface Props {
  readonly spread: Spread;
  /** Whose spread it is: what a reading moves is said in its units. */
  readonly figure: SpokenFigure;
  readonly working: Pick<WorkingReached, 'readings'>;
}

export function Shares({ spread, figure, working }: Props) {
  const { speech } = usePage();
  const worst = spread.shares[0];
  const shown = spread.shares.slice(0, MOST);
  const rest = spread.shares.slice(MOST);
  return (
    <section>
      <h3>What the ± is made of</h3>
      {worst !== undefined && worst.share > 0.3 && (
        <p>
          Measure this better first: {worst.label}. It is {percent(worst.share)} of the spread.
        </p>
      )}
      {worst === undefined && <p className="soft">No reading that this leans on has a spread.</p>}
      <ol className="shares">
        {shown.map((share) => {
          const reading = working.readings[share.path];
          const moved = movedBy(figure, Math.abs(share.contribution), speech);
          return (
            <li key={`${share.path} ${share.label}`}>
              <span className="share-words">
                <span>
                  {share.label}
                  <span className="soft"> {sideOf(share.path)}</span>
                </span>
                <b className="number">{percent(share.share)}</b>
              </span>
              <span className="share-bar" aria-hidden="true">
                <span style={{ width: `${Math.max(0.5, share.share * 100)}%` }} />
              </span>
              <span className="soft">
                moves the figure by {moved.text}
                {unitAfter(moved.unit)}
                {reading !== undefined && `; ${spreadWords(reading)}`}
              </span>
            </li>
          );
        })}
      </ol>
      {rest.length > 0 && (
        <p className="soft">
          {rest.length} more readings make {percent(rest.reduce((sum, each) => sum + each.share, 0))}{' '}
          together.
        </p>
      )}
      {spread.unknown.length > 0 && (
        <p>
          Not in the ±, since the linkage does not reach so far when these are moved:{' '}
          {spread.unknown.join(', ')}.
        </p>
      )}
    </section>
  );
}

/** A difference has no part in where a scale of temperature begins. */
const movedBy = ({ unit, spoken }: SpokenFigure, by: number, speech: Speech) => {
  const shift = spoken === undefined ? 0 : ownUnit(spoken[speech === 'mm-N' ? 0 : 1]).shift;
  return spokenOwn({ value: by + shift, unit, ...(spoken === undefined ? {} : { spoken }) }, speech);
};

/** `front left`, where the path says so. */
const sideOf = (path: string): string =>
  /^(front|rear)\.(left|right)\./.exec(path)?.slice(1, 3).join(' ') ?? '';
