/** The cautions at the foot of sheets. They never say that a part may be used; they say what can hurt, and who rules. */

export const WHO_RULES =
  'The maker of the part, the rules that the car runs under and a competent person rule over this sheet. It is worked from the readings in the car file and is no better than they are.';

export const WOUND_BAR =
  'A wound torsion bar or a compressed coil holds energy enough to break bones. Let it off completely, with the wheel hanging and the maker\'s tool, before any bolt of rocker, anchor or platform is loosened; keep face and hands out of line with the bar.';

export const BAR_SKIN =
  'A nick, a scribed line, rust or a clamp mark on the shank of a bar starts a crack. Mark end faces only. A bar that has been dropped or marked is crack-checked before it is fitted again.';

export const UNDER_THE_CAR =
  'Work under the car only when it stands on stands made for it; a jack or a spring alone holds nothing up.';

export const MEASURED_SPREAD =
  'Figures are stated with one standard uncertainty (±) where the readings allow; about one result in three lies outside it.';

export const RECEIPT_TEST =
  'The receipt test twists the bar in its working hand only, behind a screen, with the lever restrained; stand clear of the lever and of the mass, and do not go above the torques in the table.';
