/** Loads of the chosen wheel and case, at once without spread, and with it when the hand rests. */
import { useMemo } from 'react';
import { type JointName, jointOf, loadsOf } from '../../questions/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { useDoing } from './use-case.ts';

/** A spread of loads takes a second or two: the hand has to rest a little longer. */
const REST = 300;

/** Nothing where the card does not show loads. */
export function useLoads(): ReturnType<typeof loadsOf> | undefined {
  const { place } = usePage();
  const { car, key, source } = useCar();
  const doing = useDoing();
  const { end, side } = place.wheel;
  const on = place.card === 'loads' && place.way === 'load';
  const quick = useMemo(
    () => (on ? loadsOf(car, doing, { spread: false, wheels: [{ end, side }] }) : undefined),
    [on, car, doing, end, side],
  );
  const sure = useAnswer(
    quick?.reached === true ? `loads ${key} ${JSON.stringify(doing)} ${end} ${side}` : undefined,
    () => ask('loads', source, doing, { wheels: [{ end, side }] }),
    REST,
  );
  return sure.state === 'answered' && sure.answer.reached ? sure.answer : quick;
}

export function useJoint(joint: JointName): ReturnType<typeof jointOf> {
  const { car, key, source } = useCar();
  const doing = useDoing();
  const quick = useMemo(() => jointOf(car, joint, doing, { spread: false }), [car, joint, doing]);
  const sure = useAnswer(
    quick.reached ? `joint ${key} ${JSON.stringify(doing)} ${joint}` : undefined,
    () => ask('joint', source, joint, doing),
    REST,
  );
  return sure.state === 'answered' && sure.answer.reached ? sure.answer : quick;
}
