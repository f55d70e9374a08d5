/** Reads plain JSON field by field, and tells all that is wrong: where, what was found, what would do. */

import type { Vec3 } from '../../maths/vec3.ts';
import type { Problem } from '../../measured/problem.ts';

/** More of these are not told. */
const MOST_TOLD = 40;

export class Reader {
  readonly problems: Problem[] = [];

  wrong(path: string, message: string, remedy?: string): void {
    if (this.problems.length >= MOST_TOLD) return;
    this.problems.push({
      code: 'route/problem',
      message: `${path}: ${message}`,
      path,
      weight: 'error',
      ...(remedy === undefined ? {} : { remedy }),
    });
  }

  object(of: unknown, path: string): Readonly<Record<string, unknown>> {
    if (typeof of === 'object' && of !== null && !Array.isArray(of)) return of as Record<string, unknown>;
    this.wrong(path, `an object is wanted, found ${shown(of)}.`);
    return {};
  }

  list(of: unknown, path: string): readonly unknown[] {
    if (Array.isArray(of)) return of;
    this.wrong(path, `a list is wanted, found ${shown(of)}.`);
    return [];
  }

  number(of: unknown, path: string, low = -1e6, high = 1e6, remedy?: string): number {
    if (typeof of !== 'number' || !Number.isFinite(of)) {
      this.wrong(path, `a number is wanted, found ${shown(of)}.`);
      return low;
    }
    if (of < low || of > high) {
      this.wrong(
        path,
        `${of} is out of reach: ${low} to ${high} would do.`,
        remedy ?? unitHint(of, low, high),
      );
      return low;
    }
    return of;
  }

  whole(of: unknown, path: string, low: number, high: number): number {
    const read = this.number(of, path, low, high);
    if (Number.isInteger(read)) return read;
    this.wrong(path, `a whole number is wanted, found ${read}.`);
    return low;
  }

  text(of: unknown, path: string, allowed: readonly string[]): string {
    if (typeof of === 'string' && allowed.includes(of)) return of;
    this.wrong(path, `found ${shown(of)}; ${allowed.map((each) => `"${each}"`).join(' or ')} would do.`);
    return allowed[0]!;
  }

  vector(of: unknown, path: string): Vec3 {
    if (!Array.isArray(of) || of.length !== 3) {
      this.wrong(path, `three numbers [x, y, z] are wanted, found ${shown(of)}.`);
      return [0, 0, 0];
    }
    return [0, 1, 2].map((c) => this.number(of[c], `${path}[${c}]`, -1e5, 1e5)) as unknown as Vec3;
  }

  /** A unit direction: rounding is taken out, anything else is told. */
  direction(of: unknown, path: string): Vec3 {
    const before = this.problems.length;
    const v = this.vector(of, path);
    if (this.problems.length > before) return [1, 0, 0];
    const size = Math.hypot(...v);
    if (Math.abs(size - 1) > 2e-3) {
      this.wrong(
        path,
        `a unit direction is wanted; this one is ${size.toPrecision(4)} long.`,
        'Divide it by its length.',
      );
      return [1, 0, 0];
    }
    return [v[0] / size, v[1] / size, v[2] / size];
  }
}

export function shown(of: unknown): string {
  if (of === undefined) return 'nothing';
  const text = JSON.stringify(of) ?? String(of);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** Says which unit a length may have been written in, where one would fit. */
function unitHint(value: number, low: number, high: number): string | undefined {
  for (const [unit, factor] of [
    ['metres', 1000],
    ['inches', 25.4],
  ] as const)
    if (value * factor >= low && value * factor <= high)
      return `Lengths are in millimetres; in ${unit} this would be ${(value * factor).toPrecision(4)} mm.`;
  return undefined;
}
