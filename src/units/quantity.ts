/**
 * Numbers that know their unit.
 *
 * All numbers inside Flatpatch are SI. A `Quantity<'m'>` is a plain number to the machine; to the compiler it
 * is metres, and handing metres to something that wants newtons does not compile. Arithmetic gives a plain
 * number again, so the end of a function states its unit anew by its return type.
 */
declare const unitOf: unique symbol;

/** A number in the SI unit named by `U`. A plain number may be given for one; another unit may not. */
export type Quantity<U extends string> = number & { readonly [unitOf]?: U };

export type Metre = Quantity<'m'>;
export type SquareMetre = Quantity<'m^2'>;
export type Radian = Quantity<'rad'>;
export type Newton = Quantity<'N'>;
export type NewtonMetre = Quantity<'N m'>;
export type NewtonPerMetre = Quantity<'N/m'>;
export type NewtonMetrePerRadian = Quantity<'N m/rad'>;
export type NewtonSecondPerMetre = Quantity<'N s/m'>;
export type Pascal = Quantity<'Pa'>;
/** A difference of temperature; places on a scale are kelvin too. */
export type Kelvin = Quantity<'K'>;
export type Kilogram = Quantity<'kg'>;
export type KilogramPerCubicMetre = Quantity<'kg/m^3'>;
export type KilogramSquareMetre = Quantity<'kg m^2'>;
export type Metre4 = Quantity<'m^4'>;
export type Hertz = Quantity<'Hz'>;
export type MetrePerSecond = Quantity<'m/s'>;
export type Second = Quantity<'s'>;
export type RadianPerMetre = Quantity<'rad/m'>;
/** A pure number: a ratio, a count, a share. */
export type Ratio = Quantity<'1'>;

/** Standard acceleration of free fall, m/s². Exact by definition (3rd CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;
