/** The spec that stands beside the open one, opened from the same file. */
import { useMemo } from 'react';
import type { CarSource, Opened } from '../engine/answers.ts';
import type { Asked } from '../engine/ask.ts';
import { useOpened } from '../engine/opened.ts';
import { useCar } from '../sheet/car-file.tsx';
import { sourceOf } from '../sheet/use-car-file.ts';

export interface OtherSpec {
  readonly spec: string;
  readonly source: CarSource;
  readonly opened: Asked<Opened>;
  readonly key: string;
}

export function useOtherSpec(spec: string): OtherSpec {
  const { file, key } = useCar();
  const source = useMemo(() => sourceOf(file, spec), [file, spec]);
  return { spec, source, opened: useOpened(source), key: `${key} beside ${spec}` };
}
