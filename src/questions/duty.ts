/** What a spring goes through on a day, where nobody has logged it: assumed, and said so beside every life. */

/** A demonstration day: parts of the full-bump stress and how often. One repeat is one day. */
export const DEMONSTRATION_DAY = [
  { what: 'running over the track', low: 0.25, high: 0.5, cycles: 6000 },
  { what: 'braking, corners and bumps', low: 0.15, high: 0.7, cycles: 800 },
  { what: 'kerbs', low: 0.05, high: 0.95, cycles: 40 },
  { what: 'up on the stands and down', low: 0, high: 0.35, cycles: 10 },
] as const;
