import { groundHeight } from '../../model/ground.ts';
import type { Plan } from '../../plan/plan.ts';
import { shapeOf, type Shape } from './shapeOf.ts';

/** What has corners, by its id: a structure, a patch, or `boundary`; null where there is none. */
export function shapeIn(plan: Plan, id: string): { readonly name: string; readonly shape: Shape } | null {
  const level = groundHeight(plan.ground);
  if (id === 'boundary') return plan.boundary && { name: 'the boundary', shape: flat(plan.boundary, level) };
  const patch = Object.hasOwn(plan.patches, id) ? plan.patches[id] : undefined;
  if (patch) return { name: patch.name, shape: flat(patch.outline, level) };
  const structure = Object.hasOwn(plan.structures, id) ? plan.structures[id] : undefined;
  const shape = structure && shapeOf(structure);
  return structure && shape ? { name: structure.name, shape } : null;
}

const flat = (corners: Shape['corners'], level: number): Shape => ({
  corners,
  closed: true,
  base: level,
  top: level,
});
