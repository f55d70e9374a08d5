/** Which way round a screwed end or a tube is turned to make it longer or shorter. */

/** Hands of the threads, as the car file has them. */
export type Hands = 'left and right' | 'right only' | 'left only' | undefined;

/**
 * The tube seen from its end with the right-hand thread, or a single end seen from its eye. Nothing where the file
 * does not say the hands.
 */
export const wayRound = (hands: Hands, longer: boolean): 'clockwise' | 'anticlockwise' | undefined =>
  hands === undefined ? undefined : (hands === 'right only') === longer ? 'anticlockwise' : 'clockwise';
