/** One step of a working: the formula, the numbers put in, and where each came from. */
import type { Reading } from '../../measured/reading.ts';
import { spreadWords } from '../../measured/reading.ts';
import type { WorkingReached } from '../../questions/index.ts';
import { printedUnit, unitAfter } from '../../units/show.ts';
import { parse, symbolMathML, toMathML } from '../../working/expression.ts';
import type { Step, Term } from '../../working/working.ts';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';

interface Props {
  readonly step: Step;
  readonly working: Pick<WorkingReached, 'readings'>;
}

export function StepOfWorking({ step, working }: Props) {
  const { speech } = usePage();
  const value = spoken(step.value, step.unit, speech);
  return (
    <article className="step">
      <h4>{step.means}</h4>
      {step.kind === 'formula' ? (
        <>
          <Formula is={`${symbolMathML(step.symbol)}<mo>=</mo>${toMathML(parse(step.formula))}`} />
          <Formula
            is={`<mspace width="1.2em"/><mo>=</mo>${toMathML(parse(step.formula), putIn(step.terms))}<mo>=</mo>${number(step.value)}<mspace width="0.3em"/><mtext>${unitText(step.unit)}</mtext>`}
          />
        </>
      ) : (
        <p>Solved: {step.method}.</p>
      )}
      <p>
        {step.kind === 'solved' && <Maths is={symbolMathML(step.symbol)} />} ={' '}
        <b className="number">{value.text}</b>
        {unitAfter(value.unit)}
      </p>
      {step.kind === 'solved' && step.residual !== undefined && (
        <p className="soft">
          Left over: {step.residual.value.toExponential(1).replace('-', '−')} {step.residual.unit},{' '}
          {step.residual.of}.
        </p>
      )}
      {step.terms.length > 0 && (
        <ul className="terms">
          {step.terms.map((term) => (
            <TermRow key={term.symbol} term={term} reading={readingOf(term, working)} />
          ))}
        </ul>
      )}
      <p className="soft">
        Source: {step.source}
        {step.kind === 'formula' && step.holds !== undefined && `. ${step.holds}`}
      </p>
    </article>
  );
}

function TermRow({ term, reading }: { term: Term; reading: Reading | undefined }) {
  const { speech } = usePage();
  const shown = spoken(term.value, term.unit, speech);
  return (
    <li>
      <Maths is={symbolMathML(term.symbol)} /> {term.means}: <span className="number">{shown.text}</span>
      {unitAfter(shown.unit)}
      <span className="soft origin">{originWords(term, reading)}</span>
    </li>
  );
}

const readingOf = (term: Term, working: Pick<WorkingReached, 'readings'>): Reading | undefined =>
  term.from?.kind === 'reading' ? working.readings[term.from.path] : undefined;

function originWords(term: Term, reading: Reading | undefined): string {
  const { from } = term;
  if (from === undefined) return 'from the linkage as solved';
  switch (from.kind) {
    case 'step':
      return 'from a step above';
    case 'table':
      return `from the table: ${from.name}`;
    case 'asked':
      return `as asked: ${from.what}`;
    case 'constant':
      return from.what;
    case 'reading':
      return reading === undefined ? `car file, ${from.path}` : readingWords(reading);
  }
}

/** Who read it, with what, when, and how well. */
function readingWords(reading: Reading): string {
  const who = [
    reading.by === undefined ? undefined : `by ${reading.by}`,
    reading.on === undefined ? undefined : `on ${reading.on}`,
    reading.instrument === undefined ? undefined : `with ${reading.instrument}`,
  ].filter((part) => part !== undefined);
  return [
    `read "${reading.text}"`,
    who.join(' '),
    reading.mirrored ? 'taken from the other side' : '',
    spreadWords(reading),
    reading.path,
    reading.note ?? '',
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** A symbol in a line of text. The text is made by our own printer, which escapes what it prints. */
function Maths({ is }: { is: string }) {
  // biome-ignore lint/security/noDangerouslySetInnerHtml: built by symbolMathML from a formula declared in the program
  return <span className="maths" dangerouslySetInnerHTML={mathsOf(is)} />;
}

/** A formula on lines of its own; one that is wider than the slip scrolls, so the keyboard must reach it. */
function Formula({ is }: { is: string }) {
  return (
    <div
      className="maths formula"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it may scroll
      tabIndex={0}
      // biome-ignore lint/security/noDangerouslySetInnerHtml: built by toMathML from a formula declared in the program
      dangerouslySetInnerHTML={mathsOf(is)}
    />
  );
}

const mathsOf = (is: string) => ({ __html: `<math><mrow>${is}</mrow></math>` });

const putIn =
  (terms: readonly Term[]) =>
  (name: string): string => {
    const term = terms.find((each) => each.symbol === name);
    return term === undefined ? symbolMathML(name) : number(term.value);
  };

/** An SI number with five digits, powers of ten as they are printed. */
function number(value: number): string {
  if (!Number.isFinite(value)) return '<mtext>—</mtext>';
  const size = Math.abs(value);
  const sign = value < 0 ? '<mo>−</mo>' : '';
  if (size !== 0 && (size < 1e-3 || size >= 1e5)) {
    const [digits, power] = size.toExponential(4).split('e') as [string, string];
    const plain = Number(power);
    return `<mrow>${sign}<mn>${digits}</mn><mo>×</mo><msup><mn>10</mn><mrow>${plain < 0 ? '<mo>−</mo>' : ''}<mn>${Math.abs(plain)}</mn></mrow></msup></mrow>`;
  }
  const shown = Number(size.toPrecision(5)).toString();
  return value < 0 ? `<mrow><mo>(</mo>${sign}<mn>${shown}</mn><mo>)</mo></mrow>` : `<mn>${shown}</mn>`;
}

/** A share is a plain number among SI numbers. */
const unitText = (unit: string): string => (unit === 'share' ? '' : printedUnit(unit));
