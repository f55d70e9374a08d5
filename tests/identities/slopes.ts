/** Slopes of a rig's residuals against finite differences, at draws by chance. */
import assert from 'node:assert/strict';
import { Chance } from '../../src/gaspath/route/chance.ts';
import { turnPose } from '../../src/gaspath/route/descent.ts';
import type { RouteProblem } from '../../src/gaspath/route/problem.ts';
import { Rig } from '../../src/gaspath/route/rig.ts';
import { siteOf } from '../../src/gaspath/route/site.ts';
import { drawPipe, drawPose } from '../../src/gaspath/route/starts.ts';

const STEP = 1e-5;

/** @param look  at each draw, with the sum of squares there */
export function slopesAgree(
  problem: RouteProblem,
  draws: number,
  look: (rig: Rig, cost: number) => void,
): void {
  const rig = new Rig(siteOf(problem));
  for (let seed = 1; seed <= draws; seed++) {
    const chance = new Chance(seed);
    drawPose(rig, chance);
    problem.ports.forEach((_, i) => {
      rig.inlets[i] = i;
      rig.moves[i] = true;
      drawPipe(rig, i, 3 + (i % 3), chance);
    });
    rig.poseMoves = true;
    rig.enter();
    rig.seat();
    rig.layAll(true);
    look(rig, rig.weigh(true));
    const slope = rig.slope.slice(0, rig.numbers);
    // a hinge, a zone or a size that begins within the step bends the difference: few may
    const off = [...slope].map((s, c) => {
      const by = (costAt(rig, c, STEP) - costAt(rig, c, -STEP)) / (4 * STEP);
      return Math.abs(by - s) / (1 + Math.abs(by));
    });
    off.sort((a, b) => a - b);
    assert.ok(off[Math.floor(0.9 * off.length)]! < 1e-4, `nine in ten within 1e-4: ${off.at(-5)}`);
  }
}

function costAt(rig: Rig, column: number, h: number): number {
  const pose = [rig.origin.slice(), rig.axis.slice(), rig.ref.slice()] as const;
  const pipe = rig.column.findLastIndex((first) => first <= column);
  const own = column - rig.column[pipe]!;
  const { x, numbers } = rig.pipes[pipe]!;
  const inPose = own - numbers;
  if (inPose < 0) x[own]! += h;
  else if (inPose < 3) rig.origin[inPose]! += h;
  else turnPose(rig, inPose === 3 ? h / 100 : 0, inPose === 4 ? h / 100 : 0, inPose === 5 ? h / 100 : 0);
  rig.seat();
  rig.layAll(false);
  const value = rig.weigh(false);
  if (inPose < 0) x[own]! -= h;
  rig.setPose(...pose);
  return value;
}
