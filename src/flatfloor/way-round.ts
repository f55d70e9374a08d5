/** Which way round a screwed end or a tube is turned to make it longer or shorter, and from which end that is seen. */
import { TUBE_ENDS } from '../car/form/adjuster.ts';
import type { CarForm } from '../car/read.ts';

type Corner = CarForm['front']['left'];
type Bar = NonNullable<CarForm['front']['antiRollBar']>;

/** The thread of a rod, a track rod or toe link, or a drop link. */
export type LinkThread = NonNullable<
  Corner['rod']['thread'] | NonNullable<Corner['toeLink']>['thread'] | NonNullable<Bar['leftLink']>['thread']
>;

/** Hands of the threads, as the car file has them. */
export type Hands = 'left and right' | 'right only' | 'left only' | undefined;

export type Way = 'clockwise' | 'anticlockwise';

/**
 * The tube seen from its end with the right-hand thread, or a single end seen from its eye. Nothing where the file
 * does not say the hands.
 */
export const wayRound = (hands: Hands, longer: boolean): Way | undefined =>
  hands === undefined ? undefined : (hands === 'right only') === longer ? 'anticlockwise' : 'clockwise';

/** The two ends of a tube by their names: that with the right-hand thread, and the other. */
export interface TubeEnds {
  readonly rightHand: string;
  readonly leftHand: string;
}

/** Nothing where the file does not tell at which end the right-hand thread is. */
export function tubeEnds(
  of: keyof typeof TUBE_ENDS,
  { rightHandAt }: Pick<LinkThread, 'rightHandAt'>,
): TubeEnds | undefined {
  const leftHand = TUBE_ENDS[of].find((end) => end !== rightHandAt);
  return rightHandAt === undefined || leftHand === undefined
    ? undefined
    : { rightHand: rightHandAt, leftHand };
}

/** How the hand turns a tube, and where the eye is. */
export const tubeWords = (way: Way, rightHandAt: string | undefined): string =>
  rightHandAt === undefined
    ? `turn the tube ${way}, seen from its right-hand thread; the file does not tell which end that is`
    : `turn the tube ${way}, seen from the ${rightHandAt} end`;
