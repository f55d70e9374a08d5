/** A question that is put by pressing a word: waiting, answered, or told why not. */
import { useState } from 'react';

export interface Put<A> {
  readonly answer?: A;
  readonly message?: string;
  readonly waiting: boolean;
  put(asking: () => Promise<A | { readonly reached: false; readonly message: string }>): void;
}

export function useQuestion<A extends { readonly reached: true }>(): Put<A> {
  const [state, setState] = useState<Omit<Put<A>, 'put'>>({ waiting: false });
  return {
    ...state,
    put: (asking) => {
      setState({ waiting: true });
      asking().then(
        (answer) =>
          setState(
            answer.reached
              ? { waiting: false, answer }
              : { waiting: false, message: (answer as { readonly message: string }).message },
          ),
        (reason: Error) => setState({ waiting: false, message: reason.message }),
      );
    },
  };
}
