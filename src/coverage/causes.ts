import type { Vec2 } from '../base/vector.ts';
import { areaShadows } from '../sight/areaShadows.ts';
import { cutPolygon, halfPlanesOf } from '../sight/halfPlanes.ts';
import { SEEN, shareOut, type Partition } from '../sight/owners.ts';
import { chain } from '../sight/rings.ts';
import type { Shadows } from '../sight/shadows.ts';
import type { Window } from '../sight/sight.ts';
import { boundsOf, isSameArea, joined, type FoundSight } from '../sight/sightOf.ts';
import { trianglesArea, trianglesOf } from '../sight/triangulate.ts';
import { areasWhere, type FoundArea } from './areaWhere.ts';
import type { ConditionSets } from './conditions.ts';

/** Ranks of what hides: being inside a solid goes before any solid in the way, and that before a screen. */
const [BEHIND_SCREEN, BEHIND_SOLID, IN_SOLID] = [1, 2, 3];

/** Above so many shadows, what hides how much is told between bounds. */
export const MOST_SHADOWS = 5000;

/** Areas of the frame by what hides first; `inside` lies within solids. */
export interface Causes {
  /** By index of the solid or screen. */
  readonly byHider: ReadonlyMap<number, FoundArea>;
  readonly inside: FoundArea;
}

/**
 * What of the frame lies inside solids, and what hides the rest of what is not seen, exactly.
 * @param parts where areas are counted, as convex polygons
 * @param cut   triangles of the plane that lie inside solids
 * @returns     null where there are too many shadows or borders do not close: then only cells can tell
 */
export function causesOf(
  found: FoundSight,
  parts: readonly Window[],
  cut: Float64Array,
  conditions: ConditionSets,
): Causes | null {
  const { footing, frame, sight } = found;
  const code = { inside: sight.solids };
  const byHider = new Map<number, FoundArea>();
  if (frame === null) return { byHider, inside: { value: 0, bound: 0 } };
  const { shadows, rank } = ranked(found, areaShadows(cut, footing.foot, code.inside));
  if (shadows.count > MOST_SHADOWS) return null;
  for (const part of parts) {
    const corners = part.map(([a, b]): Vec2 => [a - footing.foot[0], b - footing.foot[1]]);
    const within = cutPolygon(corners, frame);
    if (within.length === 0) continue;
    const shared = shareOut(shadows, shadows.solid, rank, boundsOf(within, frame, halfPlanesOf(corners)));
    for (const owner of shared.areas.keys()) {
      const named = owner === SEEN && sight.lensInside !== null ? sight.lensInside : owner;
      if (named === SEEN) continue;
      const area = sight.framed
        ? { value: shared.areas.get(owner) ?? 0, bound: 0 }
        : framedArea(shared, owner, conditions);
      if (area === null) return null;
      const sum = byHider.get(named) ?? { value: 0, bound: 0 };
      byHider.set(named, { value: sum.value + area.value, bound: sum.bound + area.bound });
    }
  }
  const inside = byHider.get(code.inside) ?? { value: 0, bound: 0 };
  byHider.delete(code.inside);
  return { byHider, inside };
}

function ranked(
  { solids, screens, sight }: FoundSight,
  cut: Shadows,
): { shadows: Shadows; rank: Uint8Array } {
  // A lens inside a solid sees nothing, and that solid is what hides.
  const shadows = sight.lensInside === null ? joined(joined(solids, screens), cut) : cut;
  const rank = new Uint8Array(shadows.count).fill(IN_SOLID);
  if (sight.lensInside === null) {
    rank.fill(BEHIND_SOLID, 0, solids.count);
    rank.fill(BEHIND_SCREEN, solids.count, solids.count + screens.count);
  }
  return { shadows, rank };
}

/** The part of one owner's ground that a bent frame takes in. */
function framedArea({ borders, areas }: Partition, owner: number, sets: ConditionSets): FoundArea | null {
  const pieces = borders.flatMap(({ from, to, left, right }) =>
    left === owner ? [{ from, to, beyond: 0 }] : right === owner ? [{ from: to, to: from, beyond: 0 }] : [],
  );
  // A ring that ends a few micrometres off its beginning is closed straight: its area tells whether that is all.
  const triangles = trianglesOf(chain(pieces).rings);
  if (!isSameArea(trianglesArea(triangles), areas.get(owner) ?? 0)) return null;
  return areasWhere(triangles, sets.of, sets.count, [sets.framed], sets.sources)[0] ?? null;
}
