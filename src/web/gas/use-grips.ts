/**
 * A hand on the grips: by pointer, by touch, by arrow keys. What is not on a grip goes on to whoever turns the view.
 *
 * Pulls are from where the grip was at rest, so that what is pulled back comes back.
 */
import { useEffect, useRef } from 'react';
import { add, scale, type Vec3 } from '../../maths/vec3.ts';
import type { HandTold } from '../../questions/index.ts';
import type { useHands } from '../scene/hands.ts';
import type { Frame, Spot } from '../scene/look.ts';
import { askOf, type Grip, gripAt, sameGrip, wayOf } from './grips.ts';
import type { HandDoes } from './protocol.ts';

type Pointers = ReturnType<typeof useHands>;
type Pointed = React.PointerEvent<HTMLElement>;

interface Asked {
  /** Of the view, behind the grips. */
  readonly behind: Pointers;
  readonly grips: readonly Grip[];
  readonly frame: Frame;
  readonly told: HandTold | undefined;
  readonly live: boolean;
  readonly does: (what: HandDoes) => void;
  readonly onChoose: (grip: Grip) => void;
  /** Where there is no room the rest may give way. */
  readonly mend: boolean;
}

interface Held {
  readonly grip: Grip;
  readonly told: HandTold;
  readonly pointer?: number;
  readonly from?: Spot;
  readonly by: Vec3;
  readonly moved: boolean;
}

/** A grip is taken within so many pixels of it, and pulled after so many: a finger is blunter than a mouse. */
const REACH = { fine: 20, blunt: 30 } as const;
const PULLED = { fine: 3, blunt: 8 } as const;
const bluntness = (event: Pointed): 'fine' | 'blunt' => (event.pointerType === 'touch' ? 'blunt' : 'fine');

/** A step of an arrow key, metres; with Shift ten times that. */
const STEP = 0.001;
/** After so long without a key the hand has let go, ms. */
const LET_GO = 700;

const ARROWS: Readonly<Record<string, (frame: Frame) => Vec3>> = {
  ArrowRight: ({ right }) => right,
  ArrowLeft: ({ right }) => scale(right, -1),
  ArrowUp: ({ up }) => up,
  ArrowDown: ({ up }) => scale(up, -1),
  PageUp: ({ toward }) => toward,
  PageDown: ({ toward }) => scale(toward, -1),
};

export function useGrips(asked: Asked) {
  const held = useRef<Held>(undefined);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);

  const letGo = (): void => {
    clearTimeout(timer.current);
    if (held.current?.moved === true) asked.does({ do: 'let go', mend: asked.mend });
    held.current = undefined;
  };
  const pull = (hold: Held, by: Vec3): void => {
    held.current = { ...hold, by, moved: true };
    asked.does({ do: 'pull', ask: askOf(hold.grip, by, hold.told) });
  };
  const spotOf = (event: Pointed): Spot => {
    const box = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  const onPointerDown = (event: Pointed): void => {
    const { grips, frame, told } = asked;
    const spot = spotOf(event);
    if (held.current?.pointer !== undefined) return;
    const grip = event.button === 0 ? gripAt(grips, frame, spot, REACH[bluntness(event)]) : undefined;
    if (grip === undefined || told === undefined) {
      asked.behind.onPointerDown(event);
      return;
    }
    letGo();
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { grip, told, pointer: event.pointerId, from: spot, by: [0, 0, 0], moved: false };
    asked.onChoose(grip);
  };
  const onPointerMove = (event: Pointed): void => {
    const hold = held.current;
    if (hold?.from === undefined) {
      asked.behind.onPointerMove(event);
      return;
    }
    if (hold.pointer !== event.pointerId) return;
    const spot = spotOf(event);
    const by = { x: spot.x - hold.from.x, y: spot.y - hold.from.y };
    if (!hold.moved && Math.hypot(by.x, by.y) < PULLED[bluntness(event)]) return;
    pull(hold, wayOf(hold.grip, by, asked.frame));
  };
  const onPointerUp = (event: Pointed): void => {
    const hold = held.current;
    if (hold?.from === undefined) asked.behind.onPointerUp(event);
    else if (hold.pointer === event.pointerId) letGo();
  };

  const onKeyDown = (grip: Grip, event: React.KeyboardEvent): void => {
    const way = ARROWS[event.key]?.(asked.frame);
    if (way === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const before = held.current;
    // the first press takes hold where the grip is at rest
    if (before === undefined && (asked.live || asked.told === undefined)) return;
    const hold =
      before !== undefined && sameGrip(before.grip, grip)
        ? before
        : { grip, told: asked.told!, by: [0, 0, 0] as const, moved: false };
    pull(hold, add(hold.by, scale(way, event.shiftKey ? 10 * STEP : STEP)));
    clearTimeout(timer.current);
    timer.current = setTimeout(letGo, LET_GO);
  };

  return {
    pointers: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel: onPointerUp },
    onKeyDown,
    onBlur: letGo,
  };
}
