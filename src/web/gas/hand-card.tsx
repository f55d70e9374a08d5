/** Moving by hand on the card: what is chosen by figures, what is kept, back and forth, and mending the rest. */
import { add, distance, dot, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { HandAsk, HandKeep, HandTold, PrimariesScene } from '../../questions/index.ts';
import { TypedAmount } from '../typed-amount.tsx';
import { askOf, clocked, type Grip, gripName, turned } from './grips.ts';
import type { HandAnswer, HandDoes } from './protocol.ts';

/** How the page stands by the hand: on or off, what it has chosen, whether the rest may give way. */
export interface HandMode {
  readonly on: boolean;
  readonly chosen: Grip | undefined;
  readonly mend: boolean;
}

interface Props {
  readonly mode: HandMode;
  readonly onMode: (mode: HandMode) => void;
  readonly hand: HandAnswer | undefined;
  readonly scene: HandScene;
  readonly does: (what: HandDoes) => void;
}

/** Where pipes begin, and how long a collector is. */
export type HandScene = Pick<PrimariesScene, 'ports' | 'collector'>;

export function HandCard({ mode, onMode, hand, scene, does }: Props) {
  const { on, chosen, mend } = mode;
  const told = hand?.told;
  return (
    <section className="by-hand">
      <h3>By hand</h3>
      <label className="tick-word">
        <input
          type="checkbox"
          checked={on}
          onChange={(event) => {
            if (event.target.checked) {
              does({ do: 'take' });
              // on a phone the drawing lies above what was just pressed
              document.querySelector('.paper')?.scrollIntoView({ block: 'nearest' });
            }
            onMode({ ...mode, on: event.target.checked, chosen: undefined });
          }}
        />
        move bends and collector
      </label>
      {on && told !== undefined && (
        <>
          <label className="tick-word">
            <input
              type="checkbox"
              checked={mend}
              onChange={(event) => onMode({ ...mode, mend: event.target.checked })}
            />
            where there is no room the rest gives way
          </label>
          {chosen === undefined ? (
            <p className="soft">
              Pull a bend (square) or the collector (ring) on the drawing; every pipe keeps its length. Arrow
              keys move what is chosen by 1 mm, with Shift by 10 mm, Page up and down towards the eye and
              away.
            </p>
          ) : (
            <Chosen grip={chosen} told={told} scene={scene} mend={mend} does={does} />
          )}
          <Steps hand={hand!} does={does} />
        </>
      )}
    </section>
  );
}

interface ChosenProps {
  readonly grip: Grip;
  readonly told: HandTold;
  readonly scene: HandScene;
  readonly mend: boolean;
  readonly does: (what: HandDoes) => void;
}

function Chosen({ grip, told, scene, mend, does }: ChosenProps) {
  const ask = (what: HandAsk): void => {
    does({ do: 'pull', ask: what });
    does({ do: 'let go', mend });
  };
  const move = (by: Vec3): void => ask(askOf(grip, by, told));
  const keep = (what: HandKeep, on: boolean): void => does({ do: 'keep', what, on });
  return (
    <>
      <h4>
        {gripName(grip)}
        {grip.what === 'bend' && ` of ${grip.of}`}
      </h4>
      {grip.what === 'bend' && grip.line !== undefined ? (
        <AlongLine grip={grip} line={grip.line} told={told} scene={scene} onMove={move} />
      ) : (
        grip.what !== 'lean' && <Place at={grip.at} onMove={move} />
      )}
      {grip.what === 'lean' &&
        (['x', 'y', 'z'] as const).map((axis, k) => (
          <Figure
            key={axis}
            name={`turn about ${axis} by`}
            value={0}
            unit="deg"
            onTake={(by) => ask(turned([0, 1, 2].map((c) => (c === k ? by : 0)) as unknown as Vec3))}
          />
        ))}
      {grip.what === 'collector' && (
        <Figure name="turn about its own axis by" value={0} unit="deg" onTake={(by) => ask(clocked(by))} />
      )}
      {grip.what === 'bend' ? (
        <>
          <Tick
            says="keep this bend here"
            on={told.bends.some((b) => b.cylinder === grip.cylinder && b.bend === grip.bend && b.kept)}
            onTick={(on) => keep({ what: 'bend', cylinder: grip.cylinder, bend: grip.bend }, on)}
          />
          <Tick
            says={`keep all of ${grip.pipe.toLowerCase()} as it is`}
            on={told.keptPipes.includes(grip.cylinder)}
            onTick={(on) => keep({ what: 'pipe', cylinder: grip.cylinder }, on)}
          />
        </>
      ) : (
        <Tick
          says="keep the collector here"
          on={told.collector.kept}
          onTick={(on) => keep({ what: 'collector' }, on)}
        />
      )}
    </>
  );
}

function Steps({ hand, does }: { readonly hand: HandAnswer; readonly does: (what: HandDoes) => void }) {
  const { told, mending, live } = hand;
  const busy = mending || live;
  const word = (says: string, what: HandDoes, can: boolean, chief = false) => (
    <button
      type="button"
      className={chief ? 'word chief' : 'word'}
      disabled={busy || !can}
      onClick={() => does(what)}
    >
      {says}
    </button>
  );
  return (
    <p className="row">
      {told.asked && word('Let the rest give way', { do: 'mend' }, true, true)}
      {!told.asked && told.keeping && word('Mend the rest round what is kept', { do: 'mend' }, true)}
      {word('Undo', { do: 'undo' }, told.steps > 0)}
      {word('Redo', { do: 'redo' }, told.undone > 0)}
      {word('Back to the found set', { do: 'found' }, !told.asFound)}
    </p>
  );
}

function Tick({ says, on, onTick }: { says: string; on: boolean; onTick: (on: boolean) => void }) {
  return (
    <label className="tick-word">
      <input type="checkbox" checked={on} onChange={(event) => onTick(event.target.checked)} />
      {says}
    </label>
  );
}

interface FigureProps {
  readonly name: string;
  readonly value: number;
  readonly unit: 'mm' | 'deg';
  readonly onTake: (value: number) => void;
}

function Figure({ name, value, unit, onTake }: FigureProps) {
  return (
    <div className="hand-figure">
      <span aria-hidden="true">{name}</span>
      <TypedAmount
        name={name}
        value={value}
        si={unit === 'mm' ? 'm' : 'rad'}
        unit={unit}
        digits={1}
        onTake={onTake}
      />
    </div>
  );
}

const AXES = ['x, forward', 'y, to the left', 'z, up'] as const;

function Place({ at, onMove }: { readonly at: Vec3; readonly onMove: (by: Vec3) => void }) {
  return (
    <>
      {AXES.map((name, k) => (
        <Figure
          key={name}
          name={name}
          value={at[k]!}
          unit="mm"
          onTake={(to) => onMove([0, 1, 2].map((c) => (c === k ? to - at[k]! : 0)) as unknown as Vec3)}
        />
      ))}
    </>
  );
}

interface AlongProps {
  readonly grip: Extract<Grip, { what: 'bend' }>;
  readonly line: Vec3;
  readonly told: HandTold;
  readonly scene: HandScene;
  readonly onMove: (by: Vec3) => void;
}

/** The first bend by its distance from the flange, the last by its distance from the mouth. */
function AlongLine({ grip, line, told, scene, onMove }: AlongProps) {
  const first = grip.bend === 1;
  const pipe = told.set.pipes.find(({ cylinder }) => cylinder === grip.cylinder)!;
  const end = first
    ? scene.ports.find(({ cylinder }) => cylinder === grip.cylinder)!.at
    : told.set.collector.inlets[pipe.inlet - 1]!;
  const far = distance(grip.at, end);
  const sense = Math.sign(dot(sub(grip.at, end), line)) || 1;
  return (
    <Figure
      name={first ? 'from its beginning to its corner' : 'from its corner to the mouth'}
      value={far}
      unit="mm"
      onTake={(to) => onMove(sub(add(end, scale(line, sense * to)), grip.at))}
    />
  );
}
