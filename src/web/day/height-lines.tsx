/** Heights of the points of the underside over road speed, and dashed those of the spec beside it. */
import { useMemo } from 'react';
import { askedSo, type DayAnswer, type DayQuestion, type ToldFigure } from '../../questions/index.ts';
import { plain, type Speech } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import type { CarSource } from '../engine/answers.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { Lines, type LinesIs } from './lines-drawing.tsx';
import type { Day } from './use-day.ts';
import { DAY_WORDS } from './words.ts';

/** Speeds at which a line is worked out. */
const COUNT = 10;
const REST = 400;

export function HeightLines({ day }: { readonly day: Day }) {
  const { speech } = usePage();
  const { key, source } = useCar();
  const question = useMemo(() => closer(day.read.question), [day.read.question]);
  const spec = day.against?.spec;
  const other = useMemo(() => ({ ...source, ...(spec === undefined ? {} : { spec }) }), [source, spec]);
  const own = useFigures(key, source, question);
  const beside = useFigures(`${key} beside ${spec}`, other, spec === undefined ? undefined : question);
  return (
    <Lines
      title={DAY_WORDS['at-speed'].title}
      chart={own === undefined ? undefined : heights(own, spec, beside, speech)}
    />
  );
}

type AtSpeed = Extract<DayQuestion, { name: 'at-speed' }>;

/** The same question at speeds close together, for a line that is smooth. */
function closer(question: DayQuestion | undefined): AtSpeed | undefined {
  if (question?.name !== 'at-speed') return undefined;
  const { asked } = question;
  const least = Math.min(...asked.speeds);
  const most = Math.max(...asked.speeds);
  // whole km/h: by these the engine names them
  const speeds = Array.from(
    { length: COUNT + 1 },
    (_, k) => Math.round(3.6 * (least + ((most - least) * k) / COUNT)) / 3.6,
  );
  return { name: 'at-speed', asked: { ...asked, speeds: [...new Set(speeds)] } };
}

function useFigures(
  key: string,
  source: CarSource,
  question: AtSpeed | undefined,
): readonly ToldFigure[] | undefined {
  const asked = useAnswer<DayAnswer>(
    question === undefined ? undefined : `lines ${key} ${JSON.stringify(question)}`,
    () => ask('day', source, askedSo(question!, { spread: false })),
    REST,
  );
  return asked.state === 'answered' && asked.answer.reached ? asked.answer.figures : undefined;
}

/** Points by their names, each with its heights along the speeds. */
function linesOf(figures: readonly ToldFigure[]): ReadonlyMap<string, readonly ToldFigure[]> {
  const rows = figures.filter(({ of, unit }) => of.endsWith(' km/h') && unit === 'm');
  return new Map(rows.map(({ id }) => [id, rows.filter((each) => each.id === id)]));
}

function heights(
  figures: readonly ToldFigure[],
  spec: string | undefined,
  beside: readonly ToldFigure[] | undefined,
  speech: Speech,
): LinesIs | undefined {
  const [unit, long] = speech === 'mm-N' ? (['km/h', 'mm'] as const) : (['mph', 'in'] as const);
  const lines = linesOf(figures);
  const speeds = [...(lines.values().next().value ?? [])].map(({ of }) => of);
  if (speeds.length < 2) return undefined;
  const values = (rows: readonly ToldFigure[]) =>
    speeds.map((speed) => {
      const found = rows.find(({ of }) => of === speed);
      return found === undefined ? null : fromSI(found.value, long);
    });
  const told = [...lines].map(([point, rows]) => {
    const [first, last] = [rows[0]!, rows.at(-1)!];
    return `${point} from ${plain(fromSI(first.value, long), 1)} at ${first.of} to ${plain(fromSI(last.value, long), 1)} at ${last.of}`;
  });
  const dashed = beside === undefined ? '' : `; dashed, ${spec}`;
  return {
    caption: `Height over the road in ${long} over speed in ${unit}${dashed}`,
    told: `Heights in ${long}: ${told.join('; ')}`,
    across: speeds.map((speed) => fromSI(Number.parseFloat(speed) / 3.6, unit)),
    acrossName: unit,
    lines: [
      ...[...lines.values()].map((rows, k) => ({ name: String(k + 1), values: values(rows) })),
      ...[...linesOf(beside ?? []).values()].map((rows) => ({
        name: '',
        values: values(rows),
        dashed: true,
        plain: true,
      })),
    ],
    legend: [...lines.keys()],
  };
}
