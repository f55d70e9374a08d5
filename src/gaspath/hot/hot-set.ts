/**
 * A bank's primaries when hot: each a heated line from its flange to the collector that joins them.
 *
 * In    the pipes, their heat, how they sit in the collector and what holds that
 * Out   where each line lies hot, force and strain of each, how the collector moves, how far each slip joint travels
 * Axes  of the engine, which is taken for cold: ports of the head stay where they are
 *
 * Pipes that begin at other collectors, secondaries and tails, begin where those have moved to: each is carried along as
 * a rigid body by its start, and grows and bends from there.
 *
 * Held by its pipes the collector stands where their forces balance; held to the engine it stays and the pipes bow.
 */
import { Matrix, solve } from 'ml-matrix';
import { add, cross, dot, length, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Metre, Newton, NewtonMetre, Pascal, Radian } from '../../units/quantity.ts';
import type { Heat } from '../pipework/growth.ts';
import type { Pipe } from '../pipework/pipe.ts';
import { HeatedLine, type Motion, type MovedPoint, type Strained, type Wrench } from './heated-line.ts';

export interface HotAsked {
  readonly pipes: readonly Pipe[];
  readonly heat: Heat;
  /** Young's modulus when hot. */
  readonly modulus: Pascal;
  readonly collector: { readonly mouth: Vec3; readonly axis: Vec3 };
  /** A slip joint lets a pipe slide and turn along the collector's axis. */
  readonly joins: 'welded' | 'slip';
  readonly held: 'by its pipes' | 'to the engine';
  /** How the start of each pipe moves, in their order; not at all, where it is left out. */
  readonly starts?: readonly StartMoves[] | undefined;
}

export interface StartMoves {
  readonly shift: Vec3;
  readonly turn: Vec3;
}

export interface HotLine {
  readonly pipe: string;
  readonly points: readonly MovedPoint[];
  /** At the flange, of the pipe on its studs. */
  readonly force: Newton;
  readonly moment: NewtonMetre;
  readonly strained: Strained;
  /** Of the mouth along the collector's axis against its inlet; nought where it is welded. */
  readonly slides: Metre;
}

export interface HotSet {
  readonly lines: readonly HotLine[];
  readonly collector: { readonly shift: Vec3; readonly turn: Radian; readonly turnVector: Vec3 };
}

export function hotSet(of: HotAsked): HotSet {
  const { mouth: origin, axis } = of.collector;
  const share = of.heat.expansion * of.heat.hotter;
  const parts = of.pipes.map((pipe, n) => {
    const { shift, turn } = of.starts?.[n] ?? STAYS;
    const carried = (p: Vec3): Vec3 => add(shift, cross(turn, sub(p, pipe.start.p)));
    const line = new HeatedLine(pipe, of.heat, of.modulus);
    const hold = holdOf(line, of.joins === 'slip' ? axis : undefined);
    const arm = sub(line.mouth.p, origin);
    // the collector grows too, about the middle of its mouth
    const grown: Motion = [...scale(arm, share), 0, 0, 0];
    const begun: Motion = [...carried(line.mouth.p), ...turn];
    // [PW-38]
    const lacks = column(line.byHeat.map((value, k) => value + begun[k]! - grown[k]!));
    return { pipe, line, hold, arm, carry: carryOf(arm), lacks, grown, carried };
  });
  const q = of.held === 'to the engine' ? Matrix.zeros(6, 1) : balance(parts, of.joins, axis);
  const lines = parts.map(({ pipe, line, hold, carry, lacks, grown, carried }): HotLine => {
    const moved = carry.mmul(q);
    const wrench = hold.mmul(Matrix.sub(moved, lacks)).to1DArray() as unknown as Wrench;
    const points = line.moved(wrench).map(({ cold, shift }) => ({ cold, shift: add(shift, carried(cold)) }));
    const force: Vec3 = [wrench[0], wrench[1], wrench[2]];
    const arm = sub(line.mouth.p, pipe.start.p);
    const moment = add([wrench[3], wrench[4], wrench[5]], cross(arm, force));
    const mouthMoves = points.at(-1)!.shift;
    const inletMoves: Vec3 = [
      moved.get(0, 0) + grown[0],
      moved.get(1, 0) + grown[1],
      moved.get(2, 0) + grown[2],
    ];
    return {
      pipe: pipe.name,
      points,
      force: length(force),
      moment: length(moment),
      strained: line.strained(wrench),
      slides: of.joins === 'slip' ? dot(sub(mouthMoves, inletMoves), axis) : 0,
    };
  });
  const turnVector: Vec3 = [q.get(3, 0), q.get(4, 0), q.get(5, 0)];
  return {
    lines,
    collector: {
      shift: [q.get(0, 0), q.get(1, 0), q.get(2, 0)],
      turn: length(turnVector),
      turnVector,
    },
  };
}

const STAYS: StartMoves = { shift: [0, 0, 0], turn: [0, 0, 0] };

interface Part {
  readonly hold: Matrix;
  readonly carry: Matrix;
  readonly lacks: Matrix;
}

const column = (values: readonly number[]): Matrix => Matrix.columnVector([...values]);

/** Wrench at the mouth for each unit of motion that is forced on it.  [PW-34] */
function holdOf(line: HeatedLine, slides: Vec3 | undefined): Matrix {
  const compliance = new Matrix(line.compliance.map((row) => [...row])).transpose();
  if (slides === undefined) return solve(compliance, Matrix.eye(6));
  // what a slip joint carries: force and moment square to its axis
  const u = cross(slides, Math.abs(slides[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]);
  const one = scale(u, 1 / length(u));
  const two = cross(slides, one);
  const none = [0, 0, 0];
  const carried = new Matrix([
    [...one, ...none],
    [...two, ...none],
    [...none, ...one],
    [...none, ...two],
  ]).transpose();
  const within = carried.transpose().mmul(compliance).mmul(carried);
  return carried.mmul(solve(within, carried.transpose()));
}

/** Motion at an inlet from that of the collector, its middle moved and itself turned. */
function carryOf([x, y, z]: Vec3): Matrix {
  return new Matrix([
    [1, 0, 0, 0, z, -y],
    [0, 1, 0, -z, 0, x],
    [0, 0, 1, y, -x, 0],
    [0, 0, 0, 1, 0, 0],
    [0, 0, 0, 0, 1, 0],
    [0, 0, 0, 0, 0, 1],
  ]);
}

/** Motion of the collector at which the forces of all pipes on it balance.  [PW-35] */
function balance(parts: readonly Part[], joins: HotAsked['joins'], axis: Vec3): Matrix {
  let stiffness = Matrix.zeros(6, 6);
  let pushed = Matrix.zeros(6, 1);
  for (const { hold, carry, lacks } of parts) {
    const back = carry.transpose().mmul(hold);
    stiffness = Matrix.add(stiffness, back.mmul(carry));
    pushed = Matrix.add(pushed, back.mmul(lacks));
  }
  if (joins === 'slip') {
    // along its axis slip joints carry nothing: springs or the tail pipe keep the collector on its pipes
    const stiff = Math.max(...stiffness.diagonal().slice(0, 3));
    for (let r = 0; r < 3; r += 1)
      for (let c = 0; c < 3; c += 1)
        stiffness.set(r, c, stiffness.get(r, c) + 1e3 * stiff * axis[r]! * axis[c]!);
  }
  return solve(stiffness, pushed);
}
