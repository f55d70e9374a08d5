/** Torques as a wrench is set: to the marks of its scale, in the workshop's own unit. */
import { plain, printedUnit, type Speech, spokenAmount, spokenUnit } from '../units/show.ts';
import { fromSI, toSI } from '../units/unit.ts';

/** Scales of hand wrenches: half units on the small ones, whole units above. Common practice, no source. */
const FINE = 0.5;
const FINE_UP_TO = 40;

/** N m to what the wrench can be set to, in newton metres again. */
export function wrenchMark(torque: number, speech: Speech): number {
  const unit = spokenUnit('N m', speech);
  const spoken = fromSI(torque, unit);
  const step = spoken < FINE_UP_TO ? FINE : 1;
  return toSI(Math.round(spoken / step) * step, unit);
}

/** `62 N·m`, `45.5 lbf·ft`; never more digits than the scale has. */
export function wrenchWords(torque: number, speech: Speech): string {
  const unit = spokenUnit('N m', speech);
  const mark = fromSI(wrenchMark(torque, speech), unit);
  return `${plain(mark, Number.isInteger(Number(mark.toFixed(3))) ? 0 : 1)} ${printedUnit(unit)}`;
}

/** The setting, and what it is in the other unit: `62 N·m [45.7 lbf·ft]`. */
export function bothWrenchWords(torque: number, speech: Speech): string {
  const other: Speech = speech === 'mm-N' ? 'in-lbf' : 'mm-N';
  const unit = spokenUnit('N m', other);
  const same = fromSI(wrenchMark(torque, speech), unit);
  return `${wrenchWords(torque, speech)} [${plain(same, 1)} ${printedUnit(unit)}]`;
}

/** A torque that nobody sets, such as that at the nut behind a crowfoot: `44.8 N·m [33.0 lbf·ft]`. */
export function bothTorqueWords(torque: number, speech: Speech): string {
  const [own, other] = (speech === 'mm-N' ? ['mm-N', 'in-lbf'] : ['in-lbf', 'mm-N']) as [Speech, Speech];
  return `${spokenAmount(torque, 'N m', 1, own)} [${spokenAmount(torque, 'N m', 1, other)}]`;
}
