import type { Vec3 } from '../../base/vector.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import type { Model } from '../Model.ts';
import { turnTo } from '../orbit.ts';

/**
 * Looks straight at the wall pointed at; else at the one that a selected camera is fixed to, or that the selection shows
 * most of. Tells whether there was one.
 */
export function squareOn(model: Model, at: Pointed | null = model.pointedOver()): boolean {
  const { assessment, editor } = model;
  const { selected } = editor.store.getState();
  const struck = at?.struck ?? null;
  if (struck && struck.structure !== null && Math.abs(struck.normal[2]) < 0.2)
    return face(model, struck.normal, struck.point);
  if (!assessment || !selected || (selected.kind !== 'camera' && selected.kind !== 'structure')) return false;
  const outward =
    selected.kind === 'camera'
      ? (assessment.scene.fixings.find(({ camera }) => camera === selected.id)?.outward ?? null)
      : nearestWall(model, selected.id);
  if (!outward || Math.hypot(outward[0], outward[1]) < 0.1) return false;
  return face(model, outward, model.pivotFor(null));
}

function face({ view }: Model, outward: Vec3, about: Vec3): boolean {
  const bearing = (Math.atan2(-outward[0], -outward[1]) * 180) / Math.PI;
  view.enter(turnTo(view.outer, about, bearing, 0));
  return true;
}

/** The outward direction of the widest wall of a structure among those turned to the viewer. */
function nearestWall({ assessment, view }: Model, id: string): Vec3 | null {
  const widths = new Map<string, { readonly outward: Vec3; area: number }>();
  const { ahead } = view.sheet;
  for (const { structure, positions: p, triangles } of assessment?.scene.solids ?? []) {
    if (structure !== id) continue;
    for (let i = 0; i + 2 < triangles.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => {
        const at = (triangles[i + k] ?? 0) * 3;
        return [p[at] ?? 0, p[at + 1] ?? 0, p[at + 2] ?? 0] as const;
      });
      if (!a || !b || !c) continue;
      const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
      const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
      const n: Vec3 = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
      const size = Math.hypot(...n);
      if (size === 0 || Math.abs(n[2]) > 0.2 * size || n[0] * ahead[0] + n[1] * ahead[1] > -0.3 * size)
        continue;
      const outward: Vec3 = [n[0] / size, n[1] / size, 0];
      const key = outward.map((part) => part.toFixed(2)).join();
      const known = widths.get(key) ?? { outward, area: 0 };
      known.area += size / 2;
      widths.set(key, known);
    }
  }
  return [...widths.values()].sort((a, b) => b.area - a.area)[0]?.outward ?? null;
}
