/** Wahl, Mechanical Springs, 2nd ed., 1963: the curvature factor (N: formula from memory, figures our own). */
import { test } from 'node:test';
import { stressFactor } from '../../src/loadpath/spring/coil-spring.ts';
import { near } from '../near.ts';

test('B05 (N) factor at index 4 to 12', () => {
  const table = { 4: 1.4038, 5: 1.3105, 6: 1.2525, 8: 1.184, 10: 1.1448, 12: 1.1194 };
  for (const [w, factor] of Object.entries(table)) near(stressFactor('Wahl', Number(w)), factor, 1e-4);
});
