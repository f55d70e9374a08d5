/** Figures on a card: those that several wheels, axles, gears or speeds have in common stand together. */
import type { ReactNode } from 'react';
import { unitAfter } from '../../units/show.ts';
import { type SpokenFigure, spokenOwn } from '../spoken.ts';
import { usePage } from '../state.tsx';

/** Figures of a day out are named so in the address: `day.front.coldPressure`. */
export const DAY_FIGURE = 'day.';

/** A figure that belongs to something: a wheel, an axle, a gear. */
export interface OwnedFigure extends SpokenFigure {
  readonly of: string;
  readonly id: string;
  readonly means: string;
  readonly say?: string;
}

interface Props {
  readonly figures: readonly OwnedFigure[];
  /** Of the spec beside it. */
  readonly against?: { readonly spec: string; readonly figures: readonly OwnedFigure[] } | undefined;
  /** Opens the working; left out, they have none. */
  readonly open?: ((figure: OwnedFigure) => void) | undefined;
}

export function DayFigures({ figures, against, open }: Props) {
  return (
    <>
      {together(figures).map((owners) => {
        const own = figures.filter(({ of }) => owners.includes(of));
        return owners.length === 1 ? (
          <Alone key={owners[0]} owner={owners[0]!} figures={own} against={against} open={open} />
        ) : (
          <Beside key={owners.join()} owners={owners} figures={own} against={against} open={open} />
        );
      })}
    </>
  );
}

/** Owners that have the same figures, or some of the same: they stand beside one another. */
function together(figures: readonly OwnedFigure[]): readonly (readonly string[])[] {
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

function Alone({ owner, figures, against, open }: Props & { readonly owner: string }) {
  const { speech } = usePage();
  return (
    <section>
      <h3>{capital(owner)}</h3>
      <div className="figure-rows">
        {figures.map((figure) => {
          const shown = spokenOwn(figure, speech);
          return (
            <Opens key={figure.id} className="figure-row" figure={figure} open={open}>
              <span className="row-means">{figure.means}</span>
              <span className="row-value">
                <b className="number">{shown.text}</b>
                {shown.spread !== undefined && <span className="number soft"> ± {shown.spread}</span>}
                {unitAfter(shown.unit)}
              </span>
              <Other figure={figure} against={against} unit />
              {figure.say !== undefined && <span className="row-say soft">{figure.say}</span>}
            </Opens>
          );
        })}
      </div>
    </section>
  );
}

function Beside({ owners, figures, against, open }: Props & { readonly owners: readonly string[] }) {
  const { speech } = usePage();
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
                    <Opens className="beside-cell" figure={figure} open={open}>
                      <span className="soft">{figure.of}</span>
                      <b className="number">{shown.text}</b>
                      {shown.spread !== undefined && <span className="number soft">± {shown.spread}</span>}
                      <Other figure={figure} against={against} />
                    </Opens>
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

/** A figure that opens its working where it has one. */
function Opens({
  figure,
  open,
  className,
  children,
}: Pick<Props, 'open'> & {
  readonly figure: OwnedFigure;
  readonly className: string;
  readonly children: ReactNode;
}) {
  const named = `${figure.of}.${figure.id}`;
  if (open === undefined) {
    return (
      <div className={className} data-figure={named}>
        {children}
      </div>
    );
  }
  return (
    <button
      type="button"
      className={className}
      data-figure={named}
      title="Open the working"
      onClick={() => open(figure)}
    >
      {children}
    </button>
  );
}

/** The same figure in the spec beside it. */
function Other({
  figure,
  against,
  unit,
}: Pick<Props, 'against'> & { readonly figure: OwnedFigure; readonly unit?: boolean }) {
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
