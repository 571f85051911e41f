import type { Situation } from './plan.ts';

/** The one situation of a new plan: by day, everything as it is drawn. */
export const asDrawn: Situation = {
  id: 'as-drawn',
  name: 'As drawn',
  night: false,
  away: [],
  leaves: {},
  treesInLeaf: null,
};

/** Whether a situation leaves everything as it is drawn. */
export const isAsDrawn = ({ night, away, leaves, treesInLeaf }: Situation): boolean =>
  !night && away.length === 0 && Object.keys(leaves).length === 0 && treesInLeaf === null;
