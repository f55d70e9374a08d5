/** What the car is doing, chosen by a small picture of its axle from ahead with arrows where it moves. */
import { isLoaded, MODES, type Mode } from '../place.ts';
import { usePage } from '../state.tsx';

/** So that choosing a picture is seen at once: the wheel goes so far, or as far as it can. Metres. */
const FIRST_TRAVEL = 0.01;

const WORDS: Readonly<Record<Mode, readonly [word: string, more: string]>> = {
  wheel: ['this wheel', 'this wheel alone, up or down'],
  heave: ['both', 'both wheels of the axle together'],
  roll: ['rolled', 'this wheel one way and the other by as much the other way'],
};

interface Props {
  /** How far the wheel may go into bump. */
  readonly high: number;
}

export function ModeChoice({ high }: Props) {
  const { place, go } = usePage();
  const still = place.travel === 0 && place.rack === 0;
  const byHand = !isLoaded(place);
  const { side } = place.wheel;
  return (
    <fieldset className="words modes">
      <legend className="unseen">What the car is doing</legend>
      <button
        type="button"
        aria-pressed={byHand && still}
        title="standing as surveyed"
        onClick={() => go({ travel: 0, rack: 0 })}
      >
        <Axle left={0} right={0} />
        standing
      </button>
      {MODES.map((mode) => (
        <button
          key={mode}
          type="button"
          aria-pressed={byHand && !still && place.mode === mode}
          title={WORDS[mode][1]}
          onClick={() =>
            go((from) => ({ mode, ...(from.travel === 0 && { travel: Math.min(FIRST_TRAVEL, high) }) }))
          }
        >
          <Axle {...movesOf(mode, side)} />
          {WORDS[mode][0]}
          <span className="unseen">: {WORDS[mode][1]}</span>
        </button>
      ))}
    </fieldset>
  );
}

type Move = -1 | 0 | 1;

/** Seen from ahead, the left wheel of the car is at the right. */
function movesOf(mode: Mode, side: 'left' | 'right'): { left: Move; right: Move } {
  const other: Move = mode === 'heave' ? 1 : mode === 'roll' ? -1 : 0;
  return side === 'left' ? { left: 1, right: other } : { left: other, right: 1 };
}

const LIFT = 3;
const MIDDLE = 13;

function Axle({ left, right }: { left: Move; right: Move }) {
  return (
    <svg className="axle-picture" viewBox="0 0 64 26" aria-hidden="true">
      <path className="tub" d="M24 8h16l3 9h-22z" />
      <path d={`M21 13L12 ${13 - LIFT * right}M43 13L52 ${13 - LIFT * left}`} />
      <Wheel x={8} move={right} />
      <Wheel x={56} move={left} />
      <path className="ground" d="M2 24h60" />
    </svg>
  );
}

function Wheel({ x, move }: { x: number; move: Move }) {
  const y = MIDDLE - LIFT * move;
  const away = x < 32 ? x + 9 : x - 9;
  return (
    <>
      <rect x={x - 4} y={y - 7} width={8} height={14} rx={2} />
      {move !== 0 && (
        <path
          className="arrow"
          d={`M${away} ${MIDDLE + 6 * move}v${-12 * move}m-3 ${4 * move}l3 ${-4 * move}l3 ${4 * move}`}
        />
      )}
    </>
  );
}
