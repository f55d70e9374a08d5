/** Figures of a day out on the card: those that several wheels, axles, gears or speeds have in common stand together. */
import type { ToldFigure } from '../../questions/index.ts';
import { unitAfter } from '../../units/show.ts';
import { spokenOwn } from '../spoken.ts';
import { usePage } from '../state.tsx';

/** Figures of a day out are named so in the address: `day.front.coldPressure`. */
export const DAY_FIGURE = 'day.';

interface Props {
  readonly figures: readonly ToldFigure[];
  /** Of the spec beside it. */
  readonly against?: { readonly spec: string; readonly figures: readonly ToldFigure[] } | undefined;
}

export function DayFigures({ figures, against }: Props) {
  return (
    <>
      {together(figures).map((owners) => {
        const own = figures.filter(({ of }) => owners.includes(of));
        return owners.length === 1 ? (
          <Alone key={owners[0]} owner={owners[0]!} figures={own} against={against} />
        ) : (
          <Beside key={owners.join()} owners={owners} figures={own} against={against} />
        );
      })}
    </>
  );
}

/** Owners that have the same figures, or some of the same: they stand beside one another. */
function together(figures: readonly ToldFigure[]): readonly (readonly string[])[] {
  const owners = [...new Set(figures.map(({ of }) => of))];
  const idsOf = (owner: string): readonly string[] =>
    figures.filter(({ of }) => of === owner).map(({ id }) => id);
  const groups: string[][] = [];
  for (const owner of owners) {
    const ids = idsOf(owner);
    const group = groups.find((each) => {
      const first = idsOf(each[0]!);
      return ids.every((id) => first.includes(id)) || first.every((id) => ids.includes(id));
    });
    if (group === undefined) groups.push([owner]);
    else group.push(owner);
  }
  return groups;
}

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

function Alone({ owner, figures, against }: Props & { readonly owner: string }) {
  const { go, speech } = usePage();
  return (
    <section>
      <h3>{capital(owner)}</h3>
      <div className="figure-rows">
        {figures.map((figure) => {
          const shown = spokenOwn(figure, speech);
          return (
            <button
              key={figure.id}
              type="button"
              className="figure-row"
              data-figure={`${owner}.${figure.id}`}
              title="Open the working"
              onClick={() => go({ figure: `${DAY_FIGURE}${owner}.${figure.id}` })}
            >
              <span className="row-means">{figure.means}</span>
              <span className="row-value">
                <b className="number">{shown.text}</b>
                {shown.spread !== undefined && <span className="number soft"> ± {shown.spread}</span>}
                {unitAfter(shown.unit)}
              </span>
              <Other figure={figure} against={against} unit />
              {figure.say !== undefined && <span className="row-say soft">{figure.say}</span>}
            </button>
          );
        })}
      </div>
    </section>
  );
}

function Beside({ owners, figures, against }: Props & { readonly owners: readonly string[] }) {
  const { go, speech } = usePage();
  const ids = [...new Set(figures.map(({ id }) => id))];
  return (
    <section className="beside">
      {ids.map((id) => {
        const row = figures.filter((each) => each.id === id);
        const unit = spokenOwn(row[0]!, speech).unit;
        return (
          <div key={id}>
            <h3>
              {capital(row[0]!.means)}
              {unit !== '' && <span className="soft">, {unit}</span>}
            </h3>
            <ul data-columns={owners.length === 4 ? 2 : Math.min(3, owners.length)}>
              {row.map((figure) => {
                const shown = spokenOwn(figure, speech);
                return (
                  <li key={figure.of}>
                    <button
                      type="button"
                      className="beside-cell"
                      data-figure={`${figure.of}.${id}`}
                      title="Open the working"
                      onClick={() => go({ figure: `${DAY_FIGURE}${figure.of}.${id}` })}
                    >
                      <span className="soft">{figure.of}</span>
                      <b className="number">{shown.text}</b>
                      {shown.spread !== undefined && <span className="number soft">± {shown.spread}</span>}
                      <Other figure={figure} against={against} />
                    </button>
                  </li>
                );
              })}
            </ul>
          </div>
        );
      })}
    </section>
  );
}

/** The same figure in the spec beside it. */
function Other({
  figure,
  against,
  unit,
}: Pick<Props, 'against'> & { readonly figure: ToldFigure; readonly unit?: boolean }) {
  const { speech } = usePage();
  const other = against?.figures.find(({ of, id }) => of === figure.of && id === figure.id);
  if (against === undefined || other === undefined) return null;
  const { text, unit: printed } = spokenOwn(other, speech);
  return (
    <span className="row-say soft">
      {against.spec}: <span className="number">{text}</span>
      {unit === true && unitAfter(printed)}
    </span>
  );
}
