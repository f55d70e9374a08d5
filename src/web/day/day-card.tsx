/** The card of a stop of the day out: what is asked, what comes of it, and what must be said beside it. */
import { type DayAnswer, type DayName, floorId } from '../../questions/index.ts';
import { AskedForm } from '../asked/asked-form.tsx';
import { fieldsIn } from '../asked/fields.ts';
import { Remarks } from '../loads/remarks.tsx';
import { usePage } from '../state.tsx';
import { BiasChart } from './bias-chart.tsx';
import { DAY_FIGURE, DayFigures } from './figures.tsx';
import { Frequencies } from './frequencies.tsx';
import { RatioWords } from './ratio-words.tsx';
import { Stock } from './stock.tsx';
import { type Day, ratiosIn } from './use-day.ts';
import { DAY_FIELDS, DAY_WORDS } from './words.ts';

interface Props {
  readonly name: DayName;
  readonly day: Day;
}

export function DayCard({ name, day }: Props) {
  const { title, is } = DAY_WORDS[name];
  return (
    <aside className="card day" id="card" aria-label={title} tabIndex={-1}>
      <h2>{title}</h2>
      <p className="soft">{is}</p>
      <AskedForm card={name} groups={DAY_FIELDS[name]} read={day.read} />
      <Stands name={name} day={day} />
      {name === 'ratios' && <Stock />}
    </aside>
  );
}

function Stands({ name, day }: Props) {
  const { go } = usePage();
  const { is, read, spreading, against } = day;
  if (is === undefined) {
    const missing = fieldsIn(DAY_FIELDS[name]).filter(({ key }) => read.missing.includes(key));
    return (
      <p role="status">
        {missing.length === 0
          ? 'What is marked above cannot be read.'
          : `Still to be typed: ${missing.map((each) => `${each.name}, such as ${each.such}`).join('; ')}.`}
      </p>
    );
  }
  if (is.state === 'waiting') return <p role="status">Working it out.</p>;
  if (is.state === 'failed') return <p role="alert">{is.message}</p>;
  const { answer } = is;
  if (!answer.reached) return <p role="alert">{answer.message}</p>;
  const ratios = ratiosIn(answer);
  const other =
    against?.is.state === 'answered' && against.is.answer.reached
      ? { spec: against.spec, figures: against.is.answer.figures }
      : undefined;
  return (
    <>
      {spreading && <p className="soft">The ± are on their way.</p>}
      {against !== undefined && <AgainstWords spec={against.spec} is={against.is} />}
      {ratios !== undefined && <RatioWords answer={ratios} />}
      {name === 'brakes' && <BiasChart figures={answer.figures} />}
      <DayFigures
        figures={answer.figures}
        against={other}
        open={(figure) => go({ figure: `${DAY_FIGURE}${floorId(figure)}` })}
      />
      {name === 'at-speed' && <Frequencies />}
      <Remarks notes={answer.notes} cautions={answer.cautions} />
    </>
  );
}

function AgainstWords({ spec, is }: NonNullable<Day['against']>) {
  const { go } = usePage();
  const why = is.state === 'failed' ? is.message : whyNot(is.state === 'answered' ? is.answer : undefined);
  return (
    <p>
      Beside it: {spec}
      {is.state === 'waiting' && ', being worked out'}
      {why !== undefined && `. ${why}`}{' '}
      <button type="button" className="plain-word" onClick={() => go({ against: undefined })}>
        leave it out
      </button>
    </p>
  );
}

const whyNot = (answer: DayAnswer | undefined): string | undefined =>
  answer === undefined || answer.reached ? undefined : answer.message;
