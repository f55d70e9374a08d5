import assert from 'node:assert/strict';

/** Within `tolerance` (absolute) of what is expected. The caller says where the tolerance comes from. */
export function near(found: number, expected: number, tolerance: number, what = ''): void {
  assert.ok(
    Math.abs(found - expected) <= tolerance,
    `${what === '' ? '' : `${what}: `}found ${found}, expected ${expected} ± ${tolerance}`,
  );
}
