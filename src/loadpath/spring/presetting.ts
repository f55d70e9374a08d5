/**
 * Twisting a bar past its yield point, on purpose or not, and the hand that it has from then on.
 *
 * In    a round bar, its length, shear modulus and yield in shear; how far or how hard it is twisted
 * Out   what is still elastic, torque, permanent twist, residual stress; whether a use reverses a preset bar
 * Axes  twist and torque positive in the direction of presetting
 * Holds for elastic, perfectly plastic steel: a hardening one holds somewhat more torque and sets less
 *
 * [Gere7]    Gere & Goodno, Mechanics of Materials, 7th ed., ch. 3
 * [Hibbeler] Hibbeler, Mechanics of Materials, inelastic torsion and residual stress
 * [Beer]     Beer, Johnston & DeWolf, Mechanics of Materials, sections 3.9 to 3.11
 */
import type { Metre, NewtonMetre, Pascal, Radian } from '../../units/quantity.ts';
import { spokenFigures } from '../../units/show.ts';
import { formula, type Working } from '../../working/working.ts';
import type { Origins } from './coil-spring.ts';
import { polarSecondMoment, type RoundSection } from './torsion-bar.ts';

export interface YieldingBar extends RoundSection {
  /** Active length. */
  readonly length: Metre;
  readonly shearModulus: Pascal;
  readonly yieldShear: Pascal;
}

const BAR_TERMS = {
  τ_y: { unit: 'Pa', means: 'yield in shear' },
  D: { unit: 'm', means: 'diameter of the bar' },
  d: { unit: 'm', means: 'bore of the bar' },
} as const;

const firstYield = formula({
  symbol: 'T_Y',
  means: 'torque at which the skin yields',
  is: 'τ_y*π*(D^4 - d^4)/(16*D)',
  unit: 'N m',
  terms: BAR_TERMS,
  source: 'SP-37; Hibbeler, inelastic torsion',
});

/** Torque at which the skin begins to yield.  [SP-37] */
export const yieldTorque = (
  bar: RoundSection & { readonly yieldShear: Pascal },
  working?: Working,
  from?: Origins,
): NewtonMetre => firstYield({ τ_y: bar.yieldShear, D: bar.diameter, d: bar.bore }, working, from);

const allYielded = formula({
  symbol: 'T_P',
  means: 'torque at which the whole section yields',
  is: 'τ_y*π*(D^3 - d^3)/12',
  unit: 'N m',
  terms: BAR_TERMS,
  source: 'SP-38; Hibbeler, inelastic torsion',
});

/** Torque at which the whole section yields: the bar turns without taking more.  [SP-38] */
export const plasticTorque = (
  bar: RoundSection & { readonly yieldShear: Pascal },
  working?: Working,
): NewtonMetre => allYielded({ τ_y: bar.yieldShear, D: bar.diameter, d: bar.bore }, working);

const coreOf = formula({
  symbol: 'ρ_c',
  means: 'radius up to which the bar is still elastic',
  is: 'τ_y*L/(G*φ)',
  unit: 'm',
  terms: {
    τ_y: { unit: 'Pa', means: 'yield in shear' },
    L: { unit: 'm', means: 'active length of the bar' },
    G: { unit: 'Pa', means: 'shear modulus of the bar' },
    φ: { unit: 'rad', means: 'twist of the bar' },
  },
  source: 'SP-39; Hibbeler, inelastic torsion',
});

const torqueOverCore = formula({
  symbol: 'T',
  means: 'torque with an elastic core left',
  is: 'π*τ_y*(ρ_c^4 - d^4/16)/(2*ρ_c) + 2*π*τ_y*(D^3/8 - ρ_c^3)/3',
  unit: 'N m',
  terms: { ...BAR_TERMS, ρ_c: { unit: 'm', means: 'radius up to which the bar is still elastic' } },
  source: 'SP-40; Hibbeler, inelastic torsion',
});

export interface Preset {
  /** Radius up to which the bar stayed elastic; the bar's own radius when nothing yielded. */
  readonly coreRadius: Metre;
  readonly torque: NewtonMetre;
  /** Twist under that torque, and what is left of it afterwards. */
  readonly twist: Radian;
  readonly permanentTwist: Radian;
  /** Stress left at skin and bore when let go. The skin's is against the direction of presetting (negative). */
  readonly residualAtSkin: Pascal;
  readonly residualAtBore: Pascal;
  /** False if letting go would make the skin yield backwards, so that the residual figures do not hold. */
  readonly elasticRelease: boolean;
}

/** Twisted to an angle and let go.  [SP-39 to SP-42] */
export function presetToTwist(bar: YieldingBar, twist: Radian, working?: Working): Preset {
  const outer = bar.diameter / 2;
  const inner = bar.bore / 2;
  const { yieldShear: τ_y, shearModulus: G, length: L } = bar;
  const reach = coreOf({ τ_y, L, G, φ: twist }, working);
  if (reach >= outer) {
    const torque = (G * polarSecondMoment(bar, working) * twist) / L;
    return letGo(bar, { coreRadius: outer, torque, twist, skin: (G * outer * twist) / L }, working);
  }
  const coreRadius = Math.max(reach, inner);
  const torque =
    reach <= inner
      ? plasticTorque(bar, working)
      : torqueOverCore({ τ_y, D: bar.diameter, d: bar.bore, ρ_c: reach }, working);
  return letGo(bar, { coreRadius, torque, twist, skin: τ_y }, working);
}

export class BeyondPlasticTorque extends Error {
  constructor(
    readonly asked: NewtonMetre,
    readonly most: NewtonMetre,
  ) {
    super(
      `the bar cannot take ${spokenFigures(asked, 'N m')}: its whole section has yielded at ${spokenFigures(most, 'N m')}`,
    );
  }
}

/**
 * Twisted by a torque and let go.
 *
 * The core radius is the root of SP-40, a falling function of the radius: halved to the last digit.
 * @throws BeyondPlasticTorque at or above the fully plastic torque, where the twist is not determined
 */
export function presetToTorque(bar: YieldingBar, torque: NewtonMetre, working?: Working): Preset {
  const most = plasticTorque(bar);
  if (torque >= most) throw new BeyondPlasticTorque(torque, most);
  const { yieldShear: τ_y, shearModulus: G, length: L } = bar;
  if (torque <= yieldTorque(bar)) {
    return presetToTwist(bar, (torque * L) / (G * polarSecondMoment(bar)), working);
  }
  let low = bar.bore / 2;
  let high = bar.diameter / 2;
  while (high - low > 4e-16 * bar.diameter) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const here = torqueOverCore({ τ_y, D: bar.diameter, d: bar.bore, ρ_c: middle });
    if (here > torque) low = middle;
    else high = middle;
  }
  return presetToTwist(bar, (τ_y * L) / (G * ((low + high) / 2)), working);
}

function letGo(
  bar: YieldingBar,
  loaded: Pick<Preset, 'coreRadius' | 'torque' | 'twist'> & { readonly skin: Pascal },
  working: Working | undefined,
): Preset {
  const J = polarSecondMoment(bar, working);
  const outer = bar.diameter / 2;
  const inner = bar.bore / 2;
  const T = loaded.torque;
  const permanentTwist = permanent({ φ: loaded.twist, T, L: bar.length, G: bar.shearModulus, J }, working);
  const residualAtSkin = residual({ τ_l: loaded.skin, T, r: outer, J }, working);
  // in the elastic part stress follows the radius; past the core it is the yield stress
  const boreLoaded = inner < loaded.coreRadius ? (loaded.skin * inner) / loaded.coreRadius : loaded.skin;
  const residualAtBore = residual({ τ_l: boreLoaded, T, r: inner, J });
  return {
    coreRadius: loaded.coreRadius,
    torque: T,
    twist: loaded.twist,
    permanentTwist,
    residualAtSkin,
    residualAtBore,
    elasticRelease: Math.abs(residualAtSkin) <= bar.yieldShear && Math.abs(residualAtBore) <= bar.yieldShear,
  };
}

const permanent = formula({
  symbol: 'φ_p',
  means: 'twist that stays',
  is: 'φ - T*L/(G*J)',
  unit: 'rad',
  terms: {
    φ: { unit: 'rad', means: 'twist of the bar' },
    T: { unit: 'N m', means: 'presetting torque' },
    L: { unit: 'm', means: 'active length of the bar' },
    G: { unit: 'Pa', means: 'shear modulus of the bar' },
    J: { unit: 'm^4', means: 'polar second moment of the bar' },
  },
  source: 'SP-41; Beer, residual stresses in circular shafts',
});

const residual = formula({
  symbol: 'τ_r',
  means: 'shear stress that stays at the skin',
  is: 'τ_l - T*r/J',
  unit: 'Pa',
  terms: {
    τ_l: { unit: 'Pa', means: 'stress there under the presetting torque' },
    T: { unit: 'N m', means: 'presetting torque' },
    r: { unit: 'm', means: 'radius there' },
    J: { unit: 'm^4', means: 'polar second moment of the bar' },
  },
  source: 'SP-42; Beer, residual stresses in circular shafts',
});

/**
 * The hand of a bar: a straight line scribed along it becomes a right-hand or a left-hand helix under its
 * working torque. It is the same seen from either end, so a bar turned end for end keeps its hand; a bar moved
 * to the other side of the car does not suit it.
 */
export type Hand = 'right' | 'left';

/**
 * Hand in which a corner twists its bar in bump.
 *
 * @param turnInBump  sense in which the rocker end turns in bump about the direction from the anchor towards the
 *                    rocker end, by the right-hand rule
 */
export const workingHand = (turnInBump: 1 | -1): Hand => (turnInBump > 0 ? 'right' : 'left');

export interface Reversal {
  readonly what: string;
  /** Greatest torque against the preset hand, N m; 0 where only the hand is wrong. */
  readonly torque: NewtonMetre;
}

/**
 * What is wrong with using a preset bar so: fitted to the wrong side, or twisted backwards at droop.
 *
 * @param torques  torques over the travel, positive in bump
 */
export function reversals(of: {
  readonly presetHand: Hand | undefined;
  readonly workingHand: Hand;
  readonly torques: readonly NewtonMetre[];
}): readonly Reversal[] {
  if (of.presetHand === undefined) return [];
  const found: Reversal[] = [];
  const right = of.presetHand === of.workingHand;
  if (!right) {
    found.push({
      what: `the bar is preset ${of.presetHand} hand and this corner works it ${of.workingHand} hand: it belongs on the other side`,
      torque: Math.max(0, ...of.torques),
    });
    return found;
  }
  const least = Math.min(0, ...of.torques);
  if (least < 0) {
    found.push({
      what: `the bar is twisted backwards, against its preset, by up to ${spokenFigures(-least, 'N m')} within the travel`,
      torque: -least,
    });
  }
  return found;
}
