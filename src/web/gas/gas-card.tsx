/** The card of primaries and collector: find, hold, the pipes as a list, what stands in the way. */
import {
  type Holdable,
  holdingDoes,
  type PrimariesSet,
  type PrimaryOfSet,
  passedWords,
} from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { HandCard, type HandMode } from './hand-card.tsx';
import { HoldChoice } from './hold-choice.tsx';
import { InCar } from './in-car.tsx';
import { SetsFound } from './sets-found.tsx';
import { SheetsWord } from './sheets-word.tsx';
import type { Finding } from './use-finding.ts';
import { GAS_WORDS } from './words.ts';
import { WouldDo } from './would-do.tsx';

interface Props {
  readonly finding: Finding;
  readonly lit: number | undefined;
  readonly onLight: (cylinder: number | undefined) => void;
  readonly mode: HandMode;
  readonly onMode: (mode: HandMode) => void;
}

export function GasCard({ finding, lit, onLight, mode, onMode }: Props) {
  const { place, go } = usePage();
  const { car } = useCar();
  const words = GAS_WORDS[place.gas];
  const { notes, refused, causes, progress, scene, hand, does, going } = finding;
  const set = progress?.set;
  return (
    <aside className="card" id="card" aria-label={words.title} tabIndex={-1}>
      <h2>
        {words.title}, {place.bank} bank
      </h2>
      <p className="soft">{words.is}</p>
      <fieldset className="words card-words">
        <legend className="unseen">Bank</legend>
        {(['left', 'right'] as const)
          .filter((side) => car.form.exhaust?.[side] !== undefined)
          .map((side) => (
            <button
              key={side}
              type="button"
              aria-pressed={place.bank === side}
              onClick={() => go({ bank: side })}
            >
              {side} bank
            </button>
          ))}
      </fieldset>
      {refused.length === 0 && <HoldChoice finding={finding} />}
      {refused.length === 0 && <Buttons finding={finding} />}
      {refused.map((message) => (
        <p key={message} role="alert">
          {message}
        </p>
      ))}
      {causes.length > 0 && (
        <section role="status">
          <h3>It cannot be as it is given</h3>
          {causes.map((cause) => (
            <p key={cause} className="note">
              {cause}
            </p>
          ))}
        </section>
      )}
      {set === undefined && progress?.near !== undefined && <Near near={progress.near} />}
      <WouldDo finding={finding} />
      <SetsFound finding={finding} />
      {set !== undefined && scene !== undefined && !going && (
        <HandCard mode={mode} onMode={onMode} hand={hand} scene={scene} does={does} />
      )}
      {set !== undefined &&
        (place.gas === 'primaries' ? (
          <Pipes set={set} lit={lit} onLight={onLight} />
        ) : (
          <Collector set={set} />
        ))}
      {place.gas === 'primaries' && progress?.file !== undefined && !finding.going && (
        <InCar file={progress.file} kinds={progress.holding?.kinds ?? NOTHING_HELD} />
      )}
      {notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      {set?.cautions.map((caution) => (
        <p key={caution} className="caution">
          <b>Caution.</b> {caution}
        </p>
      ))}
    </aside>
  );
}

const NOTHING_HELD: readonly Holdable[] = [];

/** Breaches that are told, at most: one pipe through another breaches much at once. */
const TOLD = 5;

function Near({ near }: { readonly near: PrimariesSet }) {
  const more = near.breaches.length - TOLD;
  return (
    <section>
      <h3>What is amiss with what came nearest</h3>
      {near.breaches.slice(0, TOLD).map((breach) => (
        <p key={breach} className="note">
          {breach}
        </p>
      ))}
      {more > 0 && <p className="soft">and {more} more</p>}
    </section>
  );
}

function Buttons({ finding }: { readonly finding: Finding }) {
  const { place } = usePage();
  const { id } = useCar();
  const { going, progress, scene, find, stop, another, hand, holdChanged } = finding;
  const { stands, starts, nearest, set, file, holding, wanted = 1 } = progress ?? {};
  const found = progress?.sets.length ?? 0;
  const begun = progress !== undefined && !holdChanged;
  const finished = stands === 'done' && !holdChanged;
  const doing = holding === undefined ? undefined : holdingDoes(holding);
  // the finder goes on from its own set, and does not take one away that a hand has moved
  const moved = hand !== undefined && !hand.told.asFound;
  return (
    <section>
      <p className="row">
        {going ? (
          <button type="button" className="word" onClick={stop}>
            Hold
          </button>
        ) : (
          !finished && (
            <button type="button" className="word" disabled={scene === undefined || moved} onClick={find}>
              {begun ? 'Go on' : 'Find a set'}
            </button>
          )
        )}
        {begun && !going && (
          <button type="button" className="word" disabled={moved} onClick={another}>
            Another set
          </button>
        )}
        {file !== undefined && !going && (
          <a
            className="word"
            download={`${id}-primaries-${place.bank}.json`}
            href={`data:application/json,${encodeURIComponent(file)}`}
          >
            Save this set
          </a>
        )}
        {file !== undefined && !going && <SheetsWord file={file} />}
      </p>
      <p role="status">
        {going && set === undefined && `Looking: ${starts ?? 0} fresh starts. ${nearest ?? ''}`}
        {going &&
          set !== undefined &&
          (doing ??
            (found < wanted
              ? `Looking for another: ${starts ?? 0} fresh starts.`
              : 'Found one that stands; bettering it.'))}
        {!going &&
          stands === 'held' &&
          set === undefined &&
          `Held after ${starts} fresh starts. ${nearest ?? ''}`}
        {!going &&
          !moved &&
          stands === 'held' &&
          set !== undefined &&
          (found < wanted
            ? 'Held while looking for another; what is found stands.'
            : 'Held; this one stands.')}
        {!moved &&
          finished &&
          set !== undefined &&
          `${doing === undefined ? '' : `${doing} `}Nothing more is gained by small changes.`}
        {holdChanged && 'What a set must hold was changed since this one was found.'}
        {moved &&
          'Moved by hand since it was found. Undone, or put back as it was found, the finder can go on.'}
      </p>
    </section>
  );
}

function Pipes({ set, lit, onLight }: Pick<Props, 'lit' | 'onLight'> & { readonly set: PrimariesSet }) {
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
        <span className="row-means">length of each, flange to collector</span>
        <span className="row-value">
          <b className="number">{long(set.target)}</b>
        </span>
        <span className="row-say soft">
          on the drawing equal within {Math.max(0.001, 1000 * set.apart).toFixed(3)} mm; {bends} bends in{' '}
          {set.pipes.length} pipes; {spokenAmount(set.mass, 'kg', 2, speech)} of tube
        </span>
        <span className="row-say soft">{tubeWords(set, long)}</span>
      </div>
      <table className="pipes">
        <caption className="unseen">The pipes of this set</caption>
        <thead>
          <tr>
            <th scope="col">cyl.</th>
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

/** The tube, and the larger ones that follow it. */
function tubeWords({ pipes }: PrimariesSet, long: (value: number) => string): string {
  const [first, ...more] = pipes[0]!.tubes;
  const steps = more.map(({ od, wall }, k) => {
    const from = pipes.map(({ tubes }) => tubes[k + 1]!.from);
    const [least, most] = [long(Math.min(...from)), long(Math.max(...from))];
    const where = least === most ? least : `between ${least} and ${most}`;
    return `, then ${long(od)} × ${long(wall)}, which begins ${where} from the flange`;
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
  return (
    <tr data-lit={lit}>
      <th scope="row">
        <button
          type="button"
          className="balloon"
          aria-pressed={lit}
          aria-label={`Cylinder ${cylinder}: show this pipe alone`}
          onClick={() => onLight(lit ? undefined : cylinder)}
        >
          {cylinder}
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

function Collector({ set }: { readonly set: PrimariesSet }) {
  return (
    <section>
      <p>
        Firing order on this bank:{' '}
        <b className="number">{set.order.map(({ cylinder }) => cylinder).join(' – ')}</b>. Round the collector
        that is inlet <b className="number">{set.order.map(({ inlet }) => inlet).join(' – ')}</b>
        {orderWords(set)}
      </p>
      <InletsOf set={set} />
      <p className="soft">
        The inlets as seen with the flow{set.collector.inRows ? '' : ', inlet 1 on top'}: the cylinder that
        comes in there, and when it fires on this bank.
      </p>
    </section>
  );
}

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
      {set.pipes.map(({ cylinder, inlet }) => {
        const [x, y] = [scale * seen[inlet - 1]![0], -scale * seen[inlet - 1]![1]];
        const fires = set.order.findIndex((each) => each.cylinder === cylinder) + 1;
        return (
          <g key={cylinder}>
            <circle cx={x} cy={y} r={(scale * apart) / 2 - 1} />
            <text x={x} y={y + 2} textAnchor="middle">
              {cylinder}
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
