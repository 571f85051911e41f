import type { SurfaceKey, Target } from '../coverage/target.ts';
import { signedArea } from '../model/ring.ts';
import type { Solid } from '../model/solid.ts';
import { patchSurface, roofSurfaces, wallSurfaces, type FlatSurface } from '../model/surface.ts';
import type { Plan } from '../plan/plan.ts';

/** All surfaces of a plan that coverage can be asked for, in its order: patches, then walls and roofs by structure. */
export function surfacesOf(plan: Plan, solids: readonly Solid[]): readonly FlatSurface[] {
  const patches = plan.patchOrder.flatMap((id) => plan.patches[id] ?? []).map(patchSurface);
  const faces = plan.structureOrder.flatMap((id) => facesOf(plan, solids, id));
  return [...patches, ...faces];
}

function facesOf(plan: Plan, solids: readonly Solid[], id: string): readonly FlatSurface[] {
  const structure = plan.structures[id];
  if (structure === undefined) return [];
  const own = solids.filter((solid) => solid.structure === id);
  return own.length === 0 ? [] : [...wallSurfaces(structure), ...roofSurfaces(structure, own)];
}

/** The surface that a key names; null where the plan has none, or its structure is away. */
function surfaceOf(plan: Plan, solids: readonly Solid[], key: SurfaceKey): FlatSurface | null {
  if (key.of === 'patch') {
    const patch = plan.patches[key.patch];
    return patch === undefined ? null : patchSurface(patch);
  }
  const faces = facesOf(plan, solids, key.structure);
  return faces.find(({ of, face }) => of === key.of && face === key.face) ?? null;
}

/** The key of a surface, by which a question names it. */
export const surfaceKey = ({ of, owner, face }: FlatSurface): SurfaceKey =>
  of === 'patch' ? { of, patch: owner } : { of, structure: owner, face };

/** Area of a surface, m². */
export const surfaceArea = ({ rings }: FlatSurface): number =>
  rings.reduce((sum, ring) => sum + Math.abs(signedArea(ring)), 0);

/** What a question asks for: a flat surface, or the ground where that surface is gone. */
export function askedSurface(
  plan: Plan,
  { solids }: { readonly solids: readonly Solid[] },
  target: Target,
): { readonly surface: FlatSurface | null; readonly target: Target } {
  if (target.kind !== 'surface') return { surface: null, target };
  const surface = surfaceOf(plan, solids, target.surface);
  return surface === null ? { surface, target: { kind: 'ground', height: 0 } } : { surface, target };
}
