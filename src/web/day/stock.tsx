/** The shelf of pairs beside the gears: pairs are put on it and taken off it, and kept in the file. */
import { useId } from 'react';
import type { Change } from '../client.ts';
import { type Draft, useDraft } from '../forms/draft.ts';
import { KeepFoot } from '../forms/keep-foot.tsx';
import { withUnit } from '../forms/stamp.ts';
import { useKeep } from '../forms/use-keep.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

/** Keys of the draft: a pair to be put on the shelf, and those that are to go. */
const FIELDS = [
  { key: 'pair', name: 'pair, driver first', such: '17/36' },
  { key: 'gears', name: 'gears that its hubs fit; empty, all', such: '3, 4' },
  { key: 'run', name: 'run so far', such: '0 km' },
  { key: 'note', name: 'note', such: '' },
] as const;
const OUT = 'out ';
/** A pair is known by its place on the shelf; the shelf it was marked on is kept, lest another's pair be taken out. */
const SHELF = 'shelf';

export function Stock() {
  const { file, car } = useCar();
  const { speech } = usePage();
  const id = useId();
  const keeping = useKeep();
  const [draft, setDraft] = useDraft(`${file.id} gear stock`);
  const { gearbox } = car.form;
  if (gearbox === undefined) return null;
  const stock = gearbox.stock ?? [];
  const shelf = stock.map(({ pair }) => pair.text).join(' ');
  const begun = (): Draft => ({ [SHELF]: shelf });
  const send = async (now: Draft): Promise<void> => {
    if (now[SHELF] !== shelf && Object.keys(now).some((key) => key.startsWith(OUT))) {
      keeping.tell(['The stock has changed since pairs were marked: leave this, and mark them again.']);
      return;
    }
    const changes = changesOf(
      now,
      stock.length,
      gearbox.stock !== undefined,
      speech === 'mm-N' ? 'km' : 'mile',
    );
    if (changes.length === 0) {
      keeping.tell(['Type a pair, such as 17/36, or mark one that is to go.']);
      return;
    }
    if (await keeping.send(changes, 'The stock is kept.')) setDraft(undefined);
  };
  return (
    <section className="stock">
      <h3>Pairs in stock</h3>
      {stock.length === 0 && <p className="soft">The file has none beside those fitted.</p>}
      <ul className="stock-pairs">
        {stock.map(({ pair, gears, run, note }, k) => {
          const out = draft?.[`${OUT}${k}`] !== undefined;
          const more = [gears === undefined ? '' : `gear ${gears.join(', ')}`, run?.text ?? '', note ?? ''];
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two pairs of one kind are told apart by their place alone
            <li key={k} className={out ? 'out' : undefined}>
              <b className="number">{pair.text}</b>
              <span className="soft">{more.filter((each) => each !== '').join('; ')}</span>
              {draft !== undefined && (
                <button
                  type="button"
                  className="plain-word"
                  aria-pressed={out}
                  aria-label={`take ${pair.text} out of the stock`}
                  onClick={() => setDraft(toggled(draft, `${OUT}${k}`))}
                >
                  {out ? 'leave in' : 'out'}
                </button>
              )}
            </li>
          );
        })}
      </ul>
      {car.spec !== car.specs[0] ? (
        <p className="soft">The stock is kept with the file itself: choose its first spec to change it.</p>
      ) : draft === undefined ? (
        <button type="button" className="plain-word" onClick={() => setDraft(begun())}>
          put pairs in or take them out
        </button>
      ) : (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void send(draft);
          }}
        >
          {FIELDS.map(({ key, name, such }) => (
            <label key={key}>
              {name}
              <input
                autoComplete="off"
                placeholder={such === '' ? undefined : `such as ${such}`}
                value={draft[key] ?? ''}
                onChange={({ target }) => setDraft({ ...draft, [key]: target.value })}
              />
            </label>
          ))}
          <KeepFoot id={id} keeping={keeping} onLeave={() => setDraft(undefined)} />
        </form>
      )}
    </section>
  );
}

function toggled(draft: Draft, key: string): Draft {
  const { [key]: was, ...rest } = draft;
  return was === undefined ? { ...rest, [key]: 'yes' } : rest;
}

/** Those that go, the last first so that the others keep their places; then the new one behind them. */
function changesOf(draft: Draft, count: number, listed: boolean, distance: string): readonly Change[] {
  const path = ['gearbox', 'stock'] as const;
  const gone = Array.from({ length: count }, (_, k) => count - 1 - k).filter(
    (k) => draft[`${OUT}${k}`] !== undefined,
  );
  const pair = draft.pair?.trim() ?? '';
  const gears = (draft.gears ?? '').split(/[\s,]+/).filter((each) => each !== '');
  const run = withUnit(draft.run ?? '', distance);
  const note = draft.note?.trim() ?? '';
  const added = {
    pair,
    ...(gears.length === 0 ? {} : { gears: gears.map(Number) }),
    ...(run === '' ? {} : { run }),
    ...(note === '' ? {} : { note }),
  };
  return [
    ...gone.map((k): Change => ({ path: [...path, k], value: null })),
    ...(Object.keys(added).length === 1 && pair === ''
      ? []
      : [
          listed
            ? { path: [...path, count - gone.length], value: added }
            : { path: [...path], value: [added] },
        ]),
  ];
}
