/** Where a collector is cut square for its outlet: the outermost skin of each tube has come in to the outlet there. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { outletCut } from '../../src/questions/primaries-templates.ts';
import { near } from '../near.ts';

/** Plane geometry: the skin is a line beside the tube's axis, followed until it is half the outlet from the middle. */
test('the outermost skin is half the outlet from the axis at the square cut', () => {
  for (const lean of [4, 9, 20].map((degrees) => (degrees * Math.PI) / 180)) {
    for (const outlet of [0.06, 0.0889, 0.11]) {
      const od = 0.0476;
      const q = outletCut({ outlet, od, lean });
      // axes meet at the origin, the collector runs along x; up the tube is (−cos, sin), outwards from it (sin, cos)
      const [out, t] = [od / 2, (q + (od / 2) * Math.sin(lean)) / Math.cos(lean)];
      near(out * Math.sin(lean) - t * Math.cos(lean), -q, 1e-12);
      near(out * Math.cos(lean) + t * Math.sin(lean), outlet / 2, 1e-12);
    }
  }
  // the narrowest outlet is the tube itself, as its slanting cut is high: there the cut is where the axes meet
  assert.ok(Math.abs(outletCut({ outlet: 0.0476 / Math.cos(0.2), od: 0.0476, lean: 0.2 })) < 1e-12);
});
