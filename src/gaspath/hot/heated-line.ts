/**
 * A pipe as a slender elastic line, heated, clamped at its flange, with a force and a moment at its mouth.
 *
 * In    a pipe, its heat, its modulus when hot
 * Out   how its mouth moves by heat and by each unit of force and moment; the moved line; strain of its wall
 * Axes  those of the pipe. A wrench is force then moment at the mouth, a motion is shift then turn there
 * Not   shear, ovality beyond what the flexibility factor of bends has of it, large turns: straight sums of small motions
 *
 * PW-n are the equations of docs/theory/pipework.md.
 */
import { add, cross, dot, length, scale, sub, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Metre, Pascal } from '../../units/quantity.ts';
import { formula } from '../../working/working.ts';
import { into, type Place, stations } from '../pipework/centreline.ts';
import type { Heat } from '../pipework/growth.ts';
import { type Element, elementLength, type Pipe, type Tube, tubeOf } from '../pipework/pipe.ts';
import { reducersOf } from '../pipework/stepped.ts';

/** Force, then moment. */
export type Wrench = readonly [number, number, number, number, number, number];
/** Shift, then turn. */
export type Motion = Wrench;

export const bendCharacteristic = formula({
  symbol: 'h',
  means: 'flexibility characteristic of a bend',
  is: 'w*R/r^2',
  unit: '1',
  terms: {
    w: { unit: 'm', means: 'wall' },
    R: { unit: 'm', means: 'radius of the centreline' },
    r: { unit: 'm', means: 'radius to the middle of the wall' },
  },
  source: 'PW-32, ASME B31.3 table D300',
});

export const flexibilityFactor = formula({
  symbol: 'k',
  means: 'how much more a bend gives than straight tube of its length',
  is: '1.65/h',
  unit: '1',
  terms: { h: { unit: '1', means: 'flexibility characteristic' } },
  source: 'PW-32, ASME B31.3 table D300',
  holds: 'not below 1; for bends whose ends are free to go oval: next to a flange they give less',
});

export const stressFactor = formula({
  symbol: 'i',
  means: 'how much more the wall of a bend is strained than that of straight tube',
  is: '0.9/h^(2/3)',
  unit: '1',
  terms: { h: { unit: '1', means: 'flexibility characteristic' } },
  source: 'PW-32, ASME B31.3 table D300',
  holds: 'not below 1',
});

/** A place at which a short length of the pipe gives. */
interface Give {
  readonly p: Vec3;
  readonly t: Vec3;
  /** Length that gives here. */
  readonly weight: Metre;
  /** More than straight tube. */
  readonly k: number;
  /** The wall more strained than that of straight tube. */
  readonly i: number;
  readonly tube: Gives;
}

/** What a metre of straight tube gives to a unit of moment, of twist and of pull; and where its skin is. */
interface Gives {
  readonly bending: number;
  readonly torsion: number;
  readonly axial: number;
  readonly radius: Metre;
}

interface Span {
  readonly to: Vec3;
  readonly gives: readonly [Give, Give];
}

export interface MovedPoint {
  /** Where it was, cold. */
  readonly cold: Vec3;
  readonly shift: Vec3;
}

export interface Strained {
  /** Greatest at the skin by bending, of straight tube times the factor of bends. */
  readonly strain: number;
  readonly at: Vec3;
}

/** Longest step between two places of the line: a quarter of a usual tube. */
const STEP: Metre = 0.012;
/** Of Gauss, two points, on 0 to 1. */
const GAUSS = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)] as const;
/** Of all metals of the table, near enough: it decides torsion alone. */
const POISSON = 0.3;

export class HeatedLine {
  readonly mouth: Place;
  private readonly spans: readonly Span[];
  private readonly start: Vec3;
  private readonly share: number;

  /** @param stiffBends  takes bends for curved beams, without the give of a thin wall: to compare with beam theory */
  constructor(pipe: Pipe, heat: Heat, modulus: Pascal, stiffBends = false) {
    this.share = heat.expansion * heat.hotter;
    this.start = pipe.start.p;
    const begins = stations(pipe);
    const end = begins.at(-1)!;
    this.mouth = { p: end.p, t: end.t };
    this.spans = pipe.elements.flatMap((element, e) => {
      const tube = tubeThatGives(pipe, e);
      return spansOf(element, begins[e]!, tube, givesOf(tube, modulus), stiffBends);
    });
  }

  /** By heat alone, its mouth free: everything stands farther from the flange by the same share.  [PW-4] */
  get byHeat(): Motion {
    return [...scale(sub(this.mouth.p, this.start), this.share), 0, 0, 0];
  }

  /** Motion of the mouth by one unit of each part of the wrench there: the rows of its compliance.  [PW-31] */
  get compliance(): readonly Motion[] {
    return Array.from({ length: 6 }, (_, c) => {
      const wrench = Array.from({ length: 6 }, (_, k) => (k === c ? 1 : 0)) as unknown as Wrench;
      const { shift, turn } = this.carried(wrench).at(-1)!;
      return [...shift, ...turn];
    });
  }

  /** The line as heat and a wrench at its mouth leave it. */
  moved(wrench: Wrench): readonly MovedPoint[] {
    return this.carried(wrench).map(({ cold, shift }) => ({
      cold,
      shift: add(shift, scale(sub(cold, this.start), this.share)),
    }));
  }

  /** Where its wall is strained most by a wrench at its mouth.  [PW-33] */
  strained(wrench: Wrench): Strained {
    let most: Strained = { strain: 0, at: this.start };
    for (const { gives } of this.spans)
      for (const { p, t, i, tube } of gives) {
        const m = this.momentAt(p, wrench);
        const strain = length(sub(m, scale(t, dot(m, t)))) * tube.bending * tube.radius * i;
        if (strain > most.strain) most = { strain, at: p };
      }
    return most;
  }

  private momentAt(p: Vec3, w: Wrench): Vec3 {
    return add([w[3], w[4], w[5]], cross(sub(this.mouth.p, p), [w[0], w[1], w[2]]));
  }

  private carried(wrench: Wrench): readonly { cold: Vec3; shift: Vec3; turn: Vec3 }[] {
    const force: Vec3 = [wrench[0], wrench[1], wrench[2]];
    let at = { cold: this.start, shift: ZERO, turn: ZERO };
    const line = [at];
    for (const { to, gives } of this.spans) {
      let shift = add(at.shift, cross(at.turn, sub(to, at.cold)));
      let { turn } = at;
      for (const { p, t, weight, k, tube } of gives) {
        const m = this.momentAt(p, wrench);
        const along = dot(m, t);
        const bent = scale(sub(m, scale(t, along)), tube.bending * k * weight);
        const turned = add(bent, scale(t, along * tube.torsion * weight));
        turn = add(turn, turned);
        shift = add(shift, cross(turned, sub(to, p)));
        shift = add(shift, scale(t, dot(force, t) * tube.axial * weight));
      }
      at = { cold: to, shift, turn };
      line.push(at);
    }
    return line;
  }
}

function givesOf({ od, wall }: Tube, modulus: Pascal): Gives {
  const outer = od / 2;
  const inner = outer - wall;
  const second = (Math.PI / 4) * (outer ** 4 - inner ** 4);
  return {
    bending: 1 / (modulus * second),
    torsion: (1 + POISSON) / (modulus * second),
    axial: 1 / (modulus * Math.PI * (outer ** 2 - inner ** 2)),
    radius: outer,
  };
}

/** A reducer gives as the smaller of its two tubes: that it is stiffer at its other end is left out. */
function tubeThatGives(pipe: Pipe, element: number): Tube {
  const reducer = reducersOf(pipe).find((each) => each.element === element);
  if (reducer === undefined) return tubeOf(pipe, element);
  return reducer.before.od <= reducer.behind.od ? reducer.before : reducer.behind;
}

function spansOf(element: Element, begin: Place, tube: Tube, gives: Gives, stiff: boolean): Span[] {
  const long = elementLength(element);
  if (long === 0) return [];
  const steps = Math.max(4, Math.ceil(long / STEP));
  const h = long / steps;
  let k = 1;
  let i = 1;
  if (element.kind === 'bend' && !stiff) {
    const of = bendCharacteristic({ w: tube.wall, R: element.radius, r: (tube.od - tube.wall) / 2 });
    k = Math.max(1, flexibilityFactor({ h: of }));
    i = Math.max(1, stressFactor({ h: of }));
  }
  const give = (at: number): Give => ({ ...into(element, begin, at), weight: h / 2, k, i, tube: gives });
  return Array.from({ length: steps }, (_, j) => ({
    to: into(element, begin, (j + 1) * h).p,
    gives: [give((j + GAUSS[0]) * h), give((j + GAUSS[1]) * h)] as const,
  }));
}
