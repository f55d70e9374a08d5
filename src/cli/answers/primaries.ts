/** Forms of the answers about a bank's primaries: found, cut, drawn. SI; places in the axes of the car. */
import { z } from 'zod';
import { EASED, HOLDABLE } from '../../questions/index.ts';
import { about, number, remarks } from './form.ts';

const bank = z.enum(['left', 'right']);
const part = z.string().optional().meta({ description: 'of the bank, where it has several' });
const cylinder = z.int();
const place = z.array(z.number()).length(3).meta({ description: 'm: forward, left, up' });
const metres = z.number().meta({ description: 'm' });
const radians = z.number().meta({ description: 'rad' });

const found = z.strictObject({
  target: metres,
  within: metres,
  apart: z.number().meta({ description: 'm, longest less shortest' }),
  mass: z.number().meta({ description: 'kg' }),
  spare: number('m, least room beyond what was asked; null where nothing is near'),
  collector: z.strictObject({ mouth: place, axis: z.array(z.number()).length(3) }),
  passed: z.int().meta({ description: 'inlets passed over in a round of the firing order; 0 in rotation' }),
  order: z
    .array(z.strictObject({ cylinder, inlet: z.int() }))
    .meta({ description: 'in firing order; inlets counted from 1 round the ring' }),
  pipes: z.array(
    z.strictObject({
      cylinder,
      inlet: z.int(),
      length: metres,
      bends: z.int(),
      turned: z.number().meta({ description: 'rad, all bends together' }),
      mass: z.number().meta({ description: 'kg' }),
      tightest: z
        .strictObject({
          against: z.string(),
          gap: z.number().meta({ description: 'm, metal to metal, cold' }),
          spare: metres,
          at: place,
        })
        .nullable(),
    }),
  ),
});

const hotForm = z.strictObject({
  pipe: z.number().meta({ description: 'K, mean of its metal' }),
  cold: z.number().meta({ description: 'K' }),
  expansion: z.number().meta({ description: '1/K' }),
  held: z.enum(['by its pipes', 'to the engine']),
  joins: z.enum(['welded', 'slip']),
  holds: z.boolean().meta({ description: 'all that is asked hot is kept' }),
  collector: z.strictObject({ moves: metres, turns: radians }),
  pipes: z.array(
    z.strictObject({
      cylinder,
      grows: metres,
      force: z.number().meta({ description: 'N, on its studs' }),
      moment: z.number().meta({ description: 'N m, on its studs' }),
      strain: z.number().meta({ description: 'greatest of its wall, elastic' }),
      slides: number('m, towards the collector in its slip joint; null where it is welded'),
    }),
  ),
  gaps: z
    .array(
      z.strictObject({
        cylinder,
        against: z.string(),
        asked: metres,
        cold: number('m; null where it is out of sight'),
        hot: number('m; null where it is out of sight'),
      }),
    )
    .meta({ description: 'least to spare hot first' }),
});

const holdsForm = z
  .array(
    z.strictObject({
      kind: z.enum(HOLDABLE),
      asked: z.boolean().meta({ description: 'the finder was asked to hold it' }),
      holds: z.boolean().meta({ description: 'it is so, by looking at the set' }),
      words: z.string(),
    }),
  )
  .optional()
  .meta({ description: 'what the set holds in the car' });

const inCar = z.strictObject({
  hot: hotForm,
  nuts: z
    .array(
      z.strictObject({
        cylinder,
        stud: z.int(),
        where: z.string().meta({ description: 'seen from the tube' }),
        socket: z.strictObject({
          goes: z.boolean(),
          bar: number('m, extension bar behind it; null where it does not go on'),
          stoppedBy: z.string().nullable(),
        }),
        spanner: z.strictObject({
          swing: radians,
          length: metres,
          stoppedBy: z.string().nullable(),
        }),
        ring: z.strictObject({
          swing: radians,
          length: metres,
          stoppedBy: z.string().nullable(),
        }),
      }),
    )
    .nullable()
    .meta({ description: 'null where the car file tells no studs' }),
  removal: z
    .strictObject({
      off: z
        .array(
          z.strictObject({
            part: z.string(),
            tried: z.int(),
            legs: z.array(
              z.union([
                z.strictObject({
                  kind: z.literal('turn'),
                  axis: z.array(z.number()).length(3),
                  angle: radians,
                }),
                z.strictObject({
                  kind: z.enum(['draw', 'shift', 'out']),
                  way: z.array(z.number()).length(3),
                  length: metres,
                }),
              ]),
            ),
          }),
        )
        .meta({ description: 'in the order in which they come off' }),
      held: z
        .array(z.strictObject({ part: z.string(), tried: z.int(), stoppedBy: z.array(z.string()) }))
        .meta({ description: 'no way was found among those tried' }),
      binds: z.array(z.strictObject({ cylinder, off: metres, gives: metres })),
    })
    .nullable()
    .meta({ description: 'null where the car file tells no studs' }),
});

export const primariesForm = z.strictObject({
  ...about('primaries'),
  bank: z.enum(['left', 'right', 'both']),
  seed: z.int(),
  reached: z.boolean(),
  stands: z.enum(['impossible', 'searching', 'improving', 'stuck', 'done']),
  causes: z.array(z.string()).meta({ description: 'why it cannot be' }),
  nearest: z.string().optional(),
  set: found.optional(),
  sets: z
    .array(
      z.strictObject({
        spare: metres.optional().meta({ description: 'm, least room beyond what was asked' }),
        passed: z.int().meta({ description: 'inlets passed over in a round of the firing order' }),
        bends: z.int(),
        turned: radians,
        welds: z.int().meta({ description: 'along the pipes, flanges and collector with them' }),
        mass: z.number().meta({ description: 'kg' }),
        beaten: z
          .boolean()
          .meta({ description: 'another is at least as good in all of these and better in one' }),
      }),
    )
    .optional()
    .meta({ description: 'where several were asked for: what there is to choose from, best first' }),
  wouldDo: z
    .array(
      z.strictObject({
        what: z.enum(EASED).meta({ description: 'the one thing that is changed' }),
        by: z
          .number()
          .optional()
          .meta({ description: 'm, or a number of bends; left out where nothing did' }),
        words: z.string(),
      }),
    )
    .optional()
    .meta({ description: 'where nothing was found: the least changes with which a set was' }),
  byHand: z
    .strictObject({
      done: z.array(z.string()),
      refused: z.string().optional().meta({ description: 'what cannot be; the set is as it was before it' }),
      keptPipes: z.array(cylinder),
      keptCollector: z.boolean(),
      bends: z.array(
        z.strictObject({
          cylinder,
          bend: z.int().meta({ description: 'from the flange, from 1' }),
          at: place,
          kept: z.boolean(),
        }),
      ),
    })
    .optional(),
  wouldDoOf: z
    .strictObject({ bank, part })
    .optional()
    .meta({ description: 'with several parts: the one that would fit so, the others where they lie' }),
  holds: holdsForm,
  inCar: inCar.optional(),
  parts: z
    .array(
      z.strictObject({
        bank,
        part,
        stage: z.enum(['primaries', 'secondaries', 'tail']),
        cylinders: z.array(cylinder).meta({
          description: 'whose gas goes through it; secondaries are counted from 1 as cylinder below',
        }),
        set: found,
        holds: holdsForm,
        inCar: inCar.optional().meta({ description: 'of primaries' }),
        hot: hotForm
          .optional()
          .meta({ description: 'of secondaries and tail: at its beginning instead of its studs' }),
      }),
    )
    .optional()
    .meta({ description: 'of both banks, or of a bank with several collectors: a set of each part' }),
  mirrored: z
    .strictObject({
      from: bank,
      misfits: z.array(z.strictObject({ cylinder, off: metres, leans: radians })),
      inTheWay: z.array(z.string()).meta({ description: 'none where the image suits its side' }),
    })
    .optional()
    .meta({ description: 'where the one bank is to be the mirror image of the other' }),
  ...remarks,
});

export const cutsForm = z.strictObject({
  ...about('cuts'),
  bank,
  part,
  racked: z.boolean().meta({ description: 'the car file tells what lies on the shelf' }),
  pieces: z.array(
    z.strictObject({
      pipe: z.string(),
      place: z.int().meta({ description: 'along the flow, from 1' }),
      kind: z.enum(['bend', 'straight', 'reducer']),
      od: metres,
      length: metres,
      lap: number('m of a straight that lie over the tube before it, or within it').optional(),
      radius: metres.optional(),
      angle: radians.optional(),
      outside: metres.optional(),
      inside: metres.optional(),
      clock: number('rad, from the bend before, clockwise seen with the flow; null at the first').optional(),
      legs: z.array(metres).optional(),
      filler: z.boolean().optional(),
      stock: z.string().optional(),
      number: z.int().optional(),
      from: z.number().optional().meta({ description: 'rad of a stock bend, m of a tube' }),
      to: z.number().optional().meta({ description: 'rad of a stock bend, m of a tube' }),
    }),
  ),
  stock: z.array(
    z.strictObject({
      name: z.string(),
      count: z.int(),
      price: number("of one, in the shop's money"),
    }),
  ),
  cost: z.number().meta({ description: "of the stock, in the shop's money" }),
  welds: z.array(
    z.strictObject({
      pipe: z.string(),
      what: z.enum(['flange', 'piece to piece', 'step', 'collector']),
      from: z.number().meta({ description: 'm, from the flange along the middle' }),
      at: place,
    }),
  ),
  bends: z.array(
    z.strictObject({
      pipe: z.string(),
      bend: z.int(),
      od: metres,
      feed: metres,
      rotation: z.number().meta({ description: 'rad, clockwise seen with the flow' }),
      angle: radians,
      radius: metres,
      wallOutside: metres,
    }),
  ),
  runOuts: z.array(z.strictObject({ pipe: z.string(), od: metres, length: metres })),
  jig: z.strictObject({
    told: z.string().meta({ description: 'how the axes of the jig lie' }),
    points: z.array(
      z.strictObject({
        pipe: z.string(),
        what: z.string(),
        at: z.array(z.number()).length(3).meta({ description: 'm, in the axes of the jig' }),
      }),
    ),
  }),
  problems: z.array(z.string()).meta({ description: 'what cannot be made so' }),
  ...remarks,
});

export const wrapsForm = z.strictObject({
  ...about('wraps'),
  bank,
  part,
  files: z.array(z.string()),
  templates: z.array(z.string()),
  ...remarks,
});

export const solidsForm = z.strictObject({
  ...about('solids'),
  bank,
  part,
  file: z.string(),
  bytes: z.int(),
  pipes: z.array(z.strictObject({ cylinder, length: metres })),
  cautions: remarks.cautions,
});

export const asBuiltForm = z.strictObject({
  ...about('as-built'),
  bank,
  part,
  pipes: z.array(
    z.strictObject({
      pipe: z.string(),
      drawn: metres,
      made: metres,
      u: z.number().meta({ description: 'm, one standard uncertainty' }),
      difference: z.number().meta({ description: 'm, longer is positive' }),
    }),
  ),
  within: z.number().meta({ description: 'm, longest less shortest' }),
  u: z.number().meta({ description: 'm, of that' }),
  told: z.boolean().meta({ description: 'the readings can tell the set from one of equal pipes' }),
  crank: radians.optional(),
  ...remarks,
});
