/** What the car is doing, as an address asks it: the name of a case, or a case written out as JSON. */
import {
  type Car,
  type Doing,
  doingsOf,
  HANDED_ON,
  type NamedDoing,
  STANDING,
  WHEEL_NAMES,
} from '../questions/index.ts';
import type { Checked } from './asked.ts';
import { isMapping, wrong } from './asked-form.ts';

const AMOUNTS = ['longitudinal', 'lateral', 'vertical', 'speed', 'rack'] as const;
const FORCES = ['up', 'forward', 'left'] as const;

/** Words that go on the paper are cut to what a line may hold. */
const LONGEST_WORDS = 300;

export interface AskedDoing {
  readonly text: string;
  /** What the page calls a case that is written out. */
  readonly words?: string;
}

/** The case of that name, which the car may have of its own; or the one that is written out. */
export function checkedDoing({ text, words }: AskedDoing, car: Car): Checked<NamedDoing> {
  if (!text.startsWith('{')) {
    const known = doingsOf(car);
    const named = known.find(({ name }) => name === text);
    return named === undefined
      ? wrong(`"doing" is one of ${known.map(({ name }) => name).join(', ')}, or a case in JSON.`)
      : { ok: true, is: named };
  }
  const doing = doingOf(text);
  if (doing === undefined)
    return wrong('"doing" is no case: amounts in SI, strikes and contacts by wheel, and nothing else.');
  return { ok: true, is: { name: 'as asked', means: (words ?? 'as asked').slice(0, LONGEST_WORDS), doing } };
}

function doingOf(text: string): Doing | undefined {
  const read = parsed(text);
  if (!isMapping(read)) return undefined;
  const { strikes = {}, contacts = {}, frontBrakes, ...amounts } = read;
  const known = Object.keys(amounts).every((key) => (AMOUNTS as readonly string[]).includes(key));
  const byWheel = (of: unknown, each: (value: unknown) => boolean): boolean =>
    isMapping(of) &&
    Object.entries(of).every(
      ([wheel, value]) => (WHEEL_NAMES as readonly string[]).includes(wheel) && each(value),
    );
  const good =
    known &&
    Object.values(amounts).every(isAmount) &&
    (frontBrakes === undefined || isAmount(frontBrakes)) &&
    byWheel(strikes, isAmount) &&
    byWheel(contacts, isContact);
  return good ? { ...STANDING, ...(read as Partial<Doing>) } : undefined;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const isAmount = (value: unknown): boolean => typeof value === 'number' && Number.isFinite(value);

function isContact(value: unknown): boolean {
  if (!isMapping(value)) return false;
  const { by, ...forces } = value;
  return (
    isAmount(forces.up) &&
    Object.entries(forces).every(
      ([key, force]) => (FORCES as readonly string[]).includes(key) && isAmount(force),
    ) &&
    (by === undefined || (HANDED_ON as readonly unknown[]).includes(by))
  );
}
