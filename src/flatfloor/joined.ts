/**
 * What joins the two wheels of an axle: the anti-roll bar by its drop links, and the heave element.
 *
 * In    both corners as their links hold them, the drop links' change of length
 * Out   the bar's twist and the element's length as jets of both corners' variables and of the links
 * Axes  as the load path has them (loadpath/axle)
 *
 * The bar's two angles are the unknowns, the two drop links' lengths the equations. FF-n: docs/theory/flat-floor.md.
 */
import type { AxleState } from '../loadpath/axle-of-car.ts';
import type { AxleForm } from '../loadpath/corner-of-car.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import { type Equations, NotTied, TiedStores, tied } from '../maths/implied-jets.ts';
import type { Jet, Jets, JetVec } from '../maths/jets.ts';
import { distance, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';
import { CORNER_VARIABLES, type LinksAt } from './corner-links.ts';

const OWN = CORNER_VARIABLES.length;
/** Left travel, right travel, the other variables of the left corner, those of the right, the two drop links. */
export const PAIR_VARIABLES = 2 + 2 * (OWN - 1) + 2;
export const LINK_VARIABLES = { left: PAIR_VARIABLES - 2, right: PAIR_VARIABLES - 1 } as const;

/** Where a corner's variables stand among those of its axle. */
export const inPair: Readonly<Record<'left' | 'right', readonly number[]>> = {
  left: [0, ...Array.from({ length: OWN - 1 }, (_, i) => 2 + i)],
  right: [1, ...Array.from({ length: OWN - 1 }, (_, i) => 2 + OWN - 1 + i)],
};

interface BarPoints {
  readonly kind: 'U-bar' | 'T-bar';
  readonly on: Vec3;
  readonly axis: Vec3;
  /** T-bar: where its stem stands, and its direction. */
  readonly stem?: { readonly on: Vec3; readonly direction: Vec3 };
  readonly ends: { readonly left: Vec3; readonly right: Vec3 };
  readonly links: { readonly left: Metre; readonly right: Metre };
}

/** Metres to which a drop link is closed. */
const CLOSED: Metre = 3e-15;
/** Radians by which the bar is turned at most in one step. */
const STRIDE = 0.3;

export interface JoinedAt {
  readonly jets: Jets;
  readonly twist?: Jet;
  /** Compression of the heave element from the survey. */
  readonly heave?: Jet;
  readonly angles: Float64Array;
}

/** A drop link does not reach: told in words. */
export class LinkOpen extends Error {
  constructor(end: 'front' | 'rear') {
    super(
      `The ${end} anti-roll bar's drop links do not reach: they are too long or too short for where the wheels stand.`,
    );
    this.name = 'LinkOpen';
  }
}

/** What an axle is solved in. */
export const axleStores = (): TiedStores => new TiedStores(2, PAIR_VARIABLES, 2);

export class JoinedAxle {
  readonly #end: 'front' | 'rear';
  readonly #stores: TiedStores;
  readonly #bar: BarPoints | undefined;
  readonly #heaveLength: Metre | undefined;
  readonly #closing: 1 | -1 = 1;
  #last: { readonly of: readonly unknown[]; readonly is: JoinedAt } | undefined;

  /** @param stores  those of an axle that is no longer asked, to be written anew */
  constructor(
    end: 'front' | 'rear',
    axle: AxleForm,
    surveyed: AxleState,
    numbers: Numbers,
    stores: TiedStores = axleStores(),
  ) {
    this.#end = end;
    this.#stores = stores;
    this.#bar = barPoints(axle, surveyed, numbers);
    if (surveyed.heave !== undefined) {
      this.#heaveLength = surveyed.heave.length.value;
      this.#closing = surveyed.heave.length.byLeft + surveyed.heave.length.byRight <= 0 ? 1 : -1;
    }
  }

  at(
    left: LinksAt,
    right: LinksAt,
    links: { readonly left: Metre; readonly right: Metre },
    options: { readonly bar: boolean; readonly from?: Float64Array },
  ): JoinedAt {
    // a corner that stands where it stood is handed out as the same object
    const of = [left, right, links.left, links.right, options.bar];
    if (this.#last?.of.every((each, i) => each === of[i])) return this.#last.is;
    this.#last = undefined;
    const is = this.#anew(left, right, links, options);
    this.#last = { of, is };
    return is;
  }

  #anew(
    left: LinksAt,
    right: LinksAt,
    links: { readonly left: Metre; readonly right: Metre },
    options: { readonly bar: boolean; readonly from?: Float64Array },
  ): JoinedAt {
    const { jets } = this.#stores;
    jets.clear();
    let found: { twist?: Jet; angles: Float64Array } = { angles: options.from ?? new Float64Array(2) };
    if (this.#bar !== undefined && options.bar)
      found = this.#barAt(this.#bar, left, right, links, found.angles);
    if (this.#heaveLength === undefined || left.heave === undefined || right.heave === undefined) {
      return { jets, ...found };
    }
    const gap = jets.subVec(
      jets.takenVec(left.jets, left.heave, inPair.left),
      jets.takenVec(right.jets, right.heave, inPair.right),
    );
    const heave = jets.scale(jets.length(gap), -this.#closing, this.#closing * this.#heaveLength);
    return { jets, ...found, heave };
  }

  #barAt(
    bar: BarPoints,
    left: LinksAt,
    right: LinksAt,
    links: { readonly left: Metre; readonly right: Metre },
    from: Float64Array,
  ) {
    const rocker = (store: Jets, side: 'left' | 'right'): JetVec => {
      const of = side === 'left' ? left : right;
      return store === this.#stores.jets
        ? store.takenVec(of.jets, of.dropLink!, inPair[side])
        : store.constantVec(of.jets.values(of.dropLink!));
    };
    const equations: Equations = (jets, angles, v) =>
      (['left', 'right'] as const).map((side) => {
        const d = jets.subVec(barEnd(jets, bar, side, angles), rocker(jets, side));
        const length = jets.scale(v[LINK_VARIABLES[side]]!, 1, bar.links[side]);
        return jets.scale(jets.sub(jets.dot(d, d), jets.mul(length, length)), 0.5 / bar.links[side]);
      });
    const values = Array.from({ length: PAIR_VARIABLES }, (_, i) =>
      i === LINK_VARIABLES.left ? links.left : i === LINK_VARIABLES.right ? links.right : 0,
    );
    try {
      const { jets: angles, at } = tied(equations, from, values, this.#stores, {
        closed: CLOSED,
        stride: STRIDE,
      });
      const [first, second] = [angles[0]!, angles[1]!];
      const twist = bar.kind === 'U-bar' ? this.#stores.jets.sub(first, second) : second;
      return { twist, angles: at };
    } catch (reason) {
      if (reason instanceof NotTied) throw new LinkOpen(this.#end);
      throw reason;
    }
  }
}

/** An end of the bar at its two angles: arms of a U-bar, nod and twist of a T-bar.  [FF-6] */
function barEnd(jets: Jets, bar: BarPoints, side: 'left' | 'right', angles: readonly Jet[]): JetVec {
  const end = jets.constantVec(bar.ends[side]);
  if (bar.stem === undefined)
    return turnedJets(jets, end, bar.on, bar.axis, angles[side === 'left' ? 0 : 1]!);
  const twisted = turnedJets(jets, end, bar.stem.on, bar.stem.direction, angles[1]!);
  return turnedJets(jets, twisted, bar.on, bar.axis, angles[0]!);
}

/** A point turned about a fixed line (Rodrigues). */
function turnedJets(jets: Jets, p: JetVec, on: Vec3, axis: Vec3, angle: Jet): JetVec {
  const a = jets.constantVec(axis);
  const origin = jets.constantVec(on);
  const v = jets.subVec(p, origin);
  const c = jets.cos(angle);
  const across = jets.cross(a, v);
  const kept = jets.mul(jets.dot(a, v), jets.scale(c, -1, 1));
  const turned = jets.along(jets.along(jets.scaleVec(v, c), across, jets.sin(angle)), a, kept);
  return jets.addVec(origin, turned);
}

function barPoints(axle: AxleForm, surveyed: AxleState, numbers: Numbers): BarPoints | undefined {
  const { antiRollBar } = axle;
  if (antiRollBar === undefined || surveyed.bar === undefined) return undefined;
  const [from, to] = [numbers.point(antiRollBar.axisLeft), numbers.point(antiRollBar.axisRight)];
  const end = (side: 'left' | 'right'): Vec3 => numbers.point(axle[side].points.dropLinkArm!);
  const link = (side: 'left' | 'right'): Metre =>
    distance(numbers.point(axle[side].points.dropLinkRocker!), end(side));
  const top = antiRollBar.kind === 'T-bar' ? numbers.point(antiRollBar.stemTop!) : undefined;
  const middle: Vec3 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2];
  return {
    kind: antiRollBar.kind,
    on: from,
    axis: unit(sub(to, from)),
    ...(top === undefined ? {} : { stem: { on: top, direction: unit(sub(top, middle)) } }),
    ends: { left: end('left'), right: end('right') },
    links: { left: link('left'), right: link('right') },
  };
}
