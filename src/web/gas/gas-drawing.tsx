/** The primaries of one bank drawn, with what a hand can take hold of. */
import { useMemo } from 'react';
import type { PrimariesScene, PrimariesSet } from '../../questions/index.ts';
import { usePage } from '../state.tsx';
import { GasPaper } from './gas-paper.tsx';
import { gripsOf } from './grips.ts';
import type { HandMode } from './hand-card.tsx';
import { CornerLines, HandGrips, HandTells } from './hand-grips.tsx';
import { type PipeGroup, runsOf } from './shown.ts';
import type { Finding } from './use-finding.ts';
import { useGrips } from './use-grips.ts';
import { usePaper } from './use-paper.ts';

interface Props {
  readonly finding: Finding;
  readonly lit: number | undefined;
  readonly pulses: boolean;
  readonly onPulses: (on: boolean) => void;
  readonly mode: HandMode;
  readonly onMode: (mode: HandMode) => void;
}

export function GasDrawing({ finding, lit, pulses, onPulses, mode, onMode }: Props) {
  const { place } = usePage();
  const { scene, progress, refused, found, hand, does } = finding;
  const { set, near } = progress ?? {};
  // while there is no set: what came nearest to one
  const groups = useMemo(() => groupOf(scene, set ?? near), [scene, set, near]);
  const fit = useMemo(() => groupOf(scene, found ?? near), [scene, found, near]);
  const on = usePaper(fit, mode.on ? finding.bendsAt : undefined);
  const { frame } = on;
  const shown = mode.on && scene !== undefined ? hand : undefined;
  const grips = shown === undefined ? [] : gripsOf(shown.told, scene!, lit);
  const choose = (chosen: HandMode['chosen']): void => onMode({ ...mode, chosen });
  const hands = useGrips({
    behind: on.pointers,
    grips,
    frame,
    told: shown?.live === false ? shown.told : undefined,
    live: shown?.live === true,
    does,
    onChoose: choose,
    mend: mode.mend,
  });
  const moved = shown?.live === true ? shown.told.tight : undefined;
  return (
    <GasPaper
      title="Primaries"
      more={`${place.bank} bank`}
      on={on}
      pointers={hands.pointers}
      scene={scene}
      groups={groups}
      lit={lit === undefined ? undefined : { group: ONE, cylinder: lit }}
      told={`Primaries of the ${place.bank} bank${set === undefined ? ', none found yet' : ''}`}
      isNear={set === undefined && near !== undefined}
      refused={refused}
      pulses={pulses}
      onPulses={onPulses}
      runs={runsOf(set ?? near)}
      {...(moved === undefined ? {} : { moved })}
    >
      {shown !== undefined && scene !== undefined && (
        <>
          <CornerLines told={shown.told} chosen={mode.chosen} frame={frame} scene={scene} />
          <HandGrips
            grips={grips}
            chosen={mode.chosen}
            frame={frame}
            onChoose={choose}
            onKeyDown={hands.onKeyDown}
            onBlur={hands.onBlur}
          />
          <HandTells hand={shown} />
        </>
      )}
    </GasPaper>
  );
}

const ONE = 'bank';

const groupOf = (scene: PrimariesScene | undefined, set: PrimariesSet | undefined): readonly PipeGroup[] =>
  scene === undefined
    ? []
    : [{ name: ONE, ports: scene.ports, od: scene.od, collector: scene.collector, label: String, set }];
