/**
 * Loads of the chosen wheel and case: at once without spread, under a slider with what its knots tell of it, and in
 * full when the hand rests.
 */
import { useMemo } from 'react';
import { type JointName, jointOf, loadsOf } from '../../questions/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { useDoing } from './use-case.ts';
import { useSlidSpread } from './use-slid-spread.ts';

/** A spread of loads takes a second or two: the hand has to rest a little longer. */
export const REST = 300;

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
  const figures = useSlidSpread({
    question: `loads ${end} ${side}`,
    doing,
    figures: quick?.reached === true ? quick.wheels[0]!.figures : undefined,
    asking: async (at) => {
      const is = await ask('loads', source, at, { wheels: [{ end, side }] });
      return is.reached ? is.wheels[0]!.figures : [];
    },
  });
  const slid = useMemo(
    () =>
      quick?.reached === true && figures !== undefined
        ? { ...quick, wheels: [{ wheel: quick.wheels[0]!.wheel, figures }] }
        : quick,
    [quick, figures],
  );
  return sure.state === 'answered' && sure.answer.reached ? sure.answer : slid;
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
  const figures = useSlidSpread({
    question: `joint ${joint}`,
    doing,
    figures: quick.reached ? quick.figures : undefined,
    asking: async (at) => {
      const is = await ask('joint', source, joint, at);
      return is.reached ? is.figures : [];
    },
  });
  if (sure.state === 'answered' && sure.answer.reached) return sure.answer;
  return quick.reached && figures !== undefined ? { ...quick, figures } : quick;
}
