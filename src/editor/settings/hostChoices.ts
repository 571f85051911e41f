import type { HostFace } from '../../model/face.ts';
import { hostFaces } from '../../model/faces.ts';
import type { Structure, StructureKind } from '../../model/structure.ts';
import type { Plan } from '../../plan/plan.ts';

const HOSTS: ReadonlySet<StructureKind> = new Set(['building', 'barrier', 'canopy', 'block']);

/** Structures that a camera can be fixed to, in the order of the plan. */
const hostsOf = (plan: Plan): readonly Structure[] =>
  plan.structureOrder.flatMap((id) => {
    const structure = plan.structures[id];
    return structure && HOSTS.has(structure.kind) ? [structure] : [];
  });

/** More than this many hosts are too long a list: the nearest are offered. */
const OFFERED = 100;

/** Structures that a camera near a point may be fixed to, in the order of the plan; `held`, its present host, always. */
export function hostsNear(plan: Plan, [x, y]: readonly [number, number, ...number[]], held: string | null) {
  const hosts = hostsOf(plan);
  if (hosts.length <= OFFERED) return hosts;
  const away = (structure: Structure): number => {
    if (structure.id === held) return -1;
    const corners = 'outline' in structure ? structure.outline : 'line' in structure ? structure.line : [];
    return Math.min(...corners.map(([cx, cy]) => Math.hypot(cx - x, cy - y)));
  };
  const near = new Set(
    hosts
      .map((one) => ({ one, far: away(one) }))
      .toSorted((a, b) => a.far - b.far)
      .slice(0, OFFERED)
      .map(({ one }) => one),
  );
  return hosts.filter((one) => near.has(one));
}

/** The faces of a structure that a mount can be fixed to: walls, or the soffits under eaves. */
export function facesOf(plan: Plan, host: string, sort: HostFace['sort']): readonly HostFace[] {
  const structure = plan.structures[host];
  return structure ? hostFaces(structure).filter((face) => face.sort === sort) : [];
}
