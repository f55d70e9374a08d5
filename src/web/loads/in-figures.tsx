/** The case in figures: each may be slid or typed, put back, and kept in the car file under a name. */
import { type Doing, WHEEL_NAMES, type WheelName } from '../../questions/index.ts';
import { spokenUnit } from '../../units/show.ts';
import { usePage } from '../state.tsx';
import { TypedAmount } from '../typed-amount.tsx';
import { CaseSlider } from './case-slider.tsx';
import { ContactTyped } from './contact-typed.tsx';
import { KeepCase } from './keep-case.tsx';
import { useCase } from './use-case.ts';

const WHEEL_WORDS: Readonly<Record<WheelName, string>> = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
};

const OF_CAR = [
  ['longitudinal', 'fore and aft, braking negative', 'm/s^2', 'gn', 2, [2]],
  ['lateral', 'sideways, to the left positive', 'm/s^2', 'gn', 2, [2]],
  ['vertical', 'upward, on top of gravity', 'm/s^2', 'gn', 2, [2]],
  ['speed', 'speed', 'm/s', 'km/h', 0, [100]],
] as const;

export function InFigures() {
  const { place, go, speech } = usePage();
  const { doing } = useCase();
  const change = (of: Partial<Doing>): void => go((from) => ({ changed: { ...from.changed, ...of } }));
  const without = <T,>(of: Partial<Record<WheelName, T>>, wheel: WheelName): Partial<Record<WheelName, T>> =>
    Object.fromEntries(Object.entries(of).filter(([name]) => name !== wheel));
  return (
    <details className="in-figures">
      <summary>In figures, slid or typed</summary>
      <div className="typed-rows">
        {OF_CAR.map(([key, words, si, unit, digits, every]) => (
          <CaseSlider
            key={key}
            slid={key}
            {...{ words, si, unit, digits, every }}
            value={doing[key]}
            onTake={(value) => change({ [key]: value })}
          />
        ))}
        <CaseSlider
          slid="rack"
          words="rack, to the left positive"
          value={doing.rack}
          si="m"
          unit={spokenUnit('m', speech)}
          digits={speech === 'mm-N' ? 1 : 2}
          every={speech === 'mm-N' ? [10, 20] : [0.5, 1]}
          onTake={(rack) => change({ rack })}
        />
        <p className="soft">
          ± follows a slider between places of it that are worked out, the nearest first; in full it comes
          when the hand rests.
        </p>
        <div className="typed-row">
          <span>front brakes, left empty: as filed</span>
          <TypedAmount
            name="front brakes, left empty: as filed"
            value={doing.frontBrakes}
            si="1"
            unit="%"
            digits={0}
            onTake={(frontBrakes) => change({ frontBrakes })}
            onEmpty={() => go((from) => ({ changed: withoutBrakes(from.changed) }))}
          />
        </div>
      </div>
      <h4>A kerb: scale loads of that wheel, on top</h4>
      <div className="typed-rows wheels-typed">
        {WHEEL_NAMES.map((wheel) => (
          <div key={wheel} className="typed-row">
            <span>{WHEEL_WORDS[wheel]}</span>
            <TypedAmount
              name={`kerb, ${WHEEL_WORDS[wheel]}`}
              value={doing.strikes[wheel]}
              si="1"
              unit="1"
              digits={1}
              onTake={(loads) =>
                change({
                  strikes: { ...doing.strikes, [wheel]: Math.max(0, loads) },
                  contacts: without(doing.contacts, wheel),
                })
              }
              onEmpty={() => change({ strikes: without(doing.strikes, wheel) })}
            />
          </div>
        ))}
      </div>
      <h4>Forces of the ground on a tyre, given instead of found</h4>
      {WHEEL_NAMES.map((wheel) => (
        <ContactTyped
          key={wheel}
          name={WHEEL_WORDS[wheel]}
          typed={doing.contacts[wheel]}
          onTake={(typed) =>
            change({
              strikes: without(doing.strikes, wheel),
              contacts:
                typed === undefined ? without(doing.contacts, wheel) : { ...doing.contacts, [wheel]: typed },
            })
          }
        />
      ))}
      {place.changed !== undefined && (
        <button type="button" onClick={() => go({ changed: undefined })}>
          back to the case as it was
        </button>
      )}
      <KeepCase doing={doing} />
    </details>
  );
}

function withoutBrakes(of: Partial<Doing> | undefined): Partial<Doing> | undefined {
  const { frontBrakes: _, ...rest } = of ?? {};
  return Object.keys(rest).length === 0 ? undefined : rest;
}
