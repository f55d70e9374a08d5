/** Day or night on the page: the reader's choice, or the machine's where none was made. */
import { useLayoutEffect, useSyncExternalStore } from 'react';

export type Light = 'as the machine' | 'day' | 'night';

const DARK = '(prefers-color-scheme: dark)';

const machineIsDark = (): boolean => matchMedia(DARK).matches;

function onMachine(tell: () => void): () => void {
  const query = matchMedia(DARK);
  query.addEventListener('change', tell);
  return () => query.removeEventListener('change', tell);
}

/** Whether the page is dark now; the style sheet is told before anything is painted. */
export function useDark(light: Light): boolean {
  const machine = useSyncExternalStore(onMachine, machineIsDark);
  const dark = light === 'night' || (light === 'as the machine' && machine);
  useLayoutEffect(() => {
    document.documentElement.dataset.light = dark ? 'night' : 'day';
  }, [dark]);
  return dark;
}
