/** The set-up solved beside the page, for the stop where its moves are told. */
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

export function useSetUp() {
  const { place } = usePage();
  const { key, source, car } = useCar();
  const wanted = place.floor === 'changes' && car.form.floor !== undefined;
  return useAnswer(wanted ? `set-up ${key}` : undefined, () => ask('setUp', source), 0);
}

export function useAdjusters(open: boolean) {
  const { key, source } = useCar();
  return useAnswer(open ? `adjusters ${key}` : undefined, () => ask('adjusters', source), 0);
}
