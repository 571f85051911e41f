import type { Plan, Situation } from './plan.ts';

/** The one situation of a new plan: by day, everything as it is drawn. */
export const asDrawn: Situation = {
  id: 'as-drawn',
  name: 'As drawn',
  night: false,
  away: [],
  leaves: {},
  treesInLeaf: null,
};

/** The situation of an id; null, that is as drawn, for null and for one that the plan does not have, or no longer. */
export const situationIn = ({ situations }: Plan, id: string | null): Situation | null =>
  id !== null && Object.hasOwn(situations, id) ? (situations[id] ?? null) : null;
