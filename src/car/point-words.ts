/** Points in the trade's words within any sentence: `front.left.lowerOuter` becomes "front left lower outer". */
export const pointsInWords = (text: string): string =>
  text.replace(
    /\b(front|rear)\.(left|right)\.(\w+)/g,
    (_, end: string, side: string, point: string) => `${end} ${side} ${pointInWords(point)}`,
  );

/** `lowerOuter` becomes "lower outer". */
export const pointInWords = (point: string): string =>
  point.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
