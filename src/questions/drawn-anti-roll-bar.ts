/** Anti-roll bars as lines in space: arm, bar, arm, with the drop links to the rockers. */
import type { Car } from '../car/read.ts';
import { drawnBar } from '../loadpath/axle-of-car.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Drawing } from './drawing-types.ts';
import type { Stance } from './figure.ts';
import { isRefusal } from './refusal.ts';

export function antiRollBarLines(car: Car, stance: Stance): Drawing['antiRollBars'] {
  return (['front', 'rear'] as const).flatMap((end) => {
    try {
      const rack = end === 'front' ? stance.rack : 0;
      const lines = drawnBar(car.form[end], { ...stance[end], rack }, new Numbers(car.values));
      return lines.map(({ line, diameter }) => ({ end, line, diameter }));
    } catch (reason) {
      // out of reach: the bar is left out of the drawing, the corner says why
      if (isRefusal(reason)) return [];
      throw reason;
    }
  });
}
