/** The size of an element as it is laid out, followed as it changes. */
import { type RefCallback, useCallback, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function useSize(): readonly [RefCallback<HTMLElement>, Size] {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const ref = useCallback((element: HTMLElement | null) => {
    if (element === null) return;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = element;
      setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
