/** The bar that is proposed for the coil: what it does at the wheel, its sizes, and what it bears. */
import type { BarProposal, ProposedBar } from '../../../questions/index.ts';
import { wheelName } from '../../place.ts';
import { spoken } from '../../spoken.ts';
import { usePage } from '../../state.tsx';
import { CoilAndBar } from './coil-and-bar.tsx';
import { type Fact, Facts } from './facts.tsx';
import { KeepSpec } from './keep-spec.tsx';
import { TwoCurves } from './two-curves.tsx';

export function BarProposed({ answer }: { answer: BarProposal }) {
  const { speech } = usePage();
  const [chosen] = answer.bars;
  if (chosen === undefined) return null;
  const size = spoken(chosen.diameter, 'm', speech);
  return (
    <section className="proposal" aria-label="Proposal">
      <h3>
        Bar of {size.text} {size.unit}
        {chosen.bore > 0 && `, bore ${spoken(chosen.bore, 'm', speech).text} ${size.unit}`}, active over{' '}
        {spoken(chosen.activeLength, 'm', speech).text} {size.unit}
      </h3>
      <CoilAndBar
        names={['coil', 'bar']}
        wheelRate={[answer.wheelRateCoilStanding, chosen.wheelRateStanding]}
        mass={[answer.coilMass, chosen.mass]}
      />
      <p className="soft">Mass of the bar without its heads. Wheel rate of coil and bar alone.</p>
      <TwoCurves
        travel={answer.travel}
        names={['coil', 'bar']}
        torque={{ now: answer.torqueCoil, proposed: chosen.torque }}
        wheelRate={{ now: answer.wheelRateCoil, proposed: chosen.wheelRate }}
      />
      {answer.notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      <Facts facts={sizesOf(chosen)} />
      <h3>What it bears</h3>
      <Facts facts={strengthOf(chosen)} />
      <h3>How near it comes to the coil</h3>
      <Facts facts={nearnessOf(answer, chosen)} />
      {answer.cautions.map((caution) => (
        <p key={caution} className="caution">
          <b>Caution.</b> {caution}
        </p>
      ))}
      <KeepSpec
        suggested={`bar ${size.text} ${size.unit}, ${wheelName(answer.wheel)}`.replaceAll('\u2009', ' ')}
        note={`torsion bar in place of the coil, ${wheelName(answer.wheel)}`}
        changes={answer.change}
      />
    </section>
  );
}

const sizesOf = (bar: ProposedBar): readonly Fact[] => [
  ['rate of the bar', bar.rate, 'N m/rad'],
  ['parallel length', bar.parallelLength, 'm'],
  ['head diameter', bar.headDiameter, 'm'],
  ['radius at the heads', bar.filletRadius, 'm'],
  ['hand in bump', bar.hand],
  ['twist as surveyed', bar.twistAsSurveyed, 'rad'],
  ['smallest step of the splines', bar.splineStep, 'rad'],
  ['splines set from the marks', bar.setting && settingWords(bar.setting)],
  ['torque that the setting is off by', bar.setting && bar.splineError, 'N m'],
];

const strengthOf = (bar: ProposedBar): readonly Fact[] => [
  ['shear stress at full bump', bar.fullBump.stress, 'Pa'],
  ['shear stress past full bump', bar.overtravel.stress, 'Pa'],
  ['yield in shear, low end of the table', bar.shearYield, 'Pa'],
  ['tensile strength, low end of the table', bar.tensileStrength, 'Pa'],
  [
    'stress past full bump as a part of yield',
    bar.shearYield && `${Math.round((bar.overtravel.stress / bar.shearYield) * 100)} %`,
  ],
  ['life, assumed demonstration days', bar.life && `${days(bar.life.low)} to ${days(bar.life.high)}`],
];

const nearnessOf = (answer: BarProposal, bar: ProposedBar): readonly Fact[] => [
  ['torque it cannot match, at the worst', bar.worst.difference, 'N m'],
  ['torque that no bar can match, mean', answer.cannotMatch, 'N m'],
  ['car stands higher at this wheel by', bar.standsHigher, 'm'],
  ['torque against the working direction', bar.reversed === 0 ? undefined : bar.reversed, 'N m'],
];

type Setting = NonNullable<ProposedBar['setting']>;

const settingWords = ({ moveFirst, moveSecond }: Setting): string =>
  `rocker ${teeth(moveFirst)}, anchor ${teeth(moveSecond)}`;

const teeth = (count: number): string =>
  `${count > 0 ? '+' : count < 0 ? '−' : ''}${Math.abs(count)} ${Math.abs(count) === 1 ? 'tooth' : 'teeth'}`;

/** Two digits: a life has no more. */
const days = (value: number): string =>
  value > 1e6 ? 'more than a million' : String(Number(value.toPrecision(2)));
