/** Beside the gears: what is fitted or chosen, the sets of the stock nearest to what is wanted, thrust, and the chart on paper. */
import { useState } from 'react';
import type { RatiosReached } from '../../questions/index.ts';
import { plain } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { textsOf } from '../asked/fields.ts';
import { fetchRatioSheet } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { Chart } from '../stops/chart.tsx';
import { along } from './lines.ts';

export function RatioWords({ answer }: { readonly answer: RatiosReached }) {
  const { pairs, final } = answer;
  return (
    <section>
      <p>
        Final drive {final.text}; pairs {pairs.map(({ text }) => text).join(', ')}
      </p>
      <Chosen answer={answer} />
      <SaveChart />
      <Thrust answer={answer} />
    </section>
  );
}

const speedUnit = (speech: 'mm-N' | 'in-lbf'): string => (speech === 'mm-N' ? 'km/h' : 'mph');

function Chosen({ answer: { chosen, targets } }: { readonly answer: RatiosReached }) {
  const { speech } = usePage();
  if (chosen === undefined || targets === undefined) return null;
  const unit = speedUnit(speech);
  const of = (speed: number): string => plain(fromSI(speed, unit), 1);
  return (
    <>
      <h3>Nearest sets of the stock</h3>
      <p className="soft">
        Wanted: {targets.map(of).join(', ')} {unit}
      </p>
      <ul className="sentences">
        {chosen.map(({ final, pairs, speeds, miss, changed }) => (
          <li key={final.text}>
            Final {final.text}: {pairs.map((pair, k) => `${pair.text} ${of(speeds[k]!)}`).join(', ')}. Misses{' '}
            {(100 * miss).toFixed(1)} % in the mean;{' '}
            {changed.length === 0 ? 'nothing to change' : `to change: gear ${changed.join(', ')}`}.
          </li>
        ))}
      </ul>
    </>
  );
}

function Thrust({ answer: { thrust, resistance } }: { readonly answer: RatiosReached }) {
  const { speech } = usePage();
  if (thrust.length === 0) return null;
  const unit = speedUnit(speech);
  const force = speech === 'mm-N' ? 'kN' : 'lbf';
  const fastest = resistance.at(-1)!.speed;
  const across = Array.from({ length: 121 }, (_, k) => (fastest * k) / 120);
  const line = (points: readonly { readonly speed: number; readonly force: number }[]) =>
    along(
      points.map(({ speed, force: value }) => [speed, value]),
      across,
    ).map((each) => (each === null ? null : fromSI(each, force)));
  return (
    <figure>
      <figcaption>
        Thrust of each gear and, dashed, what resists on the level: {force} against {unit}
      </figcaption>
      <Chart
        told={`Thrust of ${thrust.length} gears and resistance against road speed`}
        across={across.map((speed) => fromSI(speed, unit))}
        acrossName={unit}
        lines={[
          ...thrust.map(({ gear, points }) => ({ name: String(gear), values: line(points) })),
          { name: 'resistance', values: line(resistance), dashed: true, plain: true },
        ]}
        height={230}
      />
    </figure>
  );
}

function SaveChart() {
  const { place, speech, say } = usePage();
  const { id, car } = useCar();
  const [asked, ask] = useState<'no' | 'waiting' | { readonly why: string }>('no');
  const take = async (): Promise<void> => {
    ask('waiting');
    say('Laying the chart out.');
    try {
      const pdf = await fetchRatioSheet(id, {
        asked: textsOf('ratios', place.asked),
        paper: speech === 'mm-N' ? 'A4' : 'Letter',
        units: speech,
        ...(car.spec === car.specs[0] ? {} : { spec: car.spec }),
      });
      const link = document.createElement('a');
      link.href = URL.createObjectURL(pdf);
      link.download = `${id}-ratios.pdf`;
      link.click();
      URL.revokeObjectURL(link.href);
      ask('no');
      say('The chart is saved.');
    } catch (reason) {
      ask({ why: (reason as Error).message });
    }
  };
  return (
    <p className="row">
      <button type="button" className="word" disabled={asked === 'waiting'} onClick={() => void take()}>
        {asked === 'waiting' ? 'Laying the chart out …' : 'Save the ratio chart'}
      </button>
      {typeof asked === 'object' && <span role="alert">{asked.why}</span>}
    </p>
  );
}
