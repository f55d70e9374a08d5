/** Which bolted joint is meant, as it is typed. */
import type { JointName } from '../questions/index.ts';
import { badAsk } from './outcome.ts';

const NAMES: Readonly<Record<string, JointName>> = {
  'engine-to-tub': 'engineToTub',
  'case-to-engine': 'caseToEngine',
};

export const JOINT_HELP = Object.keys(NAMES).join(' or ');
export const USUAL_JOINT = 'engine-to-tub';

/** @throws BadInput */
export function askedJoint(text: string): JointName {
  const joint = Object.hasOwn(NAMES, text) ? NAMES[text] : undefined;
  if (joint === undefined)
    throw badAsk('asked/joint', `--joint "${text}" is not known; write ${JOINT_HELP}.`);
  return joint;
}
