/** A reading by hand on the car in plan: what comes of it at the wheels, and strings where they are stretched. */
import { useMemo } from 'react';
import type { Vec3 } from '../../maths/vec3.ts';
import { AS_SURVEYED } from '../../questions/figure.ts';
import { type Drawing, drawCar } from '../../questions/index.ts';
import { type Speech, spokenUnit, unitAfter } from '../../units/show.ts';
import type { OwnedFigure } from '../day/figures.tsx';
import { PlanDrawing, type PlanLabel } from '../patch/plan-drawing.tsx';
import { WHEEL_KEYS, WHEEL_WORDS } from '../patch/words.ts';
import type { Spot } from '../scene/look.ts';
import { useCar } from '../sheet/car-file.tsx';
import { spoken, spokenOwn } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { besideStrings, Strings, stringsAt } from './strings-drawn.tsx';
import { type Gauge, ownedFigures, WEIGHED } from './use-gauge.ts';
import { GAUGE_WORDS } from './words.ts';

export function GaugeDrawing({ gauge }: { readonly gauge: Gauge }) {
  const { speech } = usePage();
  const { car } = useCar();
  const drawing = useMemo(() => drawCar(car, AS_SURVEYED), [car]);
  const { name, read, is } = gauge;
  const figures = is?.state === 'answered' ? ownedFigures(is.answer) : [];
  const { title } = GAUGE_WORDS[name];
  const asked = read.question?.name === 'strings' ? read.question.asked : undefined;
  if (name === 'strings') {
    const strings = stringsAt(drawing, asked);
    const unit = `distances and toe: ${spokenUnit('m', speech)}`;
    return (
      <PlanDrawing
        title={title}
        more=""
        labels={besideStrings(figures, asked, speech)}
        chief={false}
        room={150}
        gauges={strings.labels}
        over={(at, wide) => <Strings strings={strings} asked={asked} at={at} wide={wide} speech={speech} />}
      >
        <Middle lines={asked === undefined ? [] : [...axleLines(figures, speech), unit]} />
      </PlanDrawing>
    );
  }
  if (name === 'weighing') {
    const place = centreAt(drawing, figures);
    return (
      <PlanDrawing
        title={title}
        more=""
        labels={place === undefined ? [] : [{ of: CENTRE, lines: centreLines(figures, speech) }]}
        chief={false}
        room={60}
        gauges={place === undefined ? {} : { [CENTRE]: place }}
        dots={place === undefined ? [] : [CENTRE]}
        over={(at) => place !== undefined && <FromFrontAxle drawing={drawing} place={place} at={at} />}
      />
    );
  }
  return (
    <PlanDrawing
      title={title}
      more=""
      labels={labelsOf(gauge, figures, speech)}
      chief
      room={150}
      broken={name !== 'levels'}
    >
      <Middle lines={name === 'plates' ? axleLines(figures, speech) : warpLines(figures, speech)} />
    </PlanDrawing>
  );
}

const find = (figures: readonly OwnedFigure[], of: string, id: string): OwnedFigure | undefined =>
  figures.find((each) => each.of === of && each.id === id);

/** A figure in words without its spread, no finer than it is known: `0.86 mm`. */
function said(figure: OwnedFigure | undefined, speech: Speech): string | undefined {
  if (figure === undefined) return undefined;
  const { text, unit } = spokenOwn(figure, speech);
  return `${text}${unitAfter(unit)}`;
}

/** The same with the side to which it is. */
const plus = (words: string | undefined, figure: OwnedFigure | undefined): string | undefined =>
  words !== undefined && figure!.value > 0 && /[1-9]/.test(words) ? `+${words}` : words;

function labelsOf(gauge: Gauge, figures: readonly OwnedFigure[], speech: Speech): readonly PlanLabel[] {
  return WHEEL_KEYS.map((wheel) => {
    const of = WHEEL_WORDS[wheel];
    const own = (id: string): string | undefined => said(find(figures, of, id), speech);
    const lines =
      gauge.name === 'levels'
        ? [plus(own('height'), find(figures, of, 'height')), packWords(find(figures, of, 'packing'), speech)]
        : gauge.name === 'plates'
          ? [toeWords(find(figures, `${of.split(' ')[0]} plates`, 'toe'), speech)]
          : [own('weight'), errorWords(find(figures, of, 'error'), speech)];
    return { of: wheel, lines: lines.flatMap((text) => (text === undefined ? [] : [{ text }])) };
  }).filter(({ lines }) => lines.length > 0);
}

/** Behind the height, in its unit. */
const packWords = (figure: OwnedFigure | undefined, speech: Speech): string | undefined =>
  figure && (figure.value === 0 ? 'highest' : `pack ${spokenOwn(figure, speech).text}`);

function errorWords(figure: OwnedFigure | undefined, speech: Speech): string | undefined {
  const words = figure && said({ ...figure, value: Math.abs(figure.value) }, speech);
  if (words === undefined) return undefined;
  return /[1-9]/.test(words) ? `${words} ${figure!.value > 0 ? 'over' : 'under'}` : 'true';
}

/** Plus and minus of toe are taken for one another: the side is said as a word. */
export const toeSide = ({ value }: OwnedFigure): string => (value > 0 ? 'toe-in' : 'toe-out');

export function toeWords(figure: OwnedFigure | undefined, speech: Speech): string | undefined {
  const words = figure && said({ ...figure, value: Math.abs(figure.value) }, speech);
  if (words === undefined) return undefined;
  return /[1-9]/.test(words) ? `${toeSide(figure!)} ${words}` : words;
}

const axleLines = (figures: readonly OwnedFigure[], speech: Speech): readonly string[] =>
  (['front', 'rear'] as const).flatMap((end) => {
    const total = find(figures, `${end} axle`, 'total') ?? find(figures, `${end} plates`, 'total');
    const words = toeWords(total, speech);
    return words === undefined ? [] : [`${end} together ${words}`];
  });

const warpLines = (figures: readonly OwnedFigure[], speech: Speech): readonly string[] => {
  const warp = find(figures, 'all pads', 'warp');
  return warp === undefined ? [] : [`warp ${plus(said(warp, speech), warp)}`];
};

function Middle({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div className="patch-middle">
      {lines.map((words) => (
        <p key={words} className="patch-small">
          {words}
        </p>
      ))}
    </div>
  );
}

const CENTRE = 'centre of gravity';

/** Where the front axle is along the car. */
const frontAxle = ({ corners }: Drawing): number => {
  const front = corners.filter(({ wheel }) => wheel.end === 'front');
  return front.reduce((sum, { tyre }) => sum + tyre.centre[0], 0) / front.length;
};

/** On the drawing of the car as surveyed. */
function centreAt(drawing: Drawing, figures: readonly OwnedFigure[]): Vec3 | undefined {
  const behind = find(figures, WEIGHED, 'behindFront')?.value;
  const left = find(figures, WEIGHED, 'leftOfMiddle')?.value;
  return behind === undefined || left === undefined ? undefined : [frontAxle(drawing) - behind, left, 0];
}

interface FromFrontAxleProps {
  readonly drawing: Drawing;
  readonly place: Vec3;
  readonly at: (point: Vec3) => Spot;
}

/** The length that is told, as a line from the front axle. */
function FromFrontAxle({ drawing, place, at }: FromFrontAxleProps) {
  const [from, to] = [at([frontAxle(drawing), place[1], 0]), at(place)];
  return (
    <g className="strings">
      <line className="string-distance" x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
      <circle cx={from.x} cy={from.y} r={3} />
    </g>
  );
}

function centreLines(figures: readonly OwnedFigure[], speech: Speech): PlanLabel['lines'] {
  const behind = said(find(figures, WEIGHED, 'behindFront'), speech);
  const left = find(figures, WEIGHED, 'leftOfMiddle');
  const height = said(find(figures, WEIGHED, 'height'), speech);
  const { text, unit } = spoken(Math.abs(left!.value), 'm', speech, left!.spread?.u);
  return [
    { text: behind!, large: true },
    { text: 'behind front axle' },
    { text: `${text}${unitAfter(unit)} ${left!.value < 0 ? 'right' : 'left'}` },
    ...(height === undefined ? [] : [{ text: `${height} high` }]),
  ];
}
