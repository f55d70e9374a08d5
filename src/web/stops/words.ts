/** What each stop of the load path is, in a sentence, and what the ways to come will need. */
import type { Stop } from '../../questions/figure.ts';
import type { Way } from '../place.ts';

export interface StopWords {
  readonly name: string;
  readonly title: string;
  readonly is: string;
}

export const STOPS: Readonly<Record<Stop, StopWords>> = {
  tyre: {
    name: 'tyre',
    title: 'Tyre',
    is: 'Where the ground pushes: contact point, track, camber and toe.',
  },
  upright: {
    name: 'upright',
    title: 'Upright',
    is: 'Steering axis, caster, kingpin inclination, scrub radius, trail (uprights: also called knuckles).',
  },
  links: {
    name: 'links',
    title: 'Links',
    is: 'Wishbones, track rod or toe link, pushrod or pullrod, and the joints at their ends.',
  },
  rocker: {
    name: 'rocker',
    title: 'Rocker',
    is: 'Turns the push of the rod into twist or stroke (rocker: also called bellcrank).',
  },
  spring: {
    name: 'spring',
    title: 'Spring',
    is: 'Coil spring or torsion bar, with rubber, stops and damper.',
  },
  case: {
    name: 'case',
    title: 'Case',
    is: 'Gearbox case and its pick-ups: every force that suspension, shafts, weight and air put on it.',
  },
  studs: {
    name: 'studs',
    title: 'Studs',
    is: 'Studs between case and engine, engine and tub: what the load leaves on each pad.',
  },
  tub: {
    name: 'tub',
    title: 'Tub',
    is: 'The tub (also called the monocoque): what front suspension, engine joint, its own weight and the air put on it.',
  },
};

export interface WayWords {
  readonly name: string;
  /** Set where the way is not there yet. */
  readonly toCome?: { readonly stops: readonly string[]; readonly will: string; readonly needs: string };
}

export const WAY_WORDS: Readonly<Record<Way, WayWords>> = {
  load: { name: 'load path' },
  gas: { name: 'gas path' },
  floor: { name: 'flat floor' },
  book: {
    name: 'car book',
    toCome: {
      stops: ['parts', 'lives', 'runs', 'checks', 'jobs', 'papers'],
      will: 'The car book will keep every part, what it has lived through, and what is due.',
      needs:
        'It will need part numbers, dates fitted, running sheets or logged loads, and the lives that the makers gave.',
    },
  },
};
