/** The card of primaries and collector: find, hold, the pipes as a list, what stands in the way. */
import { type Holdable, holdingDoes, type PrimariesSet } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { BankChoice } from './bank-choice.tsx';
import { CannotBe } from './cannot-be.tsx';
import { HandCard, type HandMode } from './hand-card.tsx';
import { HoldChoice } from './hold-choice.tsx';
import { InCar } from './in-car.tsx';
import { Collector, Pipes } from './set-figures.tsx';
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
  const { place } = usePage();
  const words = GAS_WORDS[place.gas];
  const { notes, refused, causes, progress, scene, hand, does, going } = finding;
  const set = progress?.set;
  return (
    <aside className="card" id="card" aria-label={words.title} tabIndex={-1}>
      <h2>
        {words.title}, {place.bank} bank
      </h2>
      <p className="soft">{words.is}</p>
      <BankChoice />
      {refused.length === 0 && <HoldChoice finding={finding} />}
      {refused.length === 0 && <Buttons finding={finding} />}
      <CannotBe refused={refused} causes={causes} />
      {set === undefined && progress?.near !== undefined && <Near near={progress.near} />}
      <WouldDo
        nothing={causes.length > 0 || (!going && progress?.stands === 'held' && set === undefined)}
        eased={finding.eased}
        ease={finding.ease}
        stopEasing={finding.stopEasing}
      />
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
        <InCar file={progress.file} side={place.bank} kinds={progress.holding?.kinds ?? NOTHING_HELD} />
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
        {file !== undefined && !going && <SheetsWord file={file} side={place.bank} />}
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
