/** Lines over engine or road speed in the place of the drawing, with their names beneath. */
import { useSize } from '../sheet/use-size.ts';
import { Chart, type ChartLine } from '../stops/chart.tsx';

export interface LinesIs {
  /** What stands over the chart. */
  readonly caption: string;
  readonly told: string;
  readonly across: readonly number[];
  readonly acrossName: string;
  readonly lines: readonly ChartLine[];
  /** What the numbers at the ends of the lines stand for, in their order. */
  readonly legend: readonly string[];
}

export function Lines({ title, chart }: { readonly title: string; readonly chart: LinesIs | undefined }) {
  const [paper, size] = useSize();
  return (
    <main className="drawing patch lines" aria-label="Drawing">
      <header className="drawing-head">
        <h1>{title}</h1>
      </header>
      <div className="paper" ref={paper}>
        {chart === undefined || size.height === 0 ? (
          <p className="not-reached" role="status">
            {chart === undefined ? 'Lines stand here once the card has an answer.' : ''}
          </p>
        ) : (
          <>
            <p>{chart.caption}</p>
            <Chart
              told={chart.told}
              across={chart.across}
              acrossName={chart.acrossName}
              lines={chart.lines}
              ends
              height={Math.max(
                130,
                size.height - (size.width < 620 ? 68 : 40) - 25 * rowsOf(chart.legend.length, size.width),
              )}
            />
            {chart.legend.length > 0 && (
              <ol className="line-names">
                {chart.legend.map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ol>
            )}
          </>
        )}
      </div>
    </main>
  );
}

/** Rows of the names under the lines, as the style sheet lays them out. */
const rowsOf = (count: number, width: number): number =>
  Math.ceil(count / Math.max(1, Math.floor((width - 54 + 12) / (NAME_WIDTH + 12))));
const NAME_WIDTH = 170;
