/** A question that is put by pressing a word: waiting, answered, or told why not. */
import { useMemo, useState } from 'react';
import { useCar } from '../../sheet/car-file.tsx';
import { usePage } from '../../state.tsx';

export interface Put<A> {
  readonly answer?: A;
  readonly message?: string;
  readonly waiting: boolean;
  /** The axle was changed in the file since this was answered. */
  readonly overtaken: boolean;
  put(asking: () => Promise<A | { readonly reached: false; readonly message: string }>): void;
}

interface Held<A> {
  readonly answer?: A;
  readonly message?: string;
  readonly waiting: boolean;
  readonly of?: string;
}

export function useQuestion<A extends { readonly reached: true }>(): Put<A> {
  const { car } = useCar();
  const { end } = usePage().place.wheel;
  const axle = useMemo(() => JSON.stringify(car.form[end]), [car, end]);
  const [{ of, ...held }, hold] = useState<Held<A>>({ waiting: false });
  return {
    ...held,
    overtaken: held.answer !== undefined && of !== axle,
    put: (asking) => {
      hold({ waiting: true });
      asking().then(
        (answer) =>
          hold(
            answer.reached
              ? { waiting: false, answer, of: axle }
              : { waiting: false, message: (answer as { readonly message: string }).message },
          ),
        (reason: Error) => hold({ waiting: false, message: reason.message }),
      );
    },
  };
}
