/** What a day out shows on the drawing: figures at the wheels of the car in plan, or lines over engine or road speed. */
import type { DayName, RatiosReached, ToldFigure } from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import { unitAfter } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { PlanDrawing, type PlanLabel } from '../patch/plan-drawing.tsx';
import { WHEEL_KEYS, WHEEL_WORDS, type WheelKey } from '../patch/words.ts';
import { spokenOwn } from '../spoken.ts';
import { usePage } from '../state.tsx';
import type { ChartLine } from '../stops/chart.tsx';
import { HeightLines } from './height-lines.tsx';
import { along, places } from './lines.ts';
import { Lines, type LinesIs } from './lines-drawing.tsx';
import { type Day, ratiosIn } from './use-day.ts';
import { DAY_WORDS } from './words.ts';

interface Props {
  readonly name: DayName;
  readonly day: Day;
}

export function DayDrawing({ name, day }: Props) {
  const { speech } = usePage();
  const { is } = day;
  const answer = is?.state === 'answered' && is.answer.reached ? is.answer : undefined;
  const { title } = DAY_WORDS[name];
  if (name === 'ratios') {
    const ratios = ratiosIn(answer);
    return <Lines title={title} chart={ratios && fan(ratios, speech)} />;
  }
  if (name === 'at-speed') return <HeightLines day={day} />;
  const figures = answer?.figures ?? [];
  const middle = middleOf(name, figures, speech);
  return (
    <PlanDrawing title={title} more="" labels={labelsOf(name, figures, speech)} chief broken room={150}>
      {middle.length > 0 && (
        <div className="patch-middle">
          {middle.map((words, k) => (
            <p key={words} className={k === 0 ? 'patch-large' : 'patch-small'}>
              {words}
            </p>
          ))}
        </div>
      )}
    </PlanDrawing>
  );
}

/** A figure in words: `1.15 bar`, no finer than to three figures until its ± is there; nothing where it is not there. */
function words(figures: readonly ToldFigure[], of: string, id: string, speech: Speech): string | undefined {
  const found = figures.find((each) => each.of === of && each.id === id);
  if (found === undefined) return undefined;
  const { text, unit } = spokenOwn(
    found.spread === undefined ? { ...found, spread: { u: Math.abs(found.value) / 10 } } : found,
    speech,
  );
  return `${text}${unitAfter(unit)}`;
}

const NO_BREAK = '\u00a0';

/** What stands at a wheel: the first line large. */
const AT_WHEEL: Readonly<
  Partial<Record<DayName, readonly (readonly [before: string, of: 'wheel' | 'axle' | string, id: string])[]>>
> = {
  'hot-pressures': [
    ['', 'tyre', 'coldPressure'],
    ['bleed to ', 'tyre', 'bleedTo'],
  ],
  brakes: [
    ['pad ', 'axle', 'padLaps'],
    ['disc ', 'axle', 'discLaps'],
  ],
  fuel: [
    ['', 'at the start', 'wheel'],
    ['at the end ', 'at the end', 'wheel'],
  ],
  transfer: [
    ['', 'wheel', 'tyreLoad'],
    ['travel ', 'wheel', 'travel'],
  ],
};

function labelsOf(name: DayName, figures: readonly ToldFigure[], speech: Speech): readonly PlanLabel[] {
  const at = (wheel: WheelKey): PlanLabel => {
    const called = WHEEL_WORDS[wheel];
    const axle = called.split(' ')[0]!;
    const lines = (AT_WHEEL[name] ?? []).flatMap(([before, of, id]) => {
      const found =
        of === 'wheel'
          ? words(figures, called, id, speech)
          : of === 'axle'
            ? words(figures, axle, id, speech)
            : of === 'tyre'
              ? (words(figures, called, id, speech) ?? words(figures, axle, id, speech))
              : words(figures, of, called, speech);
      if (found === undefined) return [];
      const amount = id.endsWith('Laps') ? `${found} laps` : found;
      // a long line breaks before an amount, never inside it
      return [{ text: `${before}${amount.replaceAll(' ', NO_BREAK)}` }];
    });
    return { of: wheel, lines };
  };
  return WHEEL_KEYS.map(at).filter(({ lines }) => lines.length > 0);
}

const IN_THE_MIDDLE: Readonly<
  Partial<Record<DayName, readonly (readonly [before: string, of: string, id: string])[]>>
> = {
  brakes: [['front ', 'car', 'frontShare']],
  fuel: [
    ['', 'session', 'needed'],
    ['to add ', 'session', 'toAdd'],
    ['', 'session', 'mass'],
  ],
  transfer: [
    ['roll ', 'car', 'roll'],
    ['pitch ', 'car', 'pitch'],
  ],
};

const middleOf = (name: DayName, figures: readonly ToldFigure[], speech: Speech): readonly string[] =>
  (IN_THE_MIDDLE[name] ?? []).flatMap(([before, of, id]) => {
    const found = words(figures, of, id, speech);
    return found === undefined ? [] : [`${before}${found}`];
  });

/** Road speed over engine speed, a line a gear, and dashed the drop of engine speed with each change up. */
function fan({ chart, figures, at }: RatiosReached, speech: Speech): LinesIs {
  const unit = speech === 'mm-N' ? 'km/h' : 'mph';
  const after = figures
    .filter(({ id }) => id === 'after')
    .map(({ of, value }) => ({ gear: Number(of.replace(/\D/g, '')), value }));
  const across = places(
    chart.map(({ engine }) => engine),
    after.map(({ value }) => value),
  );
  const of = (gear: number) =>
    along(
      chart.map(({ engine, speeds }) => [engine, fromSI(speeds[gear]!, unit)]),
      across,
    );
  const gears = chart[0]!.speeds.map((_, k) => ({ name: String(k + 1), values: of(k) }));
  const drops = after.flatMap(({ gear, value }): ChartLine[] => {
    const level = figures.find(({ of: owner, id }) => owner === `gear ${gear}` && id === 'speed')?.value;
    if (level === undefined) return [];
    return [
      {
        name: '',
        dashed: true,
        plain: true,
        values: across.map((x) => (x >= value && x <= at ? fromSI(level, unit) : null)),
      },
    ];
  });
  return {
    caption: `Road speed in ${unit} over engine speed in rpm; dashed, the drop with each change up`,
    told: `Road speed of ${gears.length} gears over engine speed; the figures stand on the card`,
    across: across.map((each) => fromSI(each, 'rpm')),
    acrossName: 'rpm',
    lines: [...gears, ...drops],
    legend: [],
  };
}
