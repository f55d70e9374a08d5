/** What can be turned, shimmed, wound or pumped at a corner when the car is set up. */
import { z } from 'zod';
import { amount, choice } from '../field.ts';

const left = (means: string, measure: string) =>
  amount({ means, measure, unit: 'mm', si: 'm', min: 0, max: 150, usual: 'vernier' });

export const pitch = (means: string) =>
  amount({
    means,
    measure: 'Thread gauge, or 25.4 mm over the threads per inch.',
    unit: 'mm',
    si: 'm',
    min: 0.3,
    max: 4,
    usual: 'counted',
  });

/** How the two ends of each tube are called in the workshop. */
export const TUBE_ENDS = {
  rod: ['outboard', 'rocker'],
  toeLink: ['outboard', 'inboard'],
  dropLink: ['rocker', 'arm'],
} as const;

/**
 * What a thread says beside its pitch, so that a turn of it is known; part of a rod's or link's thread.
 *
 * @param ends  of a tube with a left and a right thread
 */
export const turning = <const E extends readonly [string, string]>(ends: E) => ({
  hands: choice('hands of the threads at the two ends', [
    'left and right',
    'right only',
    'left only',
  ]).optional(),
  rightHandAt: choice('end of the tube that has the right-hand thread', ends).optional(),
  perTurn: amount({
    means: 'places in one turn at which it can be locked',
    measure:
      'Six flats on a hexagon; two where an end must come off and be turned by halves. Left out, six with a left and a right thread, else two.',
    unit: '1',
    si: '1',
    min: 1,
    max: 24,
    usual: 'counted',
  }).optional(),
  other: z
    .strictObject({
      pitch: pitch('pitch of the thread at the other end'),
      visible: left('visible thread at the other end', 'Vernier from the nut face to the end of the thread.'),
      engaged: left('thread engaged at the other end', 'Whole thread length less the visible part.'),
      least: left('least thread that must stay engaged at the other end', 'Maker of the rod end.'),
    })
    .meta({ title: 'thread at the other end, where it is not as this one' })
    .optional(),
});

const platform = z.strictObject({
  pitch: amount({
    means: 'pitch of the spring platform',
    measure: 'Thread gauge on the damper body.',
    unit: 'mm',
    si: 'm',
    min: 0.3,
    max: 4,
    usual: 'counted',
  }),
  perTurn: amount({
    means: 'places in one turn at which the platform can be locked',
    measure: 'Count the slots of the ring.',
    unit: '1',
    si: '1',
    min: 1,
    max: 24,
    usual: 'counted',
  }),
  tighter: left('thread left for more preload', 'Vernier along the damper body.'),
  slacker: left('thread left for less preload', 'Vernier, to the droop at which the spring comes loose.'),
});

const anchor = z.strictObject({
  lever: amount({
    means: 'lever of the anchor, bar axis to adjusting screw',
    measure: 'Vernier, square to the screw.',
    unit: 'mm',
    si: 'm',
    min: 15,
    max: 300,
    usual: 'vernier',
  }),
  pitch: amount({
    means: 'pitch of the adjusting screw',
    measure: 'Thread gauge.',
    unit: 'mm',
    si: 'm',
    min: 0.3,
    max: 4,
    usual: 'counted',
  }),
  tighter: left('screw left for more twist', 'Vernier on the screw.'),
  slacker: left('screw left for less twist', 'Vernier on the screw.'),
});

/** A pile of shims: so many of each thickness. */
export const shims = (means: string) =>
  z
    .array(
      z.strictObject({
        thickness: amount({
          means: 'thickness of the shim',
          measure: 'Micrometer.',
          unit: 'mm',
          si: 'm',
          min: 0.02,
          max: 20,
          usual: 'micrometer',
        }),
        pieces: amount({
          means: 'pieces of it',
          measure: 'Count them.',
          unit: '1',
          si: '1',
          min: 0,
          max: 500,
          usual: 'counted',
        }),
      }),
    )
    .meta({ title: means });

export const adjusters = z.strictObject({
  platform: platform.optional(),
  anchor: anchor.optional(),
  camberShims: z
    .strictObject({
      at: choice('where the camber shims stand', [
        'upper outer',
        'lower outer',
        'upper inner',
        'lower inner',
      ]),
      fitted: shims('camber shims fitted'),
      most: left(
        'thickest camber shim stack that the bolts allow',
        'Thread left in the nut, three threads past it.',
      ),
    })
    .optional(),
  casterShims: z
    .strictObject({
      moves: choice('wishbone that the caster shims move', ['upper wishbone', 'lower wishbone']),
      front: shims('caster shims in front of the inner joints'),
      rear: shims('caster shims behind the inner joints'),
    })
    .optional(),
  tyre: z
    .strictObject({
      pressure: amount({
        means: 'gauge pressure of the tyre as surveyed',
        measure: 'Gauge, tyre at the warmth of the shop.',
        unit: 'bar',
        si: 'Pa',
        min: 0.5,
        max: 4,
        usual: 'pressure gauge',
      }),
      least: amount({
        means: 'lowest pressure allowed',
        measure: 'Maker of the tyre.',
        unit: 'bar',
        si: 'Pa',
        min: 0.4,
        max: 4,
        usual: 'maker',
      }),
      most: amount({
        means: 'highest pressure allowed',
        measure: 'Maker of the tyre.',
        unit: 'bar',
        si: 'Pa',
        min: 0.5,
        max: 5,
        usual: 'maker',
      }),
      ratePerBar: amount({
        means: 'change of the tyre rate per bar',
        measure: 'Load against loaded radius on the pads at two pressures.',
        unit: 'N/mm bar',
        si: 'N/m Pa',
        min: 0,
        max: 300,
        usual: 'estimate',
      }),
      radiusPerBar: amount({
        means: 'change of the loaded radius per bar, load as surveyed',
        measure: 'Loaded radius at two pressures.',
        unit: 'mm/bar',
        si: 'm/Pa',
        min: 0,
        max: 30,
        usual: 'estimate',
      }),
    })
    .optional(),
});
