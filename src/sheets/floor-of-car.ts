/**
 * Sheets of the flat floor: asks the questions that each needs.
 *
 * In    what was asked, the head of the sheet
 * Out   a laid-out document, or the sentence that says why there is none
 */
import { adjustmentCard } from '../questions/adjustment-card.ts';
import { drawCar } from '../questions/drawing.ts';
import { AS_SURVEYED } from '../questions/figure.ts';
import { setUpSheet } from '../questions/set-up-sheet.ts';
import { adjustmentCardSheet } from './adjustment-card.ts';
import type { SheetAnswer } from './answer.ts';
import type { FloorSheetAsked } from './asked-sheet.ts';
import type { SheetHead } from './frame.ts';
import { setUpSheetOf } from './set-up-sheet.ts';
import type { TextMeasure } from './text-measure.ts';

type Head = Omit<SheetHead, 'title' | 'of'>;

export function setUpSheetOfCar(
  { car, read }: FloorSheetAsked,
  head: Head,
  measure: TextMeasure,
): SheetAnswer {
  const is = setUpSheet(car, read === undefined ? {} : { read });
  if (!is.reached) return { made: false, message: is.message };
  return { made: true, document: setUpSheetOf({ is, drawing: drawCar(car, AS_SURVEYED) }, head, measure) };
}

export function adjustmentCardOfCar(
  { car, moves = {} }: FloorSheetAsked,
  head: Head,
  measure: TextMeasure,
): SheetAnswer {
  const is = adjustmentCard(car, moves);
  if (!is.reached) return { made: false, message: is.message };
  return {
    made: true,
    document: adjustmentCardSheet({ is, drawing: drawCar(car, AS_SURVEYED) }, head, measure),
  };
}
