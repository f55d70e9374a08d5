/** A set in its car as JSON. */
import type { PrimariesHot, PrimariesInCar } from '../questions/index.ts';

/** As the published form has it: lengths that the tools and ways tell in millimetres are metres here. */
export const inCarOut = ({ hot, nuts, removal }: PrimariesInCar) => ({
  hot: hotOut(hot),
  nuts: nuts.reached
    ? nuts.nuts.map(({ cylinder, stud, where, socket, spanner, ring }) => ({
        cylinder,
        stud,
        where,
        socket: {
          goes: socket.goes,
          bar: socket.bar === undefined ? null : socket.bar / 1000,
          stoppedBy: socket.stoppedBy ?? null,
        },
        spanner: {
          swing: (spanner.degrees * Math.PI) / 180,
          length: spanner.length,
          stoppedBy: spanner.stoppedBy ?? null,
        },
        ring: {
          swing: (ring.degrees * Math.PI) / 180,
          length: ring.length,
          stoppedBy: ring.stoppedBy ?? null,
        },
      }))
    : null,
  removal: removal.reached
    ? {
        off: removal.off.map(({ part, way }) => ({
          part,
          tried: way.tried,
          legs: way.legs.map((leg) =>
            leg.kind === 'turn'
              ? { kind: leg.kind, axis: [...leg.axis], angle: (leg.degrees * Math.PI) / 180 }
              : { kind: leg.kind, way: [...leg.way], length: leg.mm / 1000 },
          ),
        })),
        held: removal.held.map(({ part, way }) => ({
          part,
          tried: way?.tried ?? 0,
          stoppedBy: way === undefined ? [] : way.stops.map(({ name }) => name),
        })),
        binds: removal.binds,
      }
    : null,
});

export const hotOut = (hot: PrimariesHot) => ({
  pipe: hot.pipe,
  cold: hot.cold,
  expansion: hot.expansion,
  held: hot.held,
  joins: hot.joins,
  holds: hot.holds,
  collector: hot.collector,
  pipes: hot.pipes.map(({ strainAt, slides, ...each }) => ({ ...each, slides: slides ?? null })),
  gaps: hot.gaps.map(({ cylinder, against, asked, cold, hot: gap }) => ({
    cylinder,
    against,
    asked,
    cold: cold ?? null,
    hot: gap ?? null,
  })),
});
