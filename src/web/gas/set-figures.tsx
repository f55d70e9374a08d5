/** The figures of a set on the card: its pipes as a list, its collector as the gas sees it. */
import { type PrimariesSet, type PrimaryOfSet, passedWords } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { usePage } from '../state.tsx';

interface PipesProps {
  readonly set: PrimariesSet;
  readonly lit: number | undefined;
  readonly onLight: (cylinder: number | undefined) => void;
  /** What begins at a collector is no cylinder's, and a tail ends in the open. */
  readonly stage?: 'primaries' | 'secondaries' | 'tail';
}

export function Pipes({ set, lit, onLight, stage = 'primaries' }: PipesProps) {
  const { speech } = usePage();
  // inches ask for one more place than millimetres
  const more = speech === 'mm-N' ? 0 : 1;
  const long = (value: number): string => spokenAmount(value, 'm', 1 + more, speech);
  const bends = set.pipes.reduce((sum, pipe) => sum + pipe.bends, 0);
  return (
    <section>
      {set.breaches.map((breach) => (
        <p key={breach} role="alert">
          {breach}
        </p>
      ))}
      <div className="figure-row rank-1">
        <span className="row-means">{LENGTH_WORDS[stage]}</span>
        <span className="row-value">
          <b className="number">{long(set.target)}</b>
        </span>
        <span className="row-say soft">
          on the drawing equal within {Math.max(0.001, 1000 * set.apart).toFixed(3)} mm; {bends} bends in{' '}
          {set.pipes.length} pipes; {spokenAmount(set.mass, 'kg', 2, speech)} of tube
        </span>
        <span className="row-say soft">{tubeWords(set, long, stage)}</span>
      </div>
      <table className="pipes">
        <caption className="unseen">The pipes of this set</caption>
        <thead>
          <tr>
            <th scope="col">{stage === 'primaries' ? 'cyl.' : 'pipe'}</th>
            <th scope="col">inlet</th>
            <th scope="col">bends</th>
            <th scope="col">turned</th>
            <th scope="col">tightest</th>
          </tr>
        </thead>
        <tbody>
          {set.pipes.map((pipe) => (
            <PipeRow
              key={pipe.cylinder}
              pipe={pipe}
              lit={lit === pipe.cylinder}
              onLight={onLight}
              long={long}
            />
          ))}
        </tbody>
      </table>
      <p className="soft">Tightest: where least is to spare beyond what was asked, metal to metal, cold.</p>
    </section>
  );
}

const LENGTH_WORDS = {
  primaries: 'length of each, flange to collector',
  secondaries: 'length of each, collector to last collector',
  tail: 'length, last collector to its end',
} as const;

/** The tube, and the larger ones that follow it. */
function tubeWords(
  { pipes }: PrimariesSet,
  long: (value: number) => string,
  stage: 'primaries' | 'secondaries' | 'tail',
): string {
  const [first, ...more] = pipes[0]!.tubes;
  const steps = more.map(({ od, wall }, k) => {
    const from = pipes.map(({ tubes }) => tubes[k + 1]!.from);
    const [least, most] = [long(Math.min(...from)), long(Math.max(...from))];
    const where = least === most ? least : `between ${least} and ${most}`;
    return `, then ${long(od)} × ${long(wall)}, which begins ${where} from ${stage === 'primaries' ? 'the flange' : 'its collector'}`;
  });
  return `tube ${long(first!.od)} × ${long(first!.wall)}${steps.join('')}`;
}

interface RowProps {
  readonly pipe: PrimaryOfSet;
  readonly lit: boolean;
  readonly onLight: (cylinder: number | undefined) => void;
  readonly long: (value: number) => string;
}

function PipeRow({ pipe, lit, onLight, long }: RowProps) {
  const { cylinder, inlet, bends, turned, tightest } = pipe;
  const { name } = pipe.pipe;
  const whose = name === String(cylinder) ? `Cylinder ${name}` : `Pipe ${name}`;
  return (
    <tr data-lit={lit}>
      <th scope="row">
        <button
          type="button"
          className="balloon"
          aria-pressed={lit}
          aria-label={`${whose}: show this pipe alone`}
          onClick={() => onLight(lit ? undefined : cylinder)}
        >
          {name}
        </button>
      </th>
      <td className="number">{inlet}</td>
      <td className="number">{bends}</td>
      <td className="number">{spokenAmount(turned, 'rad', 0)}</td>
      <td>
        {tightest === undefined ? (
          <span className="soft">nothing near</span>
        ) : (
          <>
            <span className="number">{long(tightest.gap)}</span> to {tightest.against}
          </>
        )}
      </td>
    </tr>
  );
}

export function Collector({ set, stage = 'primaries' }: Pick<PipesProps, 'set' | 'stage'>) {
  const own = stage === 'primaries';
  return (
    <section>
      <p>
        {own ? 'Firing order' : 'The order in which pulses come'} on this {own ? 'bank' : 'collector'}:{' '}
        <b className="number">{set.order.map((each) => nameOf(set, each)).join(' – ')}</b>. Round the
        collector that is inlet <b className="number">{set.order.map(({ inlet }) => inlet).join(' – ')}</b>
        {orderWords(set)}
      </p>
      <InletsOf set={set} />
      <p className="soft">
        The inlets as seen with the flow{set.collector.inRows ? '' : ', inlet 1 on top'}: the{' '}
        {own ? 'cylinder' : 'pipe'} that comes in there, and when{' '}
        {own ? 'it fires on this bank' : 'its pulse comes'}.
      </p>
    </section>
  );
}

const nameOf = (set: PrimariesSet, { cylinder }: { readonly cylinder: number }): string =>
  set.pipes.find((each) => each.cylinder === cylinder)!.pipe.name;

function orderWords(set: PrimariesSet): string {
  if (set.collector.inRows) return '.';
  return set.passed === 0
    ? `: each pulse enters beside the one before it, ${sense(set)}.`
    : `. ${passedWords(set.passed)}`;
}

/** Inlets are numbered right-handed about the flow. */
function sense(set: PrimariesSet): string {
  const [first, second] = set.order;
  const step = (second!.inlet - first!.inlet + set.pipes.length) % set.pipes.length;
  return step === 1 ? 'clockwise as seen with the flow' : 'anticlockwise as seen with the flow';
}

/** Place in the firing order of a bank. */
const ORDINALS = ['', '1st', '2nd', '3rd', '4th', '5th', '6th'] as const;

/** The inlets as seen with the flow, each with the cylinder that comes in there and when it fires. */
function InletsOf({ set }: { readonly set: PrimariesSet }) {
  const { seen } = set.collector;
  const apart = Math.min(
    ...seen.flatMap(([x, y], k) => seen.slice(k + 1).map((other) => Math.hypot(other[0] - x, other[1] - y))),
  );
  const scale = 100 / (Math.max(...seen.map(([x, y]) => Math.hypot(x, y))) + apart / 2);
  return (
    <svg
      className="ring"
      viewBox="-110 -110 220 220"
      role="img"
      aria-label="Inlets of the collector, seen with the flow"
    >
      {set.pipes.map(({ cylinder, inlet, pipe }) => {
        const [x, y] = [scale * seen[inlet - 1]![0], -scale * seen[inlet - 1]![1]];
        const fires = set.order.findIndex((each) => each.cylinder === cylinder) + 1;
        return (
          <g key={cylinder}>
            <circle cx={x} cy={y} r={(scale * apart) / 2 - 1} />
            <text x={x} y={y + 2} textAnchor="middle">
              {pipe.name}
            </text>
            <text x={x} y={y + 21} textAnchor="middle" className="small">
              {ORDINALS[fires]}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
