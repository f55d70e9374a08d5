/**
 * The scan of the inside of an engine cover for a demo car: an invented cover, as a hand scanner would give it.
 *
 * Out   cars/ashgarth-501/cover.stl and what stands in car.yaml about its datum points, printed
 *
 * Axes of the scan are the scanner's own: turned and shifted from those of the car, so that the datum points are
 * needed. The surface has a scanner's roughness, and a hole where the lamp did not reach.
 *
 *   node --import tsx tools/make-cover.ts
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const OUT = fileURLToPath(new URL('../cars/ashgarth-501/cover.stl', import.meta.url));

type Point = readonly [number, number, number];

/** Half width, top and lower edge of the cover at places along the car, mm in car axes. */
const SECTIONS = [
  { x: -1340, half: 500, top: 880, low: 96 },
  { x: -1500, half: 486, top: 850, low: 96 },
  { x: -1700, half: 452, top: 790, low: 98 },
  { x: -1900, half: 414, top: 710, low: 102 },
  { x: -2100, half: 376, top: 630, low: 110 },
  { x: -2300, half: 338, top: 565, low: 124 },
  { x: -2450, half: 312, top: 525, low: 138 },
] as const;

const ALONG = 56;
const AROUND = 64;

/** A seeded generator (xorshift32), so that the file is the same whenever it is made. */
let seed = 20010401;
function chance(): number {
  seed ^= seed << 13;
  seed ^= seed >>> 17;
  seed ^= seed << 5;
  return (seed >>> 0) / 2 ** 32;
}

function section(x: number): { half: number; top: number; low: number } {
  const next = SECTIONS.findIndex((each) => each.x <= x);
  const [a, b] = next <= 0 ? [SECTIONS[0]!, SECTIONS[1]!] : [SECTIONS[next - 1]!, SECTIONS[next]!];
  const share = (x - a.x) / (b.x - a.x);
  const mix = (from: number, to: number): number => from + share * (to - from);
  return { half: mix(a.half, b.half), top: mix(a.top, b.top), low: mix(a.low, b.low) };
}

/** From the lower left edge over the top to the lower right: a superellipse with flat flanks. */
function onCover(along: number, around: number): Point {
  const x = SECTIONS[0]!.x + along * (SECTIONS.at(-1)!.x - SECTIONS[0]!.x);
  const { half, top, low } = section(x);
  const angle = Math.PI * around;
  const flat = (value: number, power: number): number => Math.sign(value) * Math.abs(value) ** power;
  const rough = (chance() - 0.5) * 0.5;
  return [
    x,
    half * flat(Math.cos(angle), 0.55) + rough,
    low + (top - low) * flat(Math.sin(angle), 0.85) + rough,
  ];
}

/** The scanner stood askew in front of the cover. */
function asScanned([x, y, z]: Point): Point {
  const turn = (12 * Math.PI) / 180;
  const [p, q] = [x + 1900, y - 30];
  return [Math.cos(turn) * p - Math.sin(turn) * q, Math.sin(turn) * p + Math.cos(turn) * q, z - 400];
}

const points = Array.from({ length: ALONG + 1 }, (_, i) =>
  Array.from({ length: AROUND + 1 }, (_, j) => asScanned(onCover(i / ALONG, j / AROUND))),
);
const triangles: Point[][] = [];
for (let i = 0; i < ALONG; i += 1) {
  for (let j = 0; j < AROUND; j += 1) {
    // where the lamp did not reach: under the top, a hand wide
    if (i > 30 && i < 34 && j > 29 && j < 33) continue;
    const [a, b, c, d] = [points[i]![j]!, points[i + 1]![j]!, points[i + 1]![j + 1]!, points[i]![j + 1]!];
    triangles.push([a, b, c], [a, c, d]);
  }
}

const bytes = new Uint8Array(84 + 50 * triangles.length);
bytes.set(new TextEncoder().encode('invented engine cover, inside, mm'));
const view = new DataView(bytes.buffer);
view.setUint32(80, triangles.length, true);
triangles.forEach((corners, n) => {
  corners.flat().forEach((value, k) => {
    view.setFloat32(84 + 50 * n + 12 + 4 * k, value, true);
  });
});
writeFileSync(OUT, bytes);

/** Marks stuck on the cover and found again on the car: read by arm to a tenth or two. */
const DATUMS: readonly (readonly [string, Point])[] = [
  ['front left fastener', [-1362, 498, 120]],
  ['front right fastener', [-1362, -498, 120]],
  ['rear left fastener', [-2431, 314, 160]],
  ['rear right fastener', [-2431, -314, 160]],
  ['spine pin', [-1350, 0, 876]],
];
const tenths = (value: number): string => (value + (chance() - 0.5) * 0.3).toFixed(1);
for (const [name, at] of DATUMS) {
  const scan = asScanned(at).map(tenths);
  process.stdout.write(
    `        - { name: ${name}, onScan: [${scan.join(', ')}], onCar: "${at.map(tenths).join(', ')} mm" }\n`,
  );
}
process.stdout.write(`${triangles.length} triangles\n`);
