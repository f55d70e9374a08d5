/** The pads themselves: what each is worth under a known mass, and how high each stands by a water level. */
import { type Measured, padChecked, padHeights } from '../flatfloor/weighing.ts';
import { JACKING_CAUTION, STANDING_CAUTION } from './cautions.ts';
import type { Wheel } from './figure.ts';
import { type GaugedAnswer, type GaugedFigure, gauged, gaugedRefused } from './gauged.ts';

const wordsOf = ({ end, side }: Wheel): string => `${end} ${side}`;

export interface ScalesAsked {
  readonly known: Measured;
  readonly pads: readonly {
    readonly wheel: Wheel;
    /** With the known mass on it. */
    readonly shown: Measured;
    /** With nothing on it; left out, nought. */
    readonly empty?: Measured;
    /** What it showed under the car's wheel: told as it is by the known mass. */
    readonly car?: Measured;
  }[];
}

/** A known mass less than this part of a reading tells little of it: common practice, no source. */
const SMALL = 0.25;

export function scalesChecked({ known, pads }: ScalesAsked): GaugedAnswer {
  if (!(known.value > 0)) return gaugedRefused('The known mass is above nothing.');
  const nothing = pads.find(({ shown, empty }) => !(shown.value - (empty?.value ?? 0) > 0));
  if (nothing !== undefined) {
    return gaugedRefused(
      `The ${wordsOf(nothing.wheel)} pad shows nothing or less under the known mass: is it switched on, plugged in, free underneath?`,
    );
  }
  const off: string[] = [];
  const small: string[] = [];
  const figures = pads.flatMap(({ wheel, shown, empty, car }): GaugedFigure[] => {
    const net: Measured =
      empty === undefined ? shown : { value: shown.value - empty.value, u: Math.hypot(shown.u, empty.u) };
    const { factor, agrees } = padChecked(net, known);
    const of = wordsOf(wheel);
    if (!agrees) off.push(of);
    const own = [
      gauged(of, '1', 'factor', 'shown over true', factor),
      gauged(of, 'kg', 'error', 'shows too much by, under the known mass', {
        value: net.value - known.value,
        u: Math.hypot(net.u, known.u),
      }),
    ];
    if (car === undefined) return own;
    if (known.value < SMALL * car.value) small.push(of);
    const loaded = car.value - (empty?.value ?? 0);
    const part = (each: Measured): number => each.u / each.value;
    return [
      ...own,
      gauged(of, 'kg', 'weight', 'weight of the wheel, put right', {
        value: loaded / factor.value,
        u: (loaded / factor.value) * Math.hypot(car.u / loaded, part(factor)),
      }),
    ];
  });
  return {
    reached: true,
    figures,
    notes: [
      ...(off.length > 0
        ? [
            `Further off than two spreads: ${off.join(', ')}. Level it, free what touches it, warm it up and try again; then put its readings right or have it set.`,
          ]
        : ['All pads agree with the known mass within two spreads.']),
      ...(small.length > 0
        ? [
            `The known mass is less than a quarter of what ${small.join(', ')} carries: the error found is stretched so far. Take a heavier mass, or put one pad after another under the same wheel.`,
          ]
        : []),
      'A pad reads true where it is level, free underneath, warmed up, and the load is in its middle.',
    ],
    cautions: [STANDING_CAUTION],
  };
}

export interface LevelsAsked {
  /** From the water’s surface down to each pad. */
  readonly pads: readonly { readonly wheel: Wheel; readonly down: Measured }[];
  /** As the car file has them. */
  readonly filed?: Readonly<Partial<Record<string, number>>>;
}

export function levelsOfPads({ pads, filed }: LevelsAsked): GaugedAnswer {
  if (pads.length < 2) return gaugedRefused('It takes two pads at least.');
  const heights = padHeights(pads.map(({ down }) => down));
  const highest = heights.reduce((best, each, k) => (each.value > heights[best]!.value ? k : best), 0);
  const figures = pads.flatMap(({ wheel, down }, k): GaugedFigure[] => {
    const of = wordsOf(wheel);
    const top = pads[highest]!;
    return [
      gauged(of, 'm', 'height', `over the ${wordsOf(pads[0]!.wheel)} pad`, heights[k]!),
      gauged(of, 'm', 'packing', 'packing that brings it level with the highest', {
        value: down.value - top.down.value,
        u: k === highest ? 0 : Math.hypot(down.u, top.down.u),
      }),
    ];
  });
  const at = (end: Wheel['end'], side: Wheel['side']): number | undefined => {
    const k = pads.findIndex(({ wheel }) => wheel.end === end && wheel.side === side);
    return k < 0 ? undefined : heights[k]!.value;
  };
  const [fl, fr, rl, rr] = [
    at('front', 'left'),
    at('front', 'right'),
    at('rear', 'left'),
    at('rear', 'right'),
  ];
  if (fl !== undefined && fr !== undefined && rl !== undefined && rr !== undefined) {
    const u = Math.hypot(...pads.map(({ down }) => down.u));
    figures.push(
      gauged('all pads', 'm', 'warp', 'right front and left rear over the other two, half', {
        value: (fr + rl - fl - rr) / 2,
        u: u / 2,
      }),
    );
  }
  const apart = pads.some(({ wheel }, k) => {
    const there = filed?.[keyOf(wheel)];
    const first = filed?.[keyOf(pads[0]!.wheel)];
    return (
      there !== undefined &&
      first !== undefined &&
      Math.abs(there - first - heights[k]!.value) > 2 * heights[k]!.u + 1e-6
    );
  });
  return {
    reached: true,
    figures,
    notes: [
      ...(apart
        ? [
            'The car file has other heights of the pads, under floor, patch: set-ups are solved with those. Write these there, or pack the pads.',
          ]
        : []),
      'A pad that stands high under one corner is wedge: it moves weight across the car as if that spring were wound up. A tilt of the whole plane does little.',
      'Both ends of the hose at one temperature, no bubble in it, wait until the water stands; read all pads without moving the can.',
    ],
    cautions: [JACKING_CAUTION, STANDING_CAUTION],
  };
}

const keyOf = ({ end, side }: Wheel): string => `${end}${side === 'left' ? 'Left' : 'Right'}`;
