/** By what a wheel hands on a fore and aft force: brake on the upright, shaft to the case, or its spin alone. */
export const HANDED_ON = ['brake', 'shaft', 'spin'] as const;
export type HandedOn = (typeof HANDED_ON)[number];
