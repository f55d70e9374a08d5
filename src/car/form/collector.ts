/** A collector as it is given: its inlets on a ring or in rows, where it stands, how far it may be moved. */
import { z } from 'zod';
import { choice, point } from '../field.ts';
import { count, degrees, length, millimetres } from './pipe-amounts.ts';

const rows = z.strictObject({
  counts: z
    .array(count('inlets in a row', 1, 6))
    .min(1)
    .max(4)
    .meta({ title: 'inlets in each row, row by row; the first begins at the clock angle' }),
  pitch: length('middle of an inlet to that of its neighbour, along a row and across', 'Vernier.', 15, 120),
});

export const collectorKeys = {
  rows: rows.meta({ title: 'inlets in rows instead of on a ring; any order is then taken' }).optional(),
  ring: length(
    'radius of the circle on which the middles of the inlets stand',
    'Vernier over two opposite inlets, less a diameter, halved.',
    10,
    200,
  ).optional(),
  mouth: point(
    'middle of the ring of inlets',
    'Where the collector is to stand; the middle of its space if it is free.',
  ),
  downstream: point('a second point on the axis of the collector, downstream', 'Towards the tail pipe.'),
  length: length(
    'length of the collector body, that pipes must stay clear of',
    'Rule.',
    20,
    800,
    'steel rule',
  ).optional(),
  lean: degrees(
    'lean of each tube of the collector to its axis, where it is cut from tube',
    'Decided; steeper is shorter and turns the gas more.',
    2,
    45,
  ).optional(),
  outlet: length(
    'outer diameter where the collector is cut square for its outlet',
    'Vernier.',
    20,
    250,
  ).optional(),
  joins: choice('how a primary is held in its inlet; left out, welded', ['welded', 'slip']).optional(),
  engaged: length(
    'how far a pipe stands in its slip joint, cold',
    'Mark the pipe at the mouth, draw it, vernier.',
    5,
    120,
  ).optional(),
  clock: degrees(
    'turn of the first inlet about the axis, from straight up, right-handed downstream',
    'Decided; left out, free.',
    -360,
    360,
  ).optional(),
  free: z
    .strictObject({
      along: millimetres('how far its mouth may move along the car, either way', 'Decided.', 0, 600),
      across: millimetres('how far across the car, either way', 'Decided.', 0, 300),
      up: millimetres('how far up and down, either way', 'Decided.', 0, 300),
      tilt: degrees('how far its axis may tilt from that given', 'Decided.', 0, 60),
    })
    .optional(),
} as const;

export const collector = z.strictObject(collectorKeys);
