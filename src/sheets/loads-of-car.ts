/**
 * Sheets of the whole car under what it is doing, and of its bolted joints: asks the questions that each needs.
 *
 * In    what was asked, the head of the sheet
 * Out   a laid-out document, or the sentence that says why there is none
 */
import { caseForces } from '../questions/case-forces.ts';
import type { NamedDoing } from '../questions/doing-words.ts';
import { type JointName, jointOf } from '../questions/joint.ts';
import { jointCases } from '../questions/joint-cases.ts';
import { loadCases } from '../questions/load-cases.ts';
import { loadsOf } from '../questions/loads.ts';
import { tighteningOf } from '../questions/tightening.ts';
import type { SheetAnswer } from './answer.ts';
import type { LoadSheetAsked } from './asked-sheet.ts';
import type { SheetHead } from './frame.ts';
import { jointSheet } from './joint-sheet.ts';
import { allCasesSheet } from './load-sheet-all.ts';
import { oneCaseSheet } from './load-sheet-one.ts';
import type { TextMeasure } from './text-measure.ts';
import { tighteningCard } from './tightening-card.ts';

type Head = Omit<SheetHead, 'title' | 'of'>;

const USUAL_JOINT: JointName = 'engineToTub';

const none = (message: string): SheetAnswer => ({ made: false, message });

export function loadSheetOf({ car, doing }: LoadSheetAsked, head: Head, measure: TextMeasure): SheetAnswer {
  return doing === undefined ? allCases(car, head, measure) : oneCase(car, doing, head, measure);
}

function oneCase(
  car: LoadSheetAsked['car'],
  doing: NamedDoing,
  head: Head,
  measure: TextMeasure,
): SheetAnswer {
  const loads = loadsOf(car, doing.doing);
  if (!loads.reached) return none(loads.message);
  const gearCase = caseForces(car, doing.doing);
  const matter = { doing, loads, ...(gearCase.reached ? { gearCase } : {}) };
  return { made: true, document: oneCaseSheet(matter, head, measure) };
}

function allCases(car: LoadSheetAsked['car'], head: Head, measure: TextMeasure): SheetAnswer {
  const cases = loadCases(car);
  if (cases.cases.length === 0) return none(cases.without[0]!.message);
  return { made: true, document: allCasesSheet(cases, head, measure) };
}

export function jointSheetOf(
  { car, doing, joint = USUAL_JOINT }: LoadSheetAsked,
  head: Head,
  measure: TextMeasure,
): SheetAnswer {
  const cases = jointCases(car, joint);
  const under = doing ?? cases.hardest?.doing;
  if (under === undefined) return none(cases.without[0]!.message);
  const is = jointOf(car, joint, under.doing);
  if (!is.reached) return none(is.message);
  return { made: true, document: jointSheet({ doing: under, is, cases }, head, measure) };
}

export function tighteningCardOf(
  { car, joint = USUAL_JOINT }: LoadSheetAsked,
  head: Head,
  measure: TextMeasure,
): SheetAnswer {
  const is = tighteningOf(car, joint);
  return is.reached ? { made: true, document: tighteningCard(is, head, measure) } : none(is.message);
}
