/** A row of a log: its hardest moments by name, any other along the trace or by its time. */
import { useId, useMemo } from 'react';
import { type LogAnswer, logNames, rowAt } from '../../questions/index.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { Chart } from '../stops/chart.tsx';
import { TypedAmount } from '../typed-amount.tsx';
import { useLog } from './use-case.ts';

export function LogRow() {
  const { place, go } = usePage();
  const { car } = useCar();
  const log = useLog();
  return (
    <details className="log-row" open={place.log !== undefined}>
      <summary>A row of a log</summary>
      <fieldset className="words">
        <legend className="unseen">Which log</legend>
        {logNames(car).map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={place.log === name}
            onClick={() => go({ log: name, row: 0, changed: undefined })}
          >
            {name}
          </button>
        ))}
      </fieldset>
      {log !== undefined &&
        !log.reached &&
        log.problems.map(({ message, remedy }) => (
          <p key={message} role="alert">
            {message} {remedy}
          </p>
        ))}
      {log?.reached === true && <Rows of={log} />}
    </details>
  );
}

/** So many points are enough for a trace on a card. */
const POINTS = 600;

function Rows({ of }: { of: Extract<LogAnswer, { reached: true }> }) {
  const { place, go } = usePage();
  const id = useId();
  const { log, extremes, doubts } = of;
  const row = Math.min(place.row ?? 0, log.lines.length - 1);
  const { time } = log.channels;
  const to = (next: number): void => go({ row: next });
  const trace = useMemo(() => {
    const every = Math.max(1, Math.ceil(log.lines.length / POINTS));
    const rows = Array.from({ length: Math.ceil(log.lines.length / every) }, (_, k) => k * every);
    const line = (values: Float64Array | undefined, scale: number) =>
      rows.map((k) => {
        const value = values?.[k] ?? Number.NaN;
        return Number.isFinite(value) ? value / scale : null;
      });
    return {
      across: rows.map((k) => log.channels.time?.[k] ?? k),
      lines: [
        { name: 'fore and aft, g', values: line(log.channels.longitudinal, STANDARD_GRAVITY) },
        { name: 'sideways, g', values: line(log.channels.lateral, STANDARD_GRAVITY), dashed: true },
        { name: 'speed, 100 km/h', values: line(log.channels.speed, 100 / 3.6), plain: true },
      ].filter(({ values }) => values.some((value) => value !== null)),
    };
  }, [log]);
  const now = time?.[row] ?? row;
  return (
    <>
      <fieldset className="words">
        <legend className="unseen">Hardest moments</legend>
        {extremes.map(({ name, row: hardest }) => (
          <button key={name} type="button" aria-pressed={row === hardest} onClick={() => to(hardest)}>
            {name.replaceAll('-', ' ')}
          </button>
        ))}
      </fieldset>
      <Chart
        told={`The log ${of.name} over its time; the row chosen stands at ${now.toFixed(2)}`}
        across={trace.across}
        acrossName={time === undefined ? 'row' : 's'}
        lines={trace.lines}
        now={now}
      />
      <p className="soft">
        Full: fore and aft, g. Dashed: sideways, g. In ink: speed in 100 km/h. The upright line is the row.
      </p>
      <div className="typed-row">
        <label htmlFor={id}>row</label>
        <input
          id={id}
          type="range"
          min={0}
          max={log.lines.length - 1}
          value={row}
          aria-valuetext={`line ${log.lines[row]}, ${now.toFixed(2)} s`}
          onChange={({ target }) => to(Number(target.value))}
        />
        {time !== undefined && (
          <TypedAmount
            name="time in the log"
            value={now}
            si="s"
            unit="s"
            digits={2}
            onTake={(wanted) => {
              const found = rowAt(log, wanted);
              if (found !== undefined) to(found);
            }}
          />
        )}
      </div>
      {doubts.map(({ message, remedy }) => (
        <p key={message} className="note">
          {message} {remedy}
        </p>
      ))}
    </>
  );
}
