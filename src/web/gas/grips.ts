/** What a hand can take hold of on the drawing, and what it asks for when it moves that by so much. */
import { add, cross, dot, length, scale, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import type { HandAsk, HandTold, PrimariesScene } from '../../questions/index.ts';
import { type Frame, projected, type Spot } from '../scene/look.ts';

export type Grip =
  | {
      readonly what: 'bend';
      readonly cylinder: number;
      /** As it is called: `Cylinder 3`. */
      readonly pipe: string;
      readonly bend: number;
      /** How many the pipe has. */
      readonly of: number;
      readonly at: Vec3;
      /** Along which alone it goes. */
      readonly line?: Vec3;
      readonly kept: boolean;
    }
  | { readonly what: 'collector' | 'lean'; readonly at: Vec3; readonly kept: boolean };

export const gripName = (grip: Grip): string => {
  if (grip.what === 'bend') return `${grip.pipe}, bend ${grip.bend}`;
  return grip.what === 'collector' ? 'Collector' : 'Lean of the collector';
};

/** The grips of the pipe that is looked at, or of all; of the collector where it has room. */
export function gripsOf(
  told: HandTold,
  scene: Pick<PrimariesScene, 'collector'>,
  lit: number | undefined,
  called: (words: string) => string = (words) => words,
): readonly Grip[] {
  const of = (cylinder: number): number => told.bends.filter((each) => each.cylinder === cylinder).length;
  const bends = told.bends
    .filter(({ cylinder }) => lit === undefined || cylinder === lit)
    .map((bend): Grip => {
      const kept = bend.kept || told.keptPipes.includes(bend.cylinder);
      return {
        what: 'bend',
        ...bend,
        pipe: called(`Cylinder ${bend.cylinder}`),
        of: of(bend.cylinder),
        kept,
      };
    });
  const { free, kept } = told.collector;
  if (!free || lit !== undefined) return bends;
  const { mouth, axis } = told.set.collector;
  return [
    ...bends,
    { what: 'collector', at: mouth, kept },
    { what: 'lean', at: add(mouth, scale(axis, scene.collector.length)), kept },
  ];
}

export const sameGrip = (a: Grip | undefined, b: Grip): boolean =>
  a !== undefined && gripName(a) === gripName(b);

const NOT_MOVED = { what: 'collector', shift: [0, 0, 0], turn: [0, 0, 0], clock: 0 } as const;

/** A grip moved from where it was at rest. */
export function askOf(grip: Grip, by: Vec3, told: HandTold): HandAsk {
  if (grip.what === 'bend') {
    const { cylinder, bend, line } = grip;
    const way = line === undefined ? by : scale(line, dot(by, line));
    return { what: 'bend', cylinder, bend, to: add(grip.at, way) };
  }
  if (grip.what === 'collector') return { ...NOT_MOVED, shift: by };
  const { mouth, axis } = told.set.collector;
  const to = unit(sub(add(grip.at, by), mouth));
  const about = cross(axis, to);
  const angle = Math.atan2(length(about), dot(axis, to));
  return { ...NOT_MOVED, turn: angle < 1e-9 ? [0, 0, 0] : scale(unit(about), angle) };
}

/** About an axis of the car through its mouth. */
export const turned = (turn: Vec3): HandAsk => ({ ...NOT_MOVED, turn });

export const clocked = (by: number): HandAsk => ({ ...NOT_MOVED, clock: by });

/** Where a line stands so steeply to the paper that a pull along it says nothing. */
const STEEP = 0.2;

/** A way on the paper as a way in the car: in the plane of the paper, or along the line of the grip. */
export function wayOf(grip: Grip, by: Spot, frame: Frame): Vec3 {
  const flat = add(scale(frame.right, by.x / frame.scale), scale(frame.up, -by.y / frame.scale));
  const line = grip.what === 'bend' ? grip.line : undefined;
  if (line === undefined) return flat;
  const [x, y] = [dot(line, frame.right), dot(line, frame.up)];
  const seen = x * x + y * y;
  return seen < STEEP * STEEP ? [0, 0, 0] : scale(line, dot(flat, line) / seen);
}

/** The grip under a spot: the nearest within reach, px. */
export function gripAt(grips: readonly Grip[], frame: Frame, spot: Spot, reach: number): Grip | undefined {
  const far = ({ at }: Grip): number => {
    const { x, y } = projected(frame, at);
    return Math.hypot(x - spot.x, y - spot.y);
  };
  const nearest = grips.reduce<Grip | undefined>(
    (best, grip) => (best === undefined || far(grip) < far(best) ? grip : best),
    undefined,
  );
  return nearest !== undefined && far(nearest) <= reach ? nearest : undefined;
}
