import type { Situation } from './plan.ts';

/** The one situation of a new plan: by day, everything as it is drawn. */
export const asDrawn: Situation = {
  id: 'as-drawn',
  name: 'As drawn',
  night: false,
  away: [],
  leaves: {},
  treesInLeaf: true,
};
