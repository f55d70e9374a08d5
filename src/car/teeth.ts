/** A pair of gears as the trade marks it: teeth of the driver, then of the driven, `13/35`. */
import { z } from 'zod';

export interface Teeth {
  readonly driver: number;
  readonly driven: number;
  /** `13/35`. */
  readonly text: string;
}

const FEWEST = 6;
const MOST = 99;

/** @returns nothing where it is no pair */
export function readTeeth(text: string): Teeth | undefined {
  const found = /^\s*(\d{1,3})\s*[/:]\s*(\d{1,3})\s*$/.exec(text);
  if (found === null) return undefined;
  const [driver, driven] = [Number(found[1]), Number(found[2])];
  const within = (count: number): boolean => count >= FEWEST && count <= MOST;
  return within(driver) && within(driven) ? { driver, driven, text: `${driver}/${driven}` } : undefined;
}

/** A field that holds a pair of gears. */
export const teeth = (means: string) =>
  z
    .string({ error: 'must be two counts of teeth, driver first, such as 13/35' })
    .transform((raw, context): Teeth => {
      const found = readTeeth(raw);
      if (found !== undefined) return found;
      context.addIssue({
        code: 'custom',
        message: `is "${raw}"; write two counts of teeth from ${FEWEST} to ${MOST}, driver first, such as 13/35`,
      });
      return z.NEVER;
    })
    .meta({ title: means });
