/** Figures of the rocker: how far it has turned, and the ratios between wheel, unit and bar, both ways round. */

import { formula, type Working } from '../../working/working.ts';
import type { SprungCorner, WheelForce } from '../sprung-corner.ts';
import { notesOf, type Put } from './note.ts';

const note = notesOf('rocker');
const first = { method: 'first derivative of the closed linkage', source: 'LP-13' } as const;
const second = { method: 'second derivative of the closed linkage', source: 'LP-13' } as const;

const angle = note({
  id: 'rockerAngle',
  means: 'rocker turned from the surveyed position',
  symbol: 'θ',
  unit: 'rad',
  anchor: 'rockerPivot',
  rank: 1,
  say: 'positive in bump',
  method: 'the linkage closed at this travel',
  source: 'LP-4',
});
const springPerWheel = note({
  id: 'springPerWheel',
  lead: true,
  means: 'spring per wheel: compression of the unit per wheel travel',
  symbol: 'r',
  unit: '1',
  anchor: 'damperRocker',
  rank: 1,
  ...first,
});
const wheelPerSpring = note({
  id: 'wheelPerSpring',
  means: 'wheel per spring: wheel travel per compression of the unit',
  symbol: 'i',
  unit: '1',
  anchor: 'damperRocker',
  rank: 2,
});
const ratioChange = note({
  id: 'ratioChange',
  means: 'change of spring per wheel with bump travel',
  symbol: 'r_z',
  unit: '1/m',
  anchor: 'damperRocker',
  rank: 3,
  ...second,
});
const twistPerWheel = note({
  id: 'twistPerWheel',
  means: 'rocker turn per wheel travel',
  symbol: 's',
  unit: 'rad/m',
  anchor: 'rockerPivot',
  rank: 1,
  ...first,
});
const wheelPerTwist = note({
  id: 'wheelPerTwist',
  means: 'wheel travel per rocker turn',
  symbol: 'j',
  unit: 'm/rad',
  anchor: 'rockerPivot',
  rank: 2,
});
const turnChange = note({
  id: 'turnChange',
  means: 'change of rocker turn per wheel with bump travel',
  symbol: 's_z',
  unit: 'rad/m^2',
  anchor: 'rockerPivot',
  rank: 3,
  ...second,
});

const inverse = formula({
  symbol: 'i',
  means: 'wheel per spring',
  is: '1/r',
  unit: '1',
  terms: { r: { unit: '1', means: 'spring per wheel' } },
  source: 'LP-44',
});

const inverseTurn = formula({
  symbol: 'j',
  means: 'wheel travel per rocker turn',
  is: '1/s',
  unit: 'm/rad',
  terms: { s: { unit: 'rad/m', means: 'rocker turn per wheel travel' } },
  source: 'LP-44',
});

export function rockerFigures(of: SprungCorner, now: WheelForce, put: Put, working?: Working): void {
  const { ratios } = now;
  put(angle, ratios.angle);
  put(twistPerWheel, ratios.turn);
  put(wheelPerTwist, inverseTurn({ s: ratios.turn }, working));
  put(turnChange, ratios.turnChange);
  if (!of.hasUnit) return;
  put(springPerWheel, ratios.unit);
  put(wheelPerSpring, inverse({ r: ratios.unit }, working));
  put(ratioChange, ratios.unitChange);
}
