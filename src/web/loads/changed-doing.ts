/** What of a case is typed otherwise, as it stands in the address: SI, and only what is different. */
import { type Contact, type Doing, HANDED_ON, WHEEL_NAMES, type WheelName } from '../../questions/index.ts';

export type ChangedDoing = Partial<Doing>;

const NUMBERS = ['longitudinal', 'lateral', 'vertical', 'speed', 'rack', 'frontBrakes'] as const;

const record = (of: unknown): Readonly<Record<string, unknown>> =>
  typeof of === 'object' && of !== null ? (of as Record<string, unknown>) : {};

const finite = (of: unknown): of is number =>
  typeof of === 'number' && Number.isFinite(of) && Math.abs(of) < 1e6;

/** The changes that an address holds; what is none of them is passed over, whoever wrote the address. */
export function changedIn(text: string | null): { readonly changed?: ChangedDoing } {
  if (text === null) return {};
  let asked: Readonly<Record<string, unknown>>;
  try {
    asked = record(JSON.parse(text));
  } catch {
    return {};
  }
  const wheels = <T>(key: string, read: (of: unknown) => T | undefined): Partial<Record<WheelName, T>> =>
    Object.fromEntries(
      WHEEL_NAMES.flatMap((wheel) => {
        const is = read(record(asked[key])[wheel]);
        return is === undefined ? [] : [[wheel, is]];
      }),
    );
  const changed: ChangedDoing = {
    ...Object.fromEntries(NUMBERS.filter((key) => finite(asked[key])).map((key) => [key, asked[key]])),
    ...('strikes' in asked
      ? { strikes: wheels('strikes', (of) => (finite(of) && of >= 0 ? of : undefined)) }
      : {}),
    ...('contacts' in asked ? { contacts: wheels('contacts', contactIn) } : {}),
  };
  return Object.keys(changed).length === 0 ? {} : { changed };
}

function contactIn(of: unknown): Contact | undefined {
  const { up, forward, left, by } = record(of);
  if (!finite(up) || up < 0) return undefined;
  const taken = HANDED_ON.find((each) => each === by);
  return {
    up,
    ...(finite(forward) ? { forward } : {}),
    ...(finite(left) ? { left } : {}),
    ...(taken === undefined ? {} : { by: taken }),
  };
}
