/** Cautions that only paper needs; those of the answers stand in questions/cautions.ts. */

export const BAR_SKIN =
  'A nick, a scribed line, rust or a clamp mark on the shank of a bar starts a crack: mark end faces only. A bar that was dropped or marked is crack-tested before it is fitted again.';

export const RECEIPT_TEST =
  'Twist a bar under test in its working hand only, behind a screen, with the lever restrained. Stand clear of lever and masses; do not go above the torques in the table.';
