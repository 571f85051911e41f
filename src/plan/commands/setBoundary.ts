import type { Ring } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';

/** Replaces the client's own ground, a ring that runs counter-clockwise; null takes it away. */
export const setBoundary = (plan: Plan, boundary: Ring | null): Plan =>
  boundary === plan.boundary ? plan : { ...plan, boundary };
