/**
 * The exhaust as it is given: what the engine builder says, the tube and bends that the shop has, where the ports and
 * the collector stand, and what the pipes must stay clear of.
 *
 * Where something is measured it is a reading; what the shop decides (clearances, bends on the rack) has no spread.
 */
import { z } from 'zod';
import { choice, point, stated, words, yesNo } from '../field.ts';
import { collector, collectorKeys } from './collector.ts';
import { count, degrees, length, millimetres } from './pipe-amounts.ts';

/** From where to where the builder counts the length of a primary. */
export const LENGTH_FROM = ['valve seat', 'port face', 'flange'] as const;
export const LENGTH_TO = ['collector entry', 'merge point'] as const;

const given = z.strictObject({
  length: millimetres(
    'length of a primary, along its middle, as the engine builder gives it',
    'From his sheet; ask from where to where it counts.',
    150,
    1500,
  ),
  from: choice('where that length begins', LENGTH_FROM),
  to: choice('where that length ends', LENGTH_TO),
  within: millimetres(
    'how far a primary may be off that length',
    'Agreed with the builder; ±3 mm is usual for a race engine (common practice, no source).',
    0.1,
    25,
  ),
  portLength: length(
    'length of the port, valve seat to port face, along its middle',
    'String or cord along the middle of the port; each if they differ: write the mean.',
    20,
    250,
  ).optional(),
  flange: length('thickness of the flange on the head', 'Vernier.', 1, 30).optional(),
  mergeDepth: length(
    'collector entry to where the pipes have become one',
    'Depth gauge down the middle of the collector.',
    5,
    300,
  ).optional(),
  source: words('where the figure stands: sheet, page, day').optional(),
});

/** How a tube of one size is joined to one of the next. */
export const STEP_JOINS = ['slipped over', 'swaged', 'reducer'] as const;

const bendRadii = () =>
  z
    .array(millimetres('centreline radius of a bend on the rack', 'From the maker of the bends.', 15, 400))
    .min(1)
    .max(8);

const step = z.strictObject({
  from: millimetres(
    'where the tube before it ends, from the flange along the middle',
    "From the builder's sheet, less what lies before the flange.",
    20,
    1400,
  ),
  within: millimetres(
    'how far off that it may stand, either way; left out, 5 mm',
    'Agreed with the builder; some millimetres are usual (common practice, no source).',
    0,
    100,
  ).optional(),
  outside: length('outer diameter from there on', 'Vernier, two ways.', 15, 90),
  wall: length('its wall', 'Micrometer with a ball end.', 0.4, 4, 'micrometer'),
  join: choice('how the tubes are joined; left out, slipped over', STEP_JOINS).optional(),
  joinLength: millimetres(
    'lap, swaged end or reducer along the middle; a lap or a swaged end left out, 10 or 20 mm',
    'Lap: what the weld and a square fit ask. Reducer: rule.',
    0,
    150,
  ).optional(),
  radii: bendRadii()
    .meta({ title: 'centreline radii of the bends of this size; left out, those under bends' })
    .optional(),
});

const tube = z.strictObject({
  outside: length('outer diameter of the primary', 'Vernier, two ways.', 15, 90),
  wall: length('wall of the primary', 'Micrometer with a ball end.', 0.4, 4, 'micrometer'),
  material: words('material of the tube, by its name in the table'),
  steps: z
    .array(step)
    .min(1)
    .max(3)
    .meta({ title: 'larger tubes farther on, in the order of the flow, where the primary steps up' })
    .optional(),
});

const bends = z.strictObject({
  radii: bendRadii().meta({ title: 'centreline radii of the bends on the rack' }),
  most: count('most bends in one pipe', 1, 8).optional(),
  greatest: degrees('greatest angle of one bend', 'What a stock bend gives.', 20, 180).optional(),
  between: millimetres(
    'least straight between two bends',
    'What a weld or the bender asks.',
    0,
    200,
  ).optional(),
  atFlange: millimetres('least straight at the flange', 'Room for the nut and the weld.', 0, 200),
  atCollector: millimetres('least straight before the collector', 'The slip joint, or the weld.', 0, 200),
});

const clearances = z.strictObject({
  body: millimetres('pipe to bodywork, cold', 'Bare 25, shielded 10 (common practice, no source).', 0, 100),
  solids: millimetres('pipe to anything solid, cold', 'More by a hose or a loom than by a casting.', 0, 100),
  pipes: millimetres('pipe to pipe, cold', 'A weld bead and a finger: 4 to 8.', 0, 50),
  atCollector: millimetres('pipe to pipe where they come together', 'What the weld asks.', 0, 30).optional(),
  collectorZone: millimetres(
    'how far before the collector that holds',
    'Along the pipe.',
    10,
    400,
  ).optional(),
  flangeZone: millimetres(
    'how far from its flange a pipe need not be clear of what the flange sits on',
    'Along the pipe.',
    0,
    200,
  ).optional(),
});

const port = z.strictObject({
  at: point('middle of the port at the face of the flange', 'Four touches round the bore, or a turned plug.'),
  outward: point(
    'a second point on the axis of the port, outside the head',
    'The far end of a straight plug or tube set in the port, 80 mm out or more.',
  ),
});

const price = z.number().min(0).max(1e6).meta({ title: 'price of one, in the money of the shop' }).optional();

const rack = z.strictObject({
  bends: z
    .array(
      z.strictObject({
        name: words('what the shop calls it'),
        radius: millimetres('radius of its middle line', 'From the maker of the bends.', 15, 400),
        angle: degrees('angle of the whole bend', 'From its maker: 180, 90, 45.', 10, 360),
        leg: millimetres('straight tube at either end of the arc', 'Rule.', 0, 500).optional(),
        outside: millimetres(
          'its outer diameter; left out, that of the tube at the flange',
          'Vernier; within 0.3 mm of that of the tube.',
          15,
          90,
        ).optional(),
        price,
      }),
    )
    .max(40)
    .meta({ title: 'stock bends' }),
  tubes: z
    .array(
      z.strictObject({
        name: words('what the shop calls it'),
        length: millimetres('length of one', 'Tape.', 50, 7000),
        outside: millimetres(
          'its outer diameter; left out, that of the tube at the flange',
          'Vernier; within 0.3 mm of that of the tube.',
          15,
          90,
        ).optional(),
        price,
      }),
    )
    .max(40)
    .meta({ title: 'straight tube' }),
  kerf: millimetres('what one cut takes', 'Width of a cut in scrap: saw 1.5, thin disc 1.', 0, 6),
  leastPiece: millimetres(
    'shortest piece that can be held and cut, at its inside',
    'Width of the jaws that hold it.',
    0,
    100,
  ),
});

/** Behind several collectors: a pipe from the outlet of each into a last one. */
const secondaries = z.strictObject({
  length: millimetres(
    'length of a secondary, outlet of its collector to the entry of the last one, along its middle',
    "From the engine builder's sheet.",
    100,
    1500,
  ),
  within: millimetres(
    'how far a secondary may be off that length',
    'Agreed with the builder; ±3 mm is usual for a race engine (common practice, no source).',
    0.1,
    25,
  ),
  tube: tube.omit({ steps: true }),
  bends,
  collector,
  rack: rack.optional(),
});

const tail = z.strictObject({
  length: millimetres(
    'length of the tail pipe, outlet of the last collector to its end, along its middle',
    "From the engine builder's sheet, or by a wire laid through the way.",
    100,
    3000,
  ),
  within: millimetres('how far it may be off that length', 'Agreed with the builder.', 0.1, 400),
  tube: tube.omit({ steps: true }),
  bends,
  end: point('middle of its end, in the open', 'Touch the cut-out of the body, or where the old one ended.'),
  beyond: point('a second point on its axis, behind the end', 'The way in which it blows.'),
  rack: rack.optional(),
});

const cylinder = count('number of a cylinder', 1, 24);

/** One of several collectors on a bank, with the cylinders that it takes. */
const collectorOfSome = z.strictObject({
  name: words('what the shop calls it; left out, its cylinders').optional(),
  cylinders: z
    .array(cylinder)
    .min(2)
    .max(5)
    .meta({ title: 'cylinders of this collector by number, front to rear' }),
  ...collectorKeys,
});

const bank = z.strictObject({
  cylinders: z
    .array(cylinder)
    .min(3)
    .max(6)
    .meta({ title: 'cylinders of this bank by number, in the order of the ports from front to rear' }),
  ports: z.array(port).min(3).max(6),
  collector: collector.optional(),
  collectors: z
    .array(collectorOfSome)
    .min(2)
    .max(3)
    .meta({
      title: 'several collectors on this bank, such as six cylinders as 3+3; then there is no collector',
    })
    .optional(),
  secondaries: secondaries.optional(),
  tail: tail.optional(),
});

const stud = z.strictObject({
  thread: words('thread, such as M8x1.25 or 5/16-24 UNF'),
  standsOut: length('how far it stands out of the head', 'Depth gauge, flange off.', 5, 150),
  flats: length('its nut across flats; left out, the standard one', 'Vernier.', 5, 40).optional(),
  nutHeight: length('height of its nut; left out, the standard one', 'Vernier.', 3, 40).optional(),
});

const flange = z.strictObject({
  form: choice('form of the port', ['round', 'oval', 'D']),
  width: length('width of the port', 'Inside jaws of the vernier.', 15, 120),
  height: length(
    'height of the port; a round one needs none',
    'Inside jaws of the vernier.',
    15,
    120,
  ).optional(),
  corner: length('radius of the two corners of a D', 'Radius gauge.', 1, 40).optional(),
  land: millimetres('plate left round the port', 'Decided.', 2, 40),
  boltLand: millimetres('plate left round a hole', 'Decided.', 2, 40),
  bolts: z
    .array(
      z.strictObject({
        across: length('from the middle of the port, to the right seen from the tube', 'Vernier.', -120, 120),
        up: length('from the middle of the port, up', 'Vernier.', -120, 120),
        hole: length('diameter of the hole', 'Vernier.', 3, 20),
      }),
    )
    .min(1)
    .max(8)
    .meta({ title: 'holes of the flange' }),
  stud: stud.optional(),
});

const SOLIDS = ['box', 'rod', 'drum'] as const;

const keepOut = z.strictObject({
  name: words('what it is'),
  form: choice('its form: an upright box, a rod with round ends, a drum with flat ends', SOLIDS),
  from: point(
    'one corner of the box, or one end of the axis',
    'Touch it with the arm, or measure from the flat patch.',
  ),
  to: point('the opposite corner, or the other end of the axis', 'As the first.'),
  across: length('diameter of the rod or drum', 'Vernier or tape.', 2, 900).optional(),
  carriesFlange: yesNo('the flanges sit on it, so the first of a pipe need not be clear of it').optional(),
  onEngine: yesNo('it moves with the engine on its mounts; what carries the flanges does').optional(),
  comesOff: yesNo('it is off the car when nuts are reached and pipes taken out').optional(),
});

const scan = z.strictObject({
  file: words('name of the scan beside the car file: STL, OBJ, PLY or GLB'),
  unit: choice('unit of its numbers', ['mm', 'cm', 'm', 'in']),
  of: words('what it is a scan of').optional(),
  comesOff: yesNo('it is off the car when nuts are reached and pipes taken out').optional(),
  datums: z
    .array(
      z.strictObject({
        name: words('name of the datum point'),
        onScan: z
          .tuple([z.number(), z.number(), z.number()])
          .meta({ title: 'as it stands in the scan, in its unit' }),
        onCar: point('the same place on the car', 'Touch it with the arm.'),
      }),
    )
    .min(3)
    .meta({ title: 'places that stand on scan and car both' }),
});

const temperature = (means: string, measure: string, min: number, max: number) =>
  stated({ means, measure, unit: 'degC', si: 'K', min, max });

const hot = z.strictObject({
  pipe: temperature(
    'mean heat of the metal of a primary, flange to collector',
    'Paint or thermocouples along it; 600 to 750 °C at full load (common practice, no source).',
    100,
    1100,
  ),
  cold: temperature(
    'how warm the car was when it was measured; left out, 20 °C',
    'Shop.',
    -20,
    50,
  ).optional(),
  collector: choice('what holds the collector; left out, its pipes', ['its pipes', 'the engine']).optional(),
  engineMoves: z
    .strictObject({
      along: millimetres('fore and aft', 'Bar and dial gauge.', 0, 50),
      across: millimetres('sideways', 'Bar and dial gauge.', 0, 50),
      up: millimetres('up and down', 'Bar and dial gauge.', 0, 50),
    })
    .meta({ title: 'how far the engine moves in the car at the ports, either way; left out, bolted fast' })
    .optional(),
  body: millimetres('least gap of pipe to bodywork, hot; left out, as cold', 'Decided.', 0, 100).optional(),
  solids: millimetres('least gap of pipe to anything solid, hot', 'Decided.', 0, 100).optional(),
  pipes: millimetres('least gap of pipe to pipe, hot', 'Decided.', 0, 50).optional(),
});

/** What a set can be asked to hold in the car. */
export const HOLDABLE = ['hot', 'tools', 'slip', 'removal'] as const;

export const exhaust = z.strictObject({
  given,
  tube,
  bends,
  clearances,
  firing: z
    .array(count('number of a cylinder', 1, 24))
    .min(3)
    .max(16)
    .meta({ title: 'firing order of the whole engine, by cylinder' }),
  left: bank,
  right: bank.optional(),
  rack: rack.optional(),
  flange: flange.optional(),
  hot: hot.optional(),
  hold: z
    .array(choice('something that a set must hold in the car', HOLDABLE))
    .max(4)
    .meta({ title: 'what a set must hold in the car beside its cold gaps' })
    .optional(),
  keepOuts: z.array(keepOut).max(200).optional(),
  scans: z
    .record(z.string(), scan)
    .meta({ title: 'scans of the bodywork, by a name of your own' })
    .optional(),
  order: choice('how the inlets of a ring follow the firing order; left out, the second', [
    'in rotation',
    'in rotation, else the next best',
  ]).optional(),
  suspension: choice('links of the rear suspension through their travel', [
    'kept clear',
    'left out',
  ]).optional(),
});
