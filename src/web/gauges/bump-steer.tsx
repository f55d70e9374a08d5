/** Bump steer: toe over the travel as the gauge reads it beside the points' own, as a table and as lines. */
import type { GaugedFigure } from '../../questions/index.ts';
import { plain, printedUnit, type Speech, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { Lines, type LinesIs } from '../day/lines-drawing.tsx';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { type Gauge, gaugedIn } from './use-gauge.ts';
import { GAUGE_WORDS } from './words.ts';

interface Row {
  /** As the answer calls it: `+10.0 mm`. */
  readonly of: string;
  /** Metres. */
  readonly travel: number;
  readonly read: GaugedFigure;
  readonly geometry: GaugedFigure;
  readonly apart: GaugedFigure;
}

/** The rows of the answer with their travels, droop first. */
function rowsOf(gauge: Gauge): readonly Row[] {
  const answer = gaugedIn(gauge);
  const { question } = gauge.read;
  if (answer?.reached !== true || question?.name !== 'bump-steer') return [];
  const owners = [...new Set(answer.figures.map(({ of }) => of))];
  return owners
    .map((of, k): Row => {
      const own = (id: string) => answer.figures.find((each) => each.of === of && each.id === id)!;
      const { travel } = question.asked.rows[k]!;
      return { of, travel, read: own('read'), geometry: own('geometry'), apart: own('apart') };
    })
    .sort((a, b) => a.travel - b.travel);
}

const travelWords = (travel: number, speech: Speech): string => {
  const text = plain(fromSI(travel, spokenUnit('m', speech)), speech === 'mm-N' ? 1 : 3);
  return travel > 0 ? `+${text}` : text;
};

export function BumpSteerTable({ gauge }: { readonly gauge: Gauge }) {
  const { speech } = usePage();
  const cell = (figure: GaugedFigure) => {
    const { text, spread } = spoken(figure.value, figure.unit, speech, figure.u);
    return (
      <td key={figure.id} className="number" data-figure={`${figure.of}.${figure.id}`}>
        <b className="number">{text}</b>
        {spread !== undefined && <span className="soft">± {spread}</span>}
      </td>
    );
  };
  return (
    <table className="pipes bump-steer">
      <caption>Toe from standing, °, toe-in positive</caption>
      <thead>
        <tr>
          <th scope="col">travel, {printedUnit(spokenUnit('m', speech))}</th>
          <th scope="col">read</th>
          <th scope="col">by points</th>
          <th scope="col">apart</th>
        </tr>
      </thead>
      <tbody>
        {rowsOf(gauge).map(({ of, travel, read, geometry, apart }) => (
          <tr key={of}>
            <th scope="row" className="number">
              {travelWords(travel, speech)}
            </th>
            {[read, geometry, apart].map(cell)}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function BumpSteerLines({ gauge }: { readonly gauge: Gauge }) {
  const { speech } = usePage();
  const rows = rowsOf(gauge);
  return (
    <Lines
      title={GAUGE_WORDS['bump-steer'].title}
      chart={rows.length < 2 ? undefined : linesOf(rows, speech)}
    />
  );
}

function linesOf(rows: readonly Row[], speech: Speech): LinesIs {
  const unit = spokenUnit('m', speech);
  const degrees = (of: 'read' | 'geometry') => rows.map((row) => fromSI(row[of].value, 'deg'));
  return {
    caption: `Toe from standing (degrees, toe-in positive) over travel (${printedUnit(unit)}, bump positive)`,
    told: `Toe over travel at ${rows.length} rows; the figures stand on the card`,
    across: rows.map(({ travel }) => fromSI(travel, unit)),
    acrossName: unit,
    lines: [
      { name: '1', values: degrees('read') },
      { name: '2', values: degrees('geometry'), dashed: true, plain: true },
    ],
    legend: ['as the gauge reads it', 'by the points of the file'],
  };
}
