/** A board on a canvas: loaded on its own after the page stands, shown anew, put away with the canvas. */
import { type RefObject, useEffect, useRef, useState } from 'react';

interface AnyBoard<S> {
  show(shown: S): void;
  dispose(): void;
}

/** `flat` where the browser has no WebGL2: what is drawn then is drawn by whoever asks. */
export type BoardStands = 'coming' | 'here' | 'flat';

/**
 * @param load  brings the board; the same function every time, such as one of a module
 * @param shown  what is drawn; undefined: nothing yet. A new object is drawn anew
 */
export function useBoard<S>(
  load: () => Promise<new (canvas: HTMLCanvasElement) => AnyBoard<S>>,
  shown: S | undefined,
): readonly [RefObject<HTMLCanvasElement | null>, BoardStands] {
  const canvas = useRef<HTMLCanvasElement>(null);
  const board = useRef<AnyBoard<S>>(undefined);
  const [stands, setStands] = useState<BoardStands>('coming');
  useEffect(() => {
    let wanted = true;
    load()
      .then((Made) => {
        if (!wanted || canvas.current === null) return;
        board.current = new Made(canvas.current);
        setStands('here');
      })
      .catch(() => wanted && setStands('flat'));
    return () => {
      wanted = false;
      board.current?.dispose();
      board.current = undefined;
    };
  }, [load]);
  useEffect(() => {
    if (stands === 'here' && shown !== undefined) board.current?.show(shown);
  }, [stands, shown]);
  return [canvas, stands];
}
