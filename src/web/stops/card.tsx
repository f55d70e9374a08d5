/** The card of the stop at the right of the sheet: its figures, curves, readings, and what may be asked. */
import type { Figure } from '../../questions/figure.ts';
import type { Speech } from '../../units/show.ts';
import { sheetAddress } from '../client.ts';
import { later } from '../later.tsx';
import { BodyCard, CASE, TUB } from '../loads/body-card.tsx';
import { LoadsCard } from '../loads/loads-card.tsx';
import { StudsCard } from '../loads/studs-card.tsx';
import type { useLoads } from '../loads/use-loads.ts';
import { type CardName, isBehindCorners, wheelName } from '../place.ts';
import { onDrawing } from '../sheet/car-drawing.tsx';
import { useCar } from '../sheet/car-file.tsx';
import { travelWords } from '../sheet/travel.ts';
import type { CornerAnswer } from '../sheet/use-corner.ts';
import { usePage } from '../state.tsx';
import { SurveyCard } from '../survey/survey-card.tsx';
import { AxleFigures } from './axle-figures.tsx';
import { Curves } from './curves.tsx';
import { DoubtsOfStop } from './doubt-notes.tsx';
import { FigureRow } from './figure-row.tsx';
import { SpringQuestions } from './spring-questions.tsx';
import { STOPS } from './words.ts';

/** With it comes the whole description of the car file, which nothing else on the page needs. */
const ReadingsForm = later(
  () => import('../forms/readings-form.tsx').then((made) => made.ReadingsForm),
  'Fetching the readings.',
);

interface Props {
  readonly corner: CornerAnswer;
  readonly onLight: (figure: Figure | undefined) => void;
}

export function Card({ corner, loads, onLight }: Props & { loads: ReturnType<typeof useLoads> }) {
  const { place, go } = usePage();
  const words = STOPS[place.stop];
  const cards: readonly (readonly [CardName, string])[] = [
    ['figures', 'figures'],
    ['loads', 'loads'],
    ['curves', 'curves'],
    ['readings', 'readings'],
    ...(place.stop === 'spring' ? ([['ask', 'bars']] as const) : []),
  ];
  if (place.card === 'survey') return <SurveyCard />;
  if (isBehindCorners(place.stop)) {
    return (
      <aside className="card" id="card" aria-label={words.title} tabIndex={-1}>
        <h2>{words.title}</h2>
        <p className="soft">{words.is}</p>
        {place.stop === 'studs' ? (
          <StudsCard />
        ) : (
          <BodyCard key={place.stop} of={place.stop === 'case' ? CASE : TUB} />
        )}
      </aside>
    );
  }
  return (
    <aside className="card" id="card" aria-label={words.title} tabIndex={-1}>
      <h2>
        {words.title}, {wheelName(place.wheel)}
      </h2>
      <p className="soft">{words.is}</p>
      <fieldset className="words card-words">
        <legend className="unseen">What the card shows</legend>
        {cards.map(([card, name]) => (
          <button key={card} type="button" aria-pressed={place.card === card} onClick={() => go({ card })}>
            {name}
          </button>
        ))}
      </fieldset>
      <DoubtsOfStop />
      {place.card === 'loads' && loads !== undefined && <LoadsCard loads={loads} onLight={onLight} />}
      {place.card === 'curves' && <Curves corner={corner} />}
      {place.card === 'readings' && <ReadingsForm />}
      {place.card === 'ask' && place.stop === 'spring' && <SpringQuestions />}
      {(place.card === 'figures' || (place.card === 'ask' && place.stop !== 'spring')) && (
        <Figures corner={corner} onLight={onLight} />
      )}
    </aside>
  );
}

function Figures({ corner, onLight }: Props) {
  const { place, go } = usePage();
  const { id, car } = useCar();
  const { speech } = usePage();
  if (!corner.reached) return <p role="status">{corner.message}</p>;
  const chief = onDrawing(corner, place.stop);
  const rest = corner.figures.filter((figure) => figure.stop === place.stop && !chief.includes(figure));
  const open = (figure: Figure): void => go({ figure: figure.id });
  return (
    <>
      <div className="figure-rows">
        {chief.map((figure, k) => (
          <FigureRow key={figure.id} figure={figure} number={k + 1} onLight={onLight} onOpen={open} />
        ))}
        {rest.map((figure) => (
          <FigureRow key={figure.id} figure={figure} onLight={onLight} onOpen={open} />
        ))}
      </div>
      {corner.notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      <Events corner={corner} />
      <AxleFigures />
      <p className="row">
        <SheetWord id={id} spec={car.spec === car.specs[0] ? undefined : car.spec} speech={speech} />
      </p>
      {corner.cautions.map((caution) => (
        <p key={caution} className="caution">
          <b>Caution.</b> {caution}
        </p>
      ))}
    </>
  );
}

function Events({ corner }: { corner: Extract<CornerAnswer, { reached: true }> }) {
  const { speech } = usePage();
  if (corner.events.length === 0) return null;
  return (
    <section>
      <h3>On the way from droop to bump</h3>
      <ul className="events">
        {corner.events.map((event) => (
          <li key={`${event.what} ${event.travel}`}>
            <span className="number">{travelWords(event.travel, speech)}</span> {event.what}
          </li>
        ))}
      </ul>
    </section>
  );
}

function SheetWord({ id, spec, speech }: { id: string; spec: string | undefined; speech: Speech }) {
  const { place } = usePage();
  const asked = {
    ...(spec === undefined ? {} : { spec }),
    end: place.wheel.end,
    side: place.wheel.side,
    travel: `${place.travel} m`,
    rack: `${place.rack} m`,
    paper: speech === 'mm-N' ? 'A4' : 'Letter',
    units: speech,
  };
  const kind = place.stop === 'spring' ? 'spring' : 'corner';
  return (
    <a className="word" href={sheetAddress(id, kind, asked)} target="_blank" rel="noreferrer">
      Print the {kind} sheet
    </a>
  );
}
