/**
 * One corner by the lengths of its links: where its joints stand at a travel and at given adjusters, as jets.
 *
 * In    the surveyed corner; travel of the wheel, change of rod and track rod, shims for camber and caster
 * Out   wheel centre and axle, steering joints, damper's length, rocker's angle and its points, with first and second
 *       derivatives by all of these
 * Axes  tub axes. Travel positive in bump. A longer rod or track rod is positive; so is a thicker camber shim; the
 *       caster shim is positive where it adds caster
 * Not   springs and ground (stand.ts). FF-n are the equations of docs/theory/flat-floor.md
 *
 * The load path's chain goes from joint to joint by angles, and gives derivatives by travel and rack. Here each link
 * is one equation between two joints, so that every length is a variable like any other and nothing is differenced.
 */
import type { CornerGeometry } from '../loadpath/corner/geometry.ts';
import type { Corner } from '../loadpath/corner/prepare.ts';
import { type Equations, TiedStores, tied } from '../maths/implied-jets.ts';
import type { Jet, Jets, JetVec } from '../maths/jets.ts';
import { along, cross, distance, dot, scale, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';

/** Where the camber shims stand, and which wishbone the caster shims move. */
export interface ShimPlaces {
  readonly camber: 'upper outer' | 'lower outer' | 'upper inner' | 'lower inner';
  readonly caster: 'upper wishbone' | 'lower wishbone';
}

export const USUAL_SHIMS: ShimPlaces = { camber: 'upper outer', caster: 'upper wishbone' };

/** The variables of a corner, in their order in its jets. */
export const CORNER_VARIABLES = ['travel', 'rod', 'toe', 'camber', 'caster'] as const;
export type CornerVariable = (typeof CORNER_VARIABLES)[number];
export const variableIndex = (of: CornerVariable): number => CORNER_VARIABLES.indexOf(of);

/** Names of the adjusters that move the links, in the order of the variables. */
export const LINK_CHANGES = ['rod', 'toe', 'camber', 'caster'] as const;
export type LinkChanges = Readonly<Record<(typeof LINK_CHANGES)[number], number>>;

/** A body that turns about two joints of the tub: a direction of its own goes with one joint of it. */
interface Hinge {
  readonly axis: Vec3;
  readonly foot: Vec3;
  readonly radius: Metre;
  readonly e1: Vec3;
  readonly e2: Vec3;
}

function hingeOf(origin: Vec3, axis: Vec3, joint: Vec3): Hinge {
  const foot = along(origin, axis, dot(sub(joint, origin), axis));
  const arm = sub(joint, foot);
  const radius = Math.hypot(...arm);
  const e1 = scale(arm, 1 / radius);
  return { axis, foot, radius, e1, e2: cross(axis, e1) };
}

/** The corner's joints and what hangs on them, in the store that they were worked in. */
export interface LinksAt {
  readonly jets: Jets;
  readonly lowerOuter: JetVec;
  readonly upperOuter: JetVec;
  readonly toeOuter: JetVec;
  readonly centre: JetVec;
  readonly axis: JetVec;
  readonly rockerAngle: Jet;
  /** Eye to eye; absent without a unit. */
  readonly unitLength?: Jet;
  readonly dropLink?: JetVec;
  readonly heave?: JetVec;
  /** Each link's length less what it must be, m: what the search left. */
  readonly unknowns: Float64Array;
}

/** Metres to which the links are closed: near the rounding of the coordinates, since springs multiply it. */
const CLOSED: Metre = 3e-15;
/** Longest step of a joint in the search, m: short beside every arm, so that no branch is jumped. */
const STRIDE: Metre = 0.03;

const UNKNOWNS = 12;

/** What a corner is solved in. */
export const cornerStores = (): TiedStores => new TiedStores(UNKNOWNS, CORNER_VARIABLES.length, 1);

/** A corner with its stores; keeps the last place found, and hands it out again where the same is asked twice. */
export class CornerLinks {
  readonly geometry: CornerGeometry;
  readonly #corner: Corner;
  readonly #shims: ShimPlaces;
  readonly #lower: Hinge;
  readonly #upper: Hinge;
  readonly #rocker: Hinge;
  readonly #stores: TiedStores;
  readonly #surveyed: Float64Array;
  #last:
    | { readonly values: readonly number[]; readonly joints: readonly Jet[]; readonly is: LinksAt }
    | undefined;

  /** @param stores  those of a corner that is no longer asked, to be written anew */
  constructor(corner: Corner, shims: ShimPlaces = USUAL_SHIMS, stores: TiedStores = cornerStores()) {
    const g = corner.geometry;
    this.geometry = g;
    this.#corner = corner;
    this.#shims = shims;
    this.#stores = stores;
    this.#lower = hingeOf(g.lowerRear, corner.lowerAxis, g.lowerOuter);
    this.#upper = hingeOf(g.upperRear, corner.upperAxis, g.upperOuter);
    this.#rocker = hingeOf(g.rockerPivot, corner.rockerAxis, g.rodInner);
    this.#surveyed = Float64Array.from([...g.lowerOuter, ...g.upperOuter, ...g.toeOuter, ...g.rodInner]);
  }

  /**
   * The joints at a travel and these changes. What it returns stands in a store that the next call writes anew.
   *
   * @param from  joints of a place near by; left out, those of the survey
   * @throws NotTied
   */
  at(travel: Metre, changes: LinkChanges, from: Float64Array = this.#surveyed): LinksAt {
    const values = [travel, changes.rod, changes.toe, changes.camber, changes.caster];
    const last = this.#last;
    if (last?.values.every((value, i) => value === values[i])) return last.is;
    const near = this.#near(from, values);
    this.#last = undefined;
    this.#stores.jets.clear();
    const found = tied(this.#equations, near, values, this.#stores, { closed: CLOSED, stride: STRIDE });
    const is = this.#placed(found.jets, values, found.at);
    this.#last = { values, joints: found.jets, is };
    return is;
  }

  /** Where the joints will be, by the slopes of the place that the search comes from. */
  #near(from: Float64Array, values: readonly number[]): Float64Array {
    if (from !== this.#last?.is.unknowns) return from;
    const { jets } = this.#stores;
    const { joints, values: before } = this.#last;
    const travel = values[0]! - before[0]!;
    return from.map((place, k) => {
      const joint = joints[k]!;
      let to = place;
      for (let i = 0; i < values.length; i += 1) {
        const bend = (i === 0 ? 0.5 : 1) * travel * jets.second(joint, 0, i);
        to += (values[i]! - before[i]!) * (jets.first(joint, i) + bend);
      }
      return to;
    });
  }

  #placed(x: readonly Jet[], values: readonly number[], unknowns: Float64Array): LinksAt {
    const { jets } = this.#stores;
    const v = values.map((value, i) => jets.variable(value, i));
    const { lower, upper, toe, inner } = joints(x);
    const upright = this.#upright(jets, v, { lower, upper, toe });
    const { rockerPoints, elements } = this.geometry;
    const onRocker = (name: string): JetVec => this.#onRocker(jets, inner, rockerPoints[name]!);
    const unit = Object.values(elements)[0];
    const arm = jets.subVec(inner, jets.constantVec(this.#rocker.foot));
    return {
      jets,
      lowerOuter: lower,
      upperOuter: upper,
      toeOuter: toe,
      centre: upright.point(this.geometry.wheelCentre),
      axis: upright.direction(this.#wheelAxis()),
      rockerAngle: jets.atan2(
        jets.dot(arm, jets.constantVec(this.#rocker.e2)),
        jets.dot(arm, jets.constantVec(this.#rocker.e1)),
      ),
      ...(unit === undefined
        ? {}
        : {
            unitLength: jets.length(jets.subVec(onRocker(unit.rockerPoint), jets.constantVec(unit.tub))),
          }),
      ...(rockerPoints.dropLink === undefined ? {} : { dropLink: onRocker('dropLink') }),
      ...(rockerPoints.heave === undefined ? {} : { heave: onRocker('heave') }),
      unknowns,
    };
  }

  #wheelAxis(): Vec3 {
    return unit(this.geometry.wheelAxis);
  }

  /** A point of the rocker, which turns as its joint to the rod does.  [FF-3] */
  #onRocker(jets: Jets, inner: JetVec, surveyed: Vec3): JetVec {
    return carried(jets, this.#rocker, inner, surveyed);
  }

  /** The twelve equations of the corner.  [FF-1, FF-2] */
  readonly #equations: Equations = (jets, x, v) => {
    const g = this.geometry;
    const { lower, upper, toe, inner: rodInner } = joints(x);
    const upright = this.#upright(jets, v, { lower, upper, toe });
    const [rod, track] = [v[variableIndex('rod')]!, v[variableIndex('toe')]!];
    const { upperShift, lowerShift } = this.#shifts(jets, v);
    const outer = this.#rodOuter(jets, { lower, upper, upright, upperShift, lowerShift });
    const axisEnd = along(g.rockerPivot, this.#rocker.axis, 0.1);
    const centre = upright.point(g.wheelCentre);
    const lean = upright.direction(this.#wheelAxis())[2];
    const down = jets.sqrt(jets.scale(jets.mul(lean, lean), -1, 1));
    const rise = jets.sub(centre[2], jets.scale(down, g.loadedRadius, this.#corner.ground));
    return [
      kept(jets, [lower, g.lowerOuter], [inner(jets, g.lowerFront, lowerShift), g.lowerFront]),
      kept(jets, [lower, g.lowerOuter], [inner(jets, g.lowerRear, lowerShift), g.lowerRear]),
      kept(jets, [upper, g.upperOuter], [inner(jets, g.upperFront, upperShift), g.upperFront]),
      kept(jets, [upper, g.upperOuter], [inner(jets, g.upperRear, upperShift), g.upperRear]),
      link(jets, upper, lower, distance(g.upperOuter, g.lowerOuter), upright.kingpin),
      link(jets, toe, lower, distance(g.toeOuter, g.lowerOuter), upright.toeToLower),
      link(jets, toe, upper, distance(g.toeOuter, g.upperOuter), upright.toeToUpper),
      kept(jets, [toe, g.toeOuter], [jets.constantVec(g.toeInner), g.toeInner], track),
      kept(jets, [rodInner, g.rodInner], [jets.constantVec(g.rockerPivot), g.rockerPivot]),
      kept(jets, [rodInner, g.rodInner], [jets.constantVec(axisEnd), axisEnd]),
      kept(jets, [rodInner, g.rodInner], [outer, g.rodOuter], rod),
      jets.sub(rise, v[variableIndex('travel')]!),
    ];
  };

  /** How far shims at the tub hold the inner joints of each wishbone from where they were surveyed. */
  #shifts(jets: Jets, v: readonly Jet[]): { readonly upperShift: JetVec; readonly lowerShift: JetVec } {
    const g = this.geometry;
    const out: Vec3 = [0, g.side === 'left' ? 1 : -1, 0];
    const rearward = (front: Vec3, rear: Vec3): Vec3 => unit(sub(rear, front));
    const { camber, caster } = this.#shims;
    const shift = (of: 'upper' | 'lower'): JetVec => {
      let moved = jets.constantVec([0, 0, 0]);
      if (camber === `${of} inner`)
        moved = jets.along(moved, jets.constantVec(out), v[variableIndex('camber')]!);
      if (caster === `${of} wishbone`) {
        const way =
          of === 'upper'
            ? rearward(g.upperFront, g.upperRear)
            : scale(rearward(g.lowerFront, g.lowerRear), -1);
        moved = jets.along(moved, jets.constantVec(way), v[variableIndex('caster')]!);
      }
      return moved;
    };
    return { upperShift: shift('upper'), lowerShift: shift('lower') };
  }

  #rodOuter(
    jets: Jets,
    at: {
      readonly lower: JetVec;
      readonly upper: JetVec;
      readonly upright: Upright;
      readonly upperShift: JetVec;
      readonly lowerShift: JetVec;
    },
  ): JetVec {
    const g = this.geometry;
    if (g.rodOn === 'upright') return at.upright.point(g.rodOuter);
    const [hinge, joint, shift] =
      g.rodOn === 'lower wishbone'
        ? [this.#lower, at.lower, at.lowerShift]
        : [this.#upper, at.upper, at.upperShift];
    return jets.addVec(carried(jets, hinge, jets.subVec(joint, shift), g.rodOuter), shift);
  }

  /** The upright as its three joints hold it, the shims between it and its outer joints taken in.  [FF-4] */
  #upright(jets: Jets, v: readonly Jet[], now: Record<'lower' | 'upper' | 'toe', JetVec>): Upright {
    const g = this.geometry;
    const { camber } = this.#shims;
    const inboard = jets.constantVec(scale(this.#wheelAxis(), -1));
    const shimmed = (name: 'upper outer' | 'lower outer', surveyed: Vec3): JetVec =>
      camber === name
        ? jets.along(jets.constantVec(surveyed), inboard, v[variableIndex('camber')]!)
        : jets.constantVec(surveyed);
    return uprightOf(jets, {
      body: {
        lower: shimmed('lower outer', g.lowerOuter),
        upper: shimmed('upper outer', g.upperOuter),
        toe: jets.constantVec(g.toeOuter),
      },
      now,
    });
  }
}

/** (|a − b|² − ℓ²)/2ℓ₀: metres by which a link is too long. */
function link(jets: Jets, a: JetVec, b: JetVec, surveyed: Metre, now: Jet): Jet {
  const d = jets.subVec(a, b);
  return jets.scale(jets.sub(jets.dot(d, d), jets.mul(now, now)), 0.5 / surveyed);
}

/** A link between two joints, each with where it was surveyed. */
function kept(
  jets: Jets,
  [a, a0]: readonly [JetVec, Vec3],
  [b, b0]: readonly [JetVec, Vec3],
  longer?: Jet,
): Jet {
  const surveyed = distance(a0, b0);
  const now = longer === undefined ? jets.constant(surveyed) : jets.scale(longer, 1, surveyed);
  return link(jets, a, b, surveyed, now);
}

/** An inner joint of a wishbone with its shims. */
const inner = (jets: Jets, p: Vec3, shift: JetVec): JetVec => jets.addVec(jets.constantVec(p), shift);

const joints = (x: readonly Jet[]) => {
  const vec = (i: number): JetVec => [x[i]!, x[i + 1]!, x[i + 2]!];
  return { lower: vec(0), upper: vec(3), toe: vec(6), inner: vec(9) };
};

/** A surveyed point of a hinged body, as the body's joint carries it: it goes as the joint goes.  [FF-3] */
function carried(jets: Jets, hinge: Hinge, joint: JetVec, surveyed: Vec3): JetVec {
  const axial = dot(sub(surveyed, hinge.foot), hinge.axis);
  const foot = along(hinge.foot, hinge.axis, axial);
  const arm = sub(surveyed, foot);
  const e1 = jets.subVec(joint, jets.constantVec(hinge.foot));
  const e2 = jets.cross(jets.constantVec(hinge.axis), e1);
  const part = (v: JetVec, k: number): JetVec => jets.scaleVec(v, jets.constant(k / hinge.radius));
  return jets.addVec(
    jets.constantVec(foot),
    jets.addVec(part(e1, dot(arm, hinge.e1)), part(e2, dot(arm, hinge.e2))),
  );
}

interface Upright {
  readonly kingpin: Jet;
  readonly toeToLower: Jet;
  readonly toeToUpper: Jet;
  readonly point: (surveyed: Vec3) => JetVec;
  readonly direction: (surveyed: Vec3) => JetVec;
}

/** A body told by three of its points: any other is L + α(U − L) + β(T − L) + γ(U − L)×(T − L).  [FF-4] */
function uprightOf(
  jets: Jets,
  of: {
    readonly body: Record<'lower' | 'upper' | 'toe', JetVec>;
    readonly now: Record<'lower' | 'upper' | 'toe', JetVec>;
  },
): Upright {
  const { body, now } = of;
  const a = jets.subVec(body.upper, body.lower);
  const b = jets.subVec(body.toe, body.lower);
  const c = jets.cross(a, b);
  const [aa, ab, bb, cc] = [jets.dot(a, a), jets.dot(a, b), jets.dot(b, b), jets.dot(c, c)];
  const det = jets.sub(jets.mul(aa, bb), jets.mul(ab, ab));
  const nowA = jets.subVec(now.upper, now.lower);
  const nowB = jets.subVec(now.toe, now.lower);
  const nowC = jets.cross(nowA, nowB);
  const turned = (d: JetVec): JetVec => {
    const [da, db] = [jets.dot(d, a), jets.dot(d, b)];
    const α = jets.div(jets.sub(jets.mul(da, bb), jets.mul(db, ab)), det);
    const β = jets.div(jets.sub(jets.mul(db, aa), jets.mul(da, ab)), det);
    const γ = jets.div(jets.dot(d, c), cc);
    return jets.along(jets.along(jets.scaleVec(nowA, α), nowB, β), nowC, γ);
  };
  return {
    kingpin: jets.length(a),
    toeToLower: jets.length(b),
    toeToUpper: jets.length(jets.subVec(body.toe, body.upper)),
    point: (surveyed) => jets.addVec(now.lower, turned(jets.subVec(jets.constantVec(surveyed), body.lower))),
    direction: (surveyed) => turned(jets.constantVec(surveyed)),
  };
}
