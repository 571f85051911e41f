import type { Vec2 } from '../base/vector.ts';
import { movedRings, NO_RINGS, straightRings, type ArcRings } from '../sight/arcRings.ts';
import { levelRings } from '../sight/levelRings.ts';
import type { ConditionSets } from './conditions.ts';
import { refine } from './fineMesh.ts';
import { LevelCurve } from './levelCurve.ts';
import { polarMesh } from './polarMesh.ts';

/**
 * The outlines of what one camera covers at each band or better: seen ground cut by the curves on which its conditions
 * turn, straight edges exact, curves in arcs. Plane coordinates.
 * @param seen   rings of what it sees, plane coordinates
 * @param foot   of the lens, plane coordinates; what `sets` reckon from
 * @param delta  of the lens from the plane, m
 * @param ground where it counts; null: everywhere
 * @returns      one a band, each within the one before
 */
export function bandOutlines(
  seen: readonly Float64Array[],
  sets: ConditionSets,
  foot: Vec2,
  delta: number,
  ground: ArcRings | null,
): readonly ArcRings[] {
  const { of, count, sources, atLeast } = sets;
  const away: Vec2 = [-foot[0], -foot[1]];
  const whole = movedRings(straightRings(seen), away);
  const counted = ground === null ? whole : levelRings([whole, movedRings(ground, away)], 2);
  if (counted.corners.length === 0) return atLeast.map(() => NO_RINGS);
  const level = new LevelCurve(refine(polarMesh(of, count, counted, delta), sources), sources);
  const curves = new Map<number, ArcRings | null>();
  const curve = (condition: number): ArcRings | null => {
    const known = curves.get(condition);
    if (known !== undefined) return known;
    const made = level.rings(condition);
    curves.set(condition, made);
    return made;
  };
  const cut = (from: ArcRings, conditions: readonly number[]): ArcRings => {
    const bounds = conditions.flatMap((condition) => curve(condition) ?? []);
    if (bounds.length === 0 || from.corners.length === 0) return from;
    return bounds.some(({ corners }) => corners.length === 0)
      ? NO_RINGS
      : levelRings([from, ...bounds], bounds.length + 1);
  };
  const [first = []] = atLeast;
  const common = first.filter((condition) => atLeast.every((set) => set.includes(condition)));
  const base = cut(counted, common);
  return atLeast.map((set) =>
    movedRings(
      cut(
        base,
        set.filter((condition) => !common.includes(condition)),
      ),
      foot,
    ),
  );
}
