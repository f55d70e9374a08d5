/**
 * Hexagons and the tools on them.
 *
 * ISO 272:1982 as a public encyclopaedia reproduces it (seen): M5 8, M6 10, M8 13, M10 16, M12 18, M16 24 mm. Hexagon
 * nuts in inches: ASME B18.2.2 (from memory): 1/4 7/16, 5/16 1/2, 3/8 9/16, 7/16 11/16, 1/2 3/4. Stroke of an open
 * spanner: J. Rose, Modern Machine-Shop Practice, figures 445 to 449 (seen): jaws at an angle of 15°, turned over, ask
 * 30° and not 60. Sockets 10 and 13 mm are 14.7 and 18.5 mm over the nut at most: ISO 2725 (from memory).
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hexagonOf, openSpannerFor, socketsFor } from '../../src/materials/spanner.ts';
import { threadNamed } from '../../src/materials/thread.ts';
import { spannerWords } from '../../src/questions/index.ts';
import { near } from '../near.ts';

test('widths across flats', () => {
  for (const [thread, flats] of [
    ['M5', 8],
    ['M6', 10],
    ['M8', 13],
    ['M8x1', 13],
    ['M10x1.25', 16],
    ['M12x1.5', 18],
    ['M16', 24],
    ['1/4-28 UNF', (25.4 * 7) / 16],
    ['5/16-24 UNF', 25.4 / 2],
    ['3/8-24 UNF', (25.4 * 9) / 16],
    ['7/16-20 UNF', (25.4 * 11) / 16],
    ['1/2-20 UNF', (25.4 * 3) / 4],
  ] as const) {
    near(hexagonOf(threadNamed(thread)!)!.flats * 1000, flats, 1e-9, thread);
  }
  assert.equal(hexagonOf(threadNamed('3/8 BSF')!), undefined);
});

test('the largest sockets: over the nut wider than its corners, the smallest drive first', () => {
  const [small] = socketsFor(0.01);
  near(small!.atNut, 0.0147, 1e-12);
  near(small!.drive, 0.0063, 1e-12);
  near(socketsFor(0.013)[0]!.atNut, 0.0185, 1e-12);
  for (let flats = 6; flats <= 19; flats += 1) {
    for (const socket of socketsFor(flats / 1000)) {
      assert.ok(socket.atNut > (flats / 1000) * (2 / Math.sqrt(3)) && socket.atDrive >= socket.atNut);
    }
  }
  // half an inch takes the row of 13 mm
  near(socketsFor(0.0127)[0]!.atNut, 0.0185, 1e-12);
  assert.deepEqual(socketsFor(0.05), []);
  near(openSpannerFor(0.013).width, 0.0343, 1e-12);
});

test('a stroke: 30° turned over, 60° without, below 30° it does not go', () => {
  const words = (degrees: number): string =>
    spannerWords(
      {
        spanner: { degrees, stoppedBy: 'pipe', length: 0.16 },
      },
      'mm-N',
    );
  assert.match(words(27), /^does not: 27°/);
  assert.match(words(30), /30° of swing.*turned over/);
  assert.doesNotMatch(words(60), /turned over/);
});
