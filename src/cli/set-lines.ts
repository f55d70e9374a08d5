/** A set of primaries as a terminal shows it: each pipe with its tightest place, the order round the collector. */
import { type CarPart, type PrimariesSet, type PrimaryOfSet, passedWords } from '../questions/index.ts';
import type { Speech } from '../units/show.ts';
import { placeText, sizeText } from './pipe-words.ts';
import { table } from './print.ts';

/** No shop tells pipes apart that are nearer to each other than this. */
const DRAWN = 1e-5;

const byInlet = (set: PrimariesSet): readonly PrimaryOfSet[] =>
  [...set.pipes].sort((a, b) => a.inlet - b.inlet);

/** @param stage  of the part, where the set is of one */
export function setLines(set: PrimariesSet, speech: Speech, stage: CarPart['stage'] = 'primaries'): string[] {
  const length = sizeText(speech);
  const pipes = stage === 'primaries' ? 'cylinders' : 'pipes';
  const head = { primaries: 'Cylinder', secondaries: 'Secondary', tail: 'Tail' }[stage];
  return [
    ...table([
      [head, 'inlet', 'length', 'bends', 'turned', 'mass', 'tightest'],
      ...set.pipes.map((pipe) => [
        String(pipe.cylinder),
        String(pipe.inlet),
        length(pipe.length),
        String(pipe.bends),
        `${((pipe.turned * 180) / Math.PI).toFixed(0)}°`,
        `${pipe.mass.toFixed(2)} kg`,
        pipe.tightest === undefined
          ? 'nothing near'
          : `${length(pipe.tightest.gap)} to ${pipe.tightest.against}, at ${placeText(pipe.tightest.at, speech)}`,
      ]),
    ]),
    '',
    ...(stage === 'tail' ? [] : orderLines(set, pipes)),
    ...(set.passed === 0 ? [] : [passedWords(set.passed)]),
    `All together ${set.mass.toFixed(2)} kg without flanges and welds; as drawn they are equal within ${length(Math.max(set.apart, DRAWN), 2)}; asked for: ${length(set.target)} ± ${length(set.within)}.`,
    ...(set.spare === undefined ? [] : [`Least room beyond what was asked: ${length(set.spare)}.`]),
    'Places are on the middle of the pipe, in the axes of the car: forward, left, up.',
  ];
}

const orderLines = (set: PrimariesSet, pipes: string): string[] => [
  `${set.collector.inRows ? 'In the rows of' : 'Round'} the collector, inlet 1 on: ${pipes} ${byInlet(set)
    .map(({ cylinder }) => cylinder)
    .join(', ')}.`,
  `In firing order the inlets are met ${set.order.map(({ inlet }) => inlet).join(', ')} (${pipes} ${set.order
    .map(({ cylinder }) => cylinder)
    .join(', ')}).`,
];
