/** What the workshop asks. The only way into the engine for page, command line, paper and server. */
export { AS_FILED, type Car, type CarRead, type CarSource } from '../car/read.ts';
export type { Cause } from '../gaspath/route/impossible.ts';
export type { RouteSolution } from '../gaspath/route/problem.ts';
export { type AdjusterRow, type AdjustersAnswer, type AdjustersReached, adjusterTable } from './adjusters.ts';
export {
  type Act,
  type AdjustmentCardAnswer,
  type AdjustmentCardReached,
  adjustmentCard,
  type CardMove,
} from './adjustment-card.ts';
export {
  type AxleAnswer,
  type AxleReached,
  axleFigures,
  carFigures,
  workingOfAxle,
  workingOfCar,
} from './axle.ts';
export {
  type BarAsked,
  type BarProposal,
  barForCoil,
  type NoProposal,
} from './bar-for-coil.ts';
export { barLadder, type LadderAnswer, type LadderAsked } from './bar-ladder.ts';
export { type BarPreload, barPreload } from './bar-preload.ts';
export { type BenchAnswer, type BenchAsked, benchTest } from './bench-test.ts';
export type { BodyForce, BodyForcesAnswer, BodyForcesReached } from './body-forces.ts';
export { caseForces } from './case-forces.ts';
export { caseAtPlane, type PlaneAnswer } from './case-plane.ts';
export * from './cautions.ts';
export { type CoilAsked, type CoilProposal, coilForBar } from './coil-for-bar.ts';
export { type ComparedRow, type Comparison, compareEvery, compareSpecs, paired } from './compare.ts';
export {
  compareJoints,
  compareLoads,
  type JointInSpec,
  type UnderLoadComparison,
} from './compare-under-load.ts';
export {
  type CornerAnswer,
  type CornerReached,
  cornerFigures,
  type NotReached,
} from './corner.ts';
export { type CornerCurves, type CurveColumn, type CurvesAsked, cornerCurves } from './curves.ts';
export {
  askedSo,
  type DayAnswer,
  type DayName,
  type DayQuestion,
  type DayRead,
  dayAnswer,
  readDay,
  settledDoings,
} from './day-texts.ts';
export { differenceWords, SAME } from './difference-words.ts';
export { doingsOf, type NamedDoing, spokenDoing, USUAL_DOINGS, usualDoing } from './doing-words.ts';
export { drawCar, drawCorner, WHEELS } from './drawing.ts';
export * from './drawing-types.ts';
export { drawnForces, type ForcesDrawn } from './drawn-forces.ts';
export { DEMONSTRATION_DAY } from './duty.ts';
export { easePart, type PartToEase } from './ease-parts.ts';
export { EASED, type EasedPrimaries, type EasingPrimaries, easePrimaries } from './ease-primaries.ts';
export { type EveryFigure, everyFigure, type PlacedFigure } from './every-figure.ts';
export type { FieldsRead, Texts } from './fields.ts';
export * from './figure.ts';
export { type FoundExhaust, foundExhaust, lookedFor } from './find-exhaust.ts';
export { findHeld, findSets, type SavedHeld } from './find-held.ts';
export {
  type FindingParts,
  findParts,
  type PartsAsked,
  type PartsStand,
  type SavedParts,
} from './find-parts.ts';
export {
  type FindingPrimaries,
  type FindingStands,
  type FoundPrimaries,
  findingStands,
  findPrimaries,
  foundPrimaries,
  type HoldingStands,
  type OneOfSets,
  type SavedFinding,
} from './find-primaries.ts';
export {
  type FloorAnswer,
  type FloorAsked,
  type FloorFigure,
  type ReadingWorking,
  sheetNames,
  standOnFloor,
} from './floor.ts';
export { aboardHold, HOLDS, type HoldName, holdWords } from './floor-holds.ts';
export {
  type BesideReadings,
  type DamperClicks,
  type FloorSheetRead,
  type FloorSheets,
  floorSheets,
  type SheetInstrument,
} from './floor-sheets.ts';
export { type FollowAsked, type Followed, followForce } from './follow.ts';
export { type ForSheet, forSheet } from './gauge-sheet.ts';
export {
  type GaugeAnswer,
  type GaugeName,
  type GaugeQuestion,
  type GaugeRead,
  gaugeAnswer,
  MOST_ROWS,
  readGauge,
  USUALLY_READ,
  withoutUnit,
  withUnit,
} from './gauge-texts.ts';
export type { GaugedAnswer, GaugedFigure, GaugedReached } from './gauged.ts';
export { askedMore, HOLD_WORDS, type HoldTold, holdingDoes, holdsTold } from './holding-words.ts';
export { hotTold, inCarTold, type ToldAsked, type ToldSection } from './in-car-told.ts';
export {
  hotGapWords,
  hotRows,
  hotVerdict,
  hotWords,
  nutsVerdict,
  removalWords,
  socketWords,
  spannerWords,
  wayWords,
} from './in-car-words.ts';
export {
  type DrawnFace,
  JOINT_NAMES,
  JOINT_WORDS,
  type JointAnswer,
  type JointName,
  type JointReached,
  jointOf,
  workingOfJoint,
} from './joint.ts';
export {
  type JointCases,
  type JointInCase,
  jointCases,
  shareLeft,
} from './joint-cases.ts';
export {
  figureNamed,
  figuresAt,
  type LargestOfMember,
  type LoadCases,
  type LoadsInCase,
  largestOf,
  loadCases,
  MEMBER_WORDS,
  MEMBERS,
  type MemberName,
} from './load-cases.ts';
export {
  type LoadsAnswer,
  type LoadsReached,
  loadsOf,
  type WheelLoads,
  workingOfLoads,
} from './loads.ts';
export * from './logged.ts';
export { type LookedAt, lookedTold } from './looked-at.ts';
export { type MaterialChoice, materialChoices } from './materials.ts';
export { type MirroredBank, mirroredBank, onImage, type PortMisfit, portMisfits } from './mirrored-bank.ts';
export { openCar, openLately } from './open-car.ts';
export { partByHand, partHandTold } from './part-by-hand.ts';
export { partHot, partInCar } from './part-in-car.ts';
export { partSection, partWords } from './part-words.ts';
export { type FiledPart, isPartsFile, readParts, writeParts } from './parts-file.ts';
export { type PartFiled, type PartsFiled, partsFiled } from './parts-filed.ts';
export { heldOfPart, type PartsHold } from './parts-holding.ts';
export { type CarPart, partNamed, partsOf, SECONDARIES } from './parts-of-car.ts';
export { type Banks, type PartPut, type PartsPut, partsProblem, sidesOf } from './parts-put.ts';
export {
  type BendGrip,
  type HandAsk,
  type HandKeep,
  type HandTold,
  PrimariesByHand,
  type SavedHand,
} from './primaries-by-hand.ts';
export { readPrimaries, writePrimaries } from './primaries-file.ts';
export { beats, passedWords, type RankedSet, rankedSets, type Weighed } from './primaries-front.ts';
export {
  HOLDABLE,
  type Holdable,
  type Holds,
  heldByFile,
  holdableOf,
  primariesHolding,
} from './primaries-holding.ts';
export type { HotGap, HotPipe, PrimariesHot } from './primaries-hot.ts';
export { type PrimariesInCar, primariesInCar } from './primaries-in-car.ts';
export {
  type CrankAsked,
  type MadeBy,
  type MadePipe,
  type PrimariesMade,
  primariesMade,
} from './primaries-made.ts';
export type { NutRoom, NutsReached, PrimariesNuts } from './primaries-nuts.ts';
export { type PartSet, partSets } from './primaries-parts.ts';
export { type ProblemPut, primariesProblem, type ScanInCar } from './primaries-problem.ts';
export type { PrimariesRemoval } from './primaries-removal.ts';
export { type PrimariesScene, primariesScene } from './primaries-scene.ts';
export {
  type PrimariesSet,
  type PrimaryOfSet,
  primariesBreaches,
  primariesSet,
  type TightPlace,
} from './primaries-set.ts';
export * from './primaries-shop.ts';
export { primariesTemplates, type TemplatesOfSet } from './primaries-templates.ts';
export type { ProposedBar } from './proposed-bar.ts';
export { type StateOfReadings, stateOfReadings } from './readings.ts';
export * from './running.ts';
export { type ScanAnswer, scanForms, scanOf } from './scans.ts';
export { type FiledSet, type NoFiledSet, type SetOfFile, setFiled } from './set-filed.ts';
export {
  nothingWords,
  provedWords,
  type SetUpAnswer,
  type SetUpAsked,
  type SetUpMove,
  type SetUpReached,
  solveSetUp,
  USUALLY_MOVED,
} from './set-up.ts';
export {
  type SetUpSheetAnswer,
  type SetUpSheetAsked,
  type SetUpSheetReached,
  SHEET_STATES,
  setUpSheet,
} from './set-up-sheet.ts';
export { type SheetDoubt, sheetLooked } from './sheet-looked.ts';
export {
  type AtKnot,
  knotsOf,
  knotsRound,
  SLID,
  type Slid,
  type SlideRange,
  slideRange,
  slidTo,
  withSpreadBetween,
} from './slid-case.ts';
export { type SurveyAnswer, surveyAnswer } from './survey.ts';
export {
  figuresToSet,
  type TightenedSort,
  type TightenedStud,
  type TighteningAnswer,
  type TighteningReached,
  type TorqueFigure,
  tighteningOf,
} from './tightening.ts';
export type { TravelRange } from './travel-range.ts';
export { THROUGH_THE_JOINT, tubForces } from './tub-forces.ts';
export { type WeighingAnswer, weighing } from './weighing.ts';
export { type WorkingAnswer, type WorkingAsked, type WorkingReached, workingOf } from './working.ts';
