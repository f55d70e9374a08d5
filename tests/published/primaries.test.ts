import { test } from 'node:test';
import { PipeShape } from '../../src/gaspath/route/shape.ts';
import { walk } from '../../src/gaspath/verify/walk.ts';
import type { Vec3 } from '../../src/maths/vec3.ts';
import { cross, dot } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';

const straight = (length: number) =>
  ({ kind: 'straight', length, radius: 0, angle: 0, normal: [0, 0, 0] }) as const;
const bend = (radius: number, deg: number, normal: Vec3) =>
  ({ kind: 'bend', length: 0, radius, angle: (deg * Math.PI) / 180, normal }) as const;

function laid(
  port: Vec3,
  out: Vec3,
  inlet: Vec3,
  into: Vec3,
  radius: number,
  x: readonly number[],
): PipeShape {
  const pipe = new PipeShape();
  pipe.corners = 2 + (x.length - 2) / 3;
  pipe.port.set(port);
  pipe.out.set(out);
  pipe.inlet.set(inlet);
  pipe.into.set(into);
  pipe.radius.fill(radius);
  pipe.x.set(x);
  pipe.lay();
  return pipe;
}

test('[2] developed length of 60, 90° at R 72, 100, 45°, 80: 409.646 mm, by walking and by laying', () => {
  // along +x, then about z to +y, then about x towards +z
  const path = walk({ p: [0, 0, 0], d: [1, 0, 0] }, [
    straight(60),
    bend(72, 90, [0, 0, 1]),
    straight(100),
    bend(72, 45, [1, 0, 0]),
    straight(80),
  ]);
  near(path.length, 409.646, 5e-4);
  const t = 72 * Math.tan(Math.PI / 8);
  const pipe = laid([0, 0, 0], [1, 0, 0], path.end, path.endDirection, 72, [60 + 72, 80 + t]);
  near(pipe.length, 409.646, 5e-4);
  near(pipe.straight(1), 100, 1e-9);
  // clock angle between the two bends, about the straight between them
  near(
    (Math.atan2(dot(cross([0, 0, 1], [1, 0, 0]), [0, 1, 0]), dot([0, 0, 1], [1, 0, 0])) * 180) / Math.PI,
    90,
    1e-12,
  );
});

test('[2] a fillet of R 72 at 60°: tangent 41.5692 mm, 7.7402 mm saved against the corner', () => {
  const c = Math.cos(Math.PI / 3);
  const s = Math.sin(Math.PI / 3);
  // two bends of 60° that undo each other
  const pipe = laid([0, 0, 0], [1, 0, 0], [200 + 200 * c + 200, 200 * s, 0], [1, 0, 0], 72, [200, 200]);
  near(pipe.tangent[1]!, 41.5692, 5e-5);
  near(600 - pipe.length, 2 * 7.7402, 1e-4);
});

test('a straight pipe is as long as its ends are apart, and bends that do not turn take nothing', () => {
  const pipe = laid([0, 0, 0], [0, 1, 0], [0, 500, 0], [0, 1, 0], 60, [150, 200]);
  near(pipe.length, 500, 1e-12);
  near(pipe.angle[1]!, 0, 1e-9);
});

test('[1] an S of two arcs and the straight between: its length by the closed form', () => {
  // offset h over a way a, both ends along x: the straight leans by theta with a = 2 R sin + s cos, h = 2 R (1 - cos) + s sin
  const R = 70;
  const theta = 0.6;
  const s = 90;
  const a = 2 * R * Math.sin(theta) + s * Math.cos(theta);
  const h = 2 * R * (1 - Math.cos(theta)) + s * Math.sin(theta);
  const t = R * Math.tan(theta / 2);
  const pipe = laid([0, 0, 0], [1, 0, 0], [a + 60, h, 0], [1, 0, 0], R, [30 + t, 30 + t]);
  near(pipe.length, 60 + 2 * R * theta + s, 1e-9);
  near(pipe.straight(1), s, 1e-9);
});
