/** A part of the page that is fetched when it is first shown, so that the page itself stands sooner. */
import { type ComponentType, useEffect, useState } from 'react';

/**
 * @param bring  fetches the part
 * @param words  said until it is there
 */
export function later<P extends object>(
  bring: () => Promise<ComponentType<P>>,
  words: string,
): ComponentType<P> {
  let here: ComponentType<P> | undefined;
  // made once for each part, at the top of the file that shows it
  // biome-ignore lint/correctness/noComponentHookFactories: see above
  return function Later(props: P) {
    const [failed, setFailed] = useState(false);
    const [, setRound] = useState(0);
    const waiting = here === undefined && !failed;

    useEffect(() => {
      if (!waiting) return;
      let current = true;
      bring().then(
        (part) => {
          here = part;
          if (current) setRound((before) => before + 1);
        },
        () => current && setFailed(true),
      );
      return () => {
        current = false;
      };
    }, [waiting]);

    if (here !== undefined) {
      const Part = here;
      return <Part {...props} />;
    }
    if (!failed) return <p aria-busy="true">{words}</p>;
    return (
      <p role="alert">
        The workshop does not answer. See that flatpatch still runs, then{' '}
        <button type="button" className="plain-word" onClick={() => setFailed(false)}>
          try again
        </button>
        .
      </p>
    );
  };
}
