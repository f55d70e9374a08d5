/** What is said where the hand is about to act. One list, so that page, command line and paper say the same. */

/** Under every answer. */
export const STANDING_CAUTION =
  'Estimates from measurements, to be confirmed by measurement and by a competent engineer. The makers of car, engine and parts, the governing body and local rules always come first.';

export const WOUND_BAR_CAUTION =
  'A wound bar holds energy. Unload it on the stand before the anchor is touched, keep clear of the line of the bar, and never turn a preset bar against its hand.';

export const COILED_SPRING_CAUTION =
  'A compressed spring holds energy. Let it off in a proper compressor before the platform or top nut is undone.';

export const GAS_DAMPER_CAUTION = 'Dampers are under gas pressure: do not open, heat or drill one.';

export const JACKING_CAUTION =
  'Stands under the car before a hand goes under it; a jack alone holds nothing.';

export const CRACK_TEST_CAUTION =
  'Crack tests are for certified inspectors; a figure here does not take the place of one.';

export const LOAD_CAUTION =
  'A load case is a picture of what a car may meet, not a limit of this one. Parts of unknown history carry less than their drawing; the maker and a licensed engineer decide what may run.';

export const JOINT_CAUTION =
  'The studs hold the car together behind the driver. Torque only cold, with the lubricant that is named and nothing else, dowels home and the face closed by hand first. Where the engine builder or the maker gives a figure, that figure rules.';

export const EXHAUST_CAUTION =
  'A primary runs hot enough to light cloth, composite and fuel. A clearance on the drawing is cold and of what was scanned: prove it on the car with clay or feelers, cold, rocked on its mounts, and again after a heat run. Length and diameter are the engine builder’s; weld, purge and fume are for those trained in it.';

export const SET_UP_CAUTION =
  'Stands under the car before a hand goes under it or a rod comes off; a jack alone holds nothing. Every jam nut that was let go is locked again, marked, and the thread engaged is looked at through its witness hole. Shims out means bolts out: torque by the maker’s figure. Wheels back on by the usual drill, and a second pair of eyes before the car rolls.';

export const LOOSE_NUT_CAUTION =
  'The last sheet says that a lock nut, lock ring or bolt is not tight, or off its mark. A rod that turns by itself comes out of its thread: the car does not roll before every one is tight, marked, and seen by a second pair of eyes.';

export const PRESSURE_CAUTION =
  'Tyre pressures stay between what the maker of the tyre allows; a tyre on a rim is let down before anything on it is undone.';

export const GAS_TYRE_CAUTION =
  'The tyre maker’s least and greatest pressures rule, cold and hot, at this camber and speed. Read again after setting, with the gauge that read the target. A bead is seated in a cage and never above the maker’s figure; nitrogen takes the place of breath in a closed cab.';

export const GEARBOX_CAUTION =
  'Both wheels of a pair carry the same two counts of teeth: read them on both before they go on. Dogs, rings and selectors are looked at with each change, and crack tests are for certified inspectors. The engine builder’s limit rules, and a missed change turns the engine further than any chart.';

export const UNDERSIDE_CAUTION =
  'A floor that strikes the road can take the load off the tyres at once. Prove heights by rub marks on the car, from a low speed up; least height and skirts are the rules’.';

export const BRAKE_CAUTION =
  'Brakes stop the car or do not. A rear axle that locks first spins it: set front first and prove it on a straight, from low speeds up. Pump the pedal before the car rolls after any work on pads, discs or bar. Least thickness, fluid and pads are their makers’ to say; a crack that reaches an edge or catches the nail ends a disc.';

export const FUEL_CAUTION =
  'Fuel is handled earthed, engine off, extinguisher manned, nobody aboard, in the open. A cell is filled no further than its maker allows; cell, vents and filler are dated parts. What goes in is measured, not read from a line on a can.';
