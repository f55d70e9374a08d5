/**
 * Which unit a scan is in, told by its size: a cover, a floor, a bay of the car is between a hand and a car long.
 *
 * In    the longest side of its upright box, as written; the unit that the car file names for it
 * Out   the units in which the size could be that of a part of a car, and whether the one named is among them
 */
import type { Metre } from '../units/quantity.ts';

export const SCAN_UNITS = { mm: 0.001, cm: 0.01, in: 0.0254, m: 1 } as const;
export type ScanUnit = keyof typeof SCAN_UNITS;

/** Longest side of what is scanned: shorter is a detail, longer than any car (common practice, no source). */
const LEAST: Metre = 0.15;
const MOST: Metre = 6;

export const possibleUnits = (longest: number): readonly ScanUnit[] =>
  (Object.keys(SCAN_UNITS) as ScanUnit[]).filter((unit) => {
    const size = longest * SCAN_UNITS[unit];
    return size >= LEAST && size <= MOST;
  });
