/** An exhaust of several parts: a bank with several collectors or a tail, or both banks clear of each other. */
import { useMemo, useState } from 'react';
import type { Vec3 } from '../../maths/vec3.ts';
import { type Banks, partWords } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { GasPaper } from './gas-paper.tsx';
import { gripsOf, sameGrip } from './grips.ts';
import { HandCard, type HandMode } from './hand-card.tsx';
import { CornerLines, HandGrips, HandTells } from './hand-grips.tsx';
import { PartsCard } from './parts-card.tsx';
import type { PartTold } from './parts-protocol.ts';
import type { HandDoes } from './protocol.ts';
import type { Lit, PipeGroup } from './shown.ts';
import { useGrips } from './use-grips.ts';
import { usePaper } from './use-paper.ts';
import { useParts } from './use-parts.ts';

export function PartsWay({ banks }: { readonly banks: Banks }) {
  const finding = useParts(banks);
  const { car } = useCar();
  const { scene, parts, progress, refused } = finding;
  const [lit, setLit] = useState<Lit>();
  const [pulses, setPulses] = useState(false);
  const [mode, setMode] = useState<HandMode>({ on: false, chosen: undefined, mend: true });
  const { sets } = progress ?? {};
  const fit = useMemo(() => withThose(parts, sets).map(groupOf), [parts, sets]);
  const on = usePaper(fit);
  const part = sets?.find(({ title }) => title === lit?.group);
  const hand = mode.on && part !== undefined && finding.hand?.title === part.title ? finding.hand : undefined;
  // while a hand pulls, its part lies as it pulls
  const pulled = hand?.live === true ? hand.told.set : undefined;
  const groups = useMemo(
    () =>
      pulled === undefined
        ? fit
        : fit.map((each) => (each.name === lit?.group ? { ...each, set: pulled } : each)),
    [fit, pulled, lit?.group],
  );
  const called = (words: string): string => (part === undefined ? words : partWords(part, words));
  const grips = hand === undefined ? [] : gripsOf(hand.told, part!, lit?.cylinder, called);
  // as it lies now
  const chosen = grips.find((grip) => sameGrip(mode.chosen, grip));
  const does = (what: HandDoes): void => {
    if (part !== undefined) finding.does(part.title, what);
  };
  const choose = (grip: HandMode['chosen']): void => setMode({ ...mode, chosen: grip });
  const hands = useGrips({
    behind: on.pointers,
    grips,
    frame: on.frame,
    told: hand?.live === false ? hand.told : undefined,
    live: hand?.live === true,
    does,
    onChoose: choose,
    mend: mode.mend,
  });
  const light = (to: Lit | undefined): void => {
    // a hand is on one part alone
    if (to?.group !== lit?.group) setMode({ ...mode, on: false, chosen: undefined });
    setLit(to);
  };
  const runs = useMemo(
    () => runsThrough(sets ?? [], car.form.exhaust?.firing ?? []),
    [sets, car.form.exhaust?.firing],
  );
  const title = banks === 'both' ? 'both banks' : `${banks} bank`;
  return (
    <>
      <GasPaper
        title="Primaries"
        more={title}
        on={on}
        pointers={hands.pointers}
        scene={scene}
        groups={groups}
        lit={lit}
        told={`Primaries of ${banks === 'both' ? title : `the ${title}`}${sets === undefined ? ', none found yet' : ''}`}
        isNear={false}
        refused={refused}
        pulses={pulses}
        onPulses={setPulses}
        runs={runs}
        {...(pulled === undefined || hand?.told.tight === undefined ? {} : { moved: hand.told.tight })}
      >
        {hand !== undefined && part !== undefined && (
          <>
            <CornerLines told={hand.told} chosen={chosen} frame={on.frame} scene={part} />
            <HandGrips
              grips={grips}
              chosen={chosen}
              frame={on.frame}
              onChoose={choose}
              onKeyDown={hands.onKeyDown}
              onBlur={hands.onBlur}
            />
            <HandTells hand={hand} />
          </>
        )}
      </GasPaper>
      <PartsCard finding={finding} banks={banks} lit={lit} onLight={light}>
        {part !== undefined && !finding.going && progress?.image?.suits !== true && (
          <HandCard mode={{ ...mode, chosen }} onMode={setMode} hand={hand} scene={part} does={does} />
        )}
      </PartsCard>
    </>
  );
}

/** Of the other bank, whose image did not suit, there is no set. */
const withThose = (parts: readonly PartTold[], sets: readonly PartTold[] = []): readonly PartTold[] =>
  parts.map((part) => sets.find(({ title }) => title === part.title) ?? part);

const groupOf = ({ title, stage, ports, od, collector, set }: PartTold): PipeGroup => ({
  name: title,
  ports,
  od,
  collector: stage === 'tail' ? { ...collector, length: 0 } : collector,
  // of what begins at a collector the number of the pipe is no cylinder's
  label: (cylinder) => (stage === 'primaries' ? String(cylinder) : stage === 'tail' ? 'T' : `S${cylinder}`),
  set,
});

/** The way of each cylinder's gas from its port to the end of the last part, in firing order of the engine. */
function runsThrough(sets: readonly PartTold[], firing: readonly number[]): readonly (readonly Vec3[])[] {
  return firing.flatMap((cylinder) => {
    const first = sets.find(({ stage, cylinders }) => stage === 'primaries' && cylinders.includes(cylinder));
    const line = lineOf(first, cylinder);
    return line === undefined ? [] : [[...line, ...behind(sets, first!)]];
  });
}

const lineOf = (part: PartTold | undefined, cylinder: number): readonly Vec3[] | undefined =>
  part?.set?.pipes.find((each) => each.cylinder === cylinder)?.line;

/** What the gas of a part goes through behind its collector. */
function behind(sets: readonly PartTold[], part: PartTold): readonly Vec3[] {
  const own = sets.filter(({ side }) => side === part.side);
  const next = own.find(({ from }) => from?.includes(own.indexOf(part)));
  if (next === undefined) return [];
  // pipes behind collectors are counted from 1 in the order of those
  const line = lineOf(next, next.from!.indexOf(own.indexOf(part)) + 1);
  return [...(line ?? []), ...behind(sets, next)];
}
