/** Names of the flat floor's readings in the trade's words. */
import type { WheelName } from '../loadpath/loads/doing.ts';

const KINDS: Readonly<Record<string, string>> = {
  weight: 'weight',
  total: 'weight of the whole',
  cross: 'cross weight (right front and left rear)',
  frontShare: 'front share',
  leftShare: 'left share',
  height: 'height',
  ride: 'tub above survey',
  rake: 'rake',
  camber: 'camber',
  toe: 'toe',
  toeAtRim: 'toe at the rim',
  caster: 'caster',
  track: 'track',
  wheelbase: 'wheelbase',
  barTorque: 'torque of the anti-roll bar',
  unitLength: 'damper, eye to eye',
  droop: 'droop',
};

export const WHEEL_WORDS: Readonly<Record<WheelName, string>> = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
};
const PLACES: Readonly<Record<string, string>> = WHEEL_WORDS;

/** `weight.frontLeft` as `weight, front left`. */
export function readingWords(id: string): string {
  const [kind = '', ...rest] = id.split('.');
  const of = rest.join('.');
  return of === '' ? (KINDS[kind] ?? kind) : `${KINDS[kind] ?? kind}, ${PLACES[of] ?? of}`;
}
