/** The card of an exhaust of several parts: find them, look at one, what it holds in the car, its sheets. */
import type { ReactNode } from 'react';
import { type Banks, EXHAUST_CAUTION, STANDING_CAUTION } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { BankChoice } from './bank-choice.tsx';
import { CannotBe } from './cannot-be.tsx';
import { InCar } from './in-car.tsx';
import type { PartTold } from './parts-protocol.ts';
import { Collector, Pipes } from './set-figures.tsx';
import { SheetsWord } from './sheets-word.tsx';
import type { Lit } from './shown.ts';
import type { PartsFinding } from './use-parts.ts';
import { GAS_WORDS } from './words.ts';
import { WouldDo } from './would-do.tsx';

interface Props {
  readonly finding: PartsFinding;
  readonly banks: Banks;
  readonly lit: Lit | undefined;
  readonly onLight: (lit: Lit | undefined) => void;
  /** Below the part that is looked at. */
  readonly children?: ReactNode;
}

export function PartsCard({ finding, banks, lit, onLight, children }: Props) {
  const { place } = usePage();
  const words = GAS_WORDS[place.gas];
  const { notes, refused, causes, progress, going } = finding;
  const sets = progress?.sets ?? [];
  // of the one that is looked at they stand with its pipes
  const breaches = sets.flatMap(({ title, set }) => (title === lit?.group ? [] : (set?.breaches ?? [])));
  const chosen = sets.find(({ title }) => title === lit?.group);
  return (
    <aside className="card" id="card" aria-label={words.title} tabIndex={-1}>
      <h2>
        {words.title}, {banks === 'both' ? 'both banks' : `${banks} bank`}
      </h2>
      <p className="soft">{words.is}</p>
      <BankChoice />
      {banks === 'both' && <MirrorChoice finding={finding} />}
      {refused.length === 0 && <Buttons finding={finding} banks={banks} />}
      <CannotBe refused={refused} causes={causes} />
      <WouldDo
        nothing={causes.length > 0 || (!going && progress !== undefined && progress.sets === undefined)}
        eased={finding.eased}
        ease={finding.ease}
        stopEasing={finding.stopEasing}
      />
      {!going && progress?.image !== undefined && <Image image={progress.image} mirror={finding.mirror} />}
      {breaches.map((breach) => (
        <p key={breach} role="alert">
          {breach}
        </p>
      ))}
      {sets.length > 0 && <Parts sets={sets} lit={lit} onLight={onLight} />}
      {chosen?.set !== undefined && (
        <>
          <h3>{capital(chosen.title)}</h3>
          {place.gas === 'primaries' || chosen.stage === 'tail' ? (
            <Pipes
              set={chosen.set}
              stage={chosen.stage}
              lit={lit?.cylinder}
              onLight={(cylinder) =>
                onLight({ group: chosen.title, ...(cylinder === undefined ? {} : { cylinder }) })
              }
            />
          ) : (
            <Collector set={chosen.set} stage={chosen.stage} />
          )}
          {children}
          {progress?.file !== undefined && !going && (
            <>
              <p className="row">
                <SheetsWord file={progress.file} side={chosen.side} part={chosen.name} />
              </p>
              {place.gas === 'primaries' && (
                <InCar
                  key={chosen.title}
                  file={progress.file}
                  side={chosen.side}
                  part={chosen.name}
                  isBehind={chosen.stage !== 'primaries'}
                />
              )}
            </>
          )}
        </>
      )}
      {notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      {sets.length > 0 &&
        [EXHAUST_CAUTION, STANDING_CAUTION].map((caution) => (
          <p key={caution} className="caution">
            <b>Caution.</b> {caution}
          </p>
        ))}
    </aside>
  );
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

const MIRRORS = [
  { of: undefined, words: 'each bank for itself' },
  { of: 'left', words: 'right as the mirror image of left' },
  { of: 'right', words: 'left as the mirror image of right' },
] as const;

function MirrorChoice({ finding }: { readonly finding: PartsFinding }) {
  const { mirror, onMirror, going } = finding;
  return (
    <fieldset className="hold-choice" disabled={going}>
      <legend>The two banks</legend>
      {MIRRORS.map(({ of, words }) => (
        <label key={words} className="tick-word">
          <input type="radio" name="mirror" checked={mirror === of} onChange={() => onMirror(of)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}

function Buttons({ finding, banks }: Pick<Props, 'finding' | 'banks'>) {
  const { id } = useCar();
  const { going, progress, scene, find, stop, anew, mirrorChanged } = finding;
  const { stands, now, nearest, sets, file } = progress ?? {};
  const begun = progress !== undefined && !mirrorChanged;
  const ended = begun && progress.isEnded;
  const lacks = progress?.lacks ?? 0;
  return (
    <section>
      <p className="row">
        {going ? (
          <button type="button" className="word" onClick={stop}>
            Hold
          </button>
        ) : (
          !ended && (
            <button
              type="button"
              className="word"
              // the finder goes on from its own sets, and takes none away that a hand has moved
              disabled={scene === undefined || (begun && progress.moved !== undefined)}
              onClick={find}
            >
              {begun ? 'Go on' : 'Find all parts'}
            </button>
          )
        )}
        {begun && !going && (
          <button type="button" className="word" onClick={anew}>
            Other sets
          </button>
        )}
        {file !== undefined && !going && (
          <a
            className="word"
            download={`${id}-primaries-${banks}.json`}
            href={`data:application/json,${encodeURIComponent(file)}`}
          >
            Save these sets
          </a>
        )}
      </p>
      <p role="status">
        {going && sets === undefined && `Looking: ${now ?? ''}. ${nearest ?? ''}`}
        {!going &&
          !mirrorChanged &&
          sets !== undefined &&
          (progress?.moved !== undefined
            ? 'Moved by hand since they were found.'
            : `All parts stand, each clear of the others. ${ended ? '' : 'Held while mending what they must hold in the car.'}${ended && lacks > 0 ? `Of what they must hold in the car ${lacks === 1 ? 'one thing lacks' : `${lacks} things lack`}: look at each part in the car.` : ''}`)}
        {going && sets !== undefined && `All parts stand; mending: ${now ?? ''}.`}
        {!going && !mirrorChanged && sets === undefined && stands === 'held' && `Held. ${nearest ?? ''}`}
        {!going &&
          !mirrorChanged &&
          stands === 'stuck' &&
          `No sets that stay clear of each other were found, and the search was given up; that there are none is not proved. ${nearest ?? ''}`}
        {mirrorChanged && 'How the banks are to be made was changed since these were found.'}
      </p>
    </section>
  );
}

function Image({
  image: { suits, says },
  mirror,
}: {
  readonly image: NonNullable<NonNullable<PartsFinding['progress']>['image']>;
  readonly mirror: PartsFinding['mirror'];
}) {
  const other = mirror === 'left' ? 'right' : 'left';
  return (
    <section role="status">
      <h3>{suits ? `The ${other} bank is the mirror image` : `The image does not suit the ${other} bank`}</h3>
      {suits && (
        <p className="soft">
          It is made from the same cuts with every clock angle turned round, and was checked on its own side.
        </p>
      )}
      {says.map((each) => (
        <p key={each} className={suits ? 'soft' : 'note'}>
          {each}
        </p>
      ))}
      {!suits && <p>The {mirror} bank was found and stands below.</p>}
    </section>
  );
}

function Parts({
  sets,
  lit,
  onLight,
}: Pick<Props, 'lit' | 'onLight'> & { readonly sets: readonly PartTold[] }) {
  const { speech } = usePage();
  // inches ask for one more place than millimetres
  const more = speech === 'mm-N' ? 0 : 1;
  const both = new Set(sets.map(({ side }) => side)).size > 1;
  return (
    <section>
      <table className="pipes parts">
        <caption className="unseen">The parts that were found</caption>
        <thead>
          <tr>
            <th scope="col">part</th>
            <th scope="col">pipes</th>
            <th scope="col">bends</th>
            <th scope="col">room</th>
          </tr>
        </thead>
        <tbody>
          {sets.map(({ title, set }) => (
            <tr key={title} data-lit={lit?.group === title}>
              <th scope="row">
                <button
                  type="button"
                  className="plain-word"
                  aria-pressed={lit?.group === title}
                  onClick={() => onLight(lit?.group === title ? undefined : { group: title })}
                >
                  {both ? title.replace(' bank', '') : title.replace(/^\w+ bank, /, '')}
                </button>
              </th>
              <td className="number">{set?.pipes.length}</td>
              <td className="number">{set?.pipes.reduce((sum, pipe) => sum + pipe.bends, 0)}</td>
              <td className="number">
                {set?.spare === undefined ? 'nothing near' : spokenAmount(set.spare, 'm', 1 + more, speech)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft">
        Room: the least beyond what was asked, cold, whichever part that is against. A part that is pressed is
        looked at alone.
      </p>
    </section>
  );
}
