/**
 * What strings, plates and scales give to a sheet that is read on the pads: toe of each wheel, as an angle and over
 * the rim of the file, and weights put right.
 */
import type { Car } from '../car/read.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { WHEELS } from './drawing.ts';
import type { Wheel } from './figure.ts';
import type { GaugedAnswer, GaugedFigure } from './gauged.ts';

export interface ForSheet {
  /** As readings of a sheet are named: `toeAtRim.frontLeft`. */
  readonly id: string;
  /** SI. */
  readonly value: number;
  readonly u: number;
  readonly from: 'strings' | 'plates' | 'scales';
}

const keyOf = ({ end, side }: Wheel): string => `${end}${side === 'left' ? 'Left' : 'Right'}`;

/** Plates tell the toe of both wheels together: half of it is put to each, where strings do not tell it. */
export function forSheet(car: Car, answer: GaugedAnswer): readonly ForSheet[] {
  if (!answer.reached) return [];
  const numbers = new Numbers(car.values);
  const find = (of: string, id: string): GaugedFigure | undefined =>
    answer.figures.find((each) => each.of === of && each.id === id);
  return WHEELS.flatMap((wheel): ForSheet[] => {
    const { end, side } = wheel;
    const weight = find(`${end} ${side}`, 'weight');
    const strings = find(`${end} ${side}`, 'toe');
    const toe = strings ?? find(`${end} plates`, 'toe');
    const key = keyOf(wheel);
    const from = strings === undefined ? 'plates' : 'strings';
    const across = numbers.of(car.form[end][side].wheel.rimDiameter);
    return [
      ...(weight === undefined
        ? []
        : [{ id: `weight.${key}`, value: weight.value, u: weight.u, from: 'scales' as const }]),
      ...(toe === undefined
        ? []
        : [
            { id: `toe.${key}`, value: toe.value, u: toe.u, from } as const,
            {
              id: `toeAtRim.${key}`,
              value: across * Math.sin(toe.value),
              u: across * Math.cos(toe.value) * toe.u,
              from,
            } as const,
          ]),
    ];
  });
}
