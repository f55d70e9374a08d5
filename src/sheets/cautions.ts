/** Cautions that only paper needs; those of the answers stand in questions/cautions.ts. */

export const BAR_SKIN =
  'A nick, scribed line, rust or clamp mark on the shank of a bar starts a crack: mark end faces only. Crack-test a bar that was dropped or marked.';

export const RECEIPT_TEST =
  'Twist a bar under test in its working hand only, lever restrained, behind a screen; stand clear; never above the torques in the table.';
