import type { Vec2 } from '../base/vector.ts';
import { closedAt } from '../sight/closing.ts';
import { regionParts } from '../sight/regionParts.ts';
import type { Window } from '../sight/sight.ts';
import { leftWithin, type FoundSight } from '../sight/sightOf.ts';
import { areasWhere, type FoundArea } from './areaWhere.ts';
import type { ConditionSets } from './conditions.ts';

/** Above so many sheets of screens in the frame, what they hide is told between bounds: parts may double with each. */
const MOST_SHEETS = 8;

/**
 * What screens hide that are seen at so low an angle to their face that they close up, by solid: of the ground that no solid
 * hides and that is not inside one. Where several sheets have closed up over a place the lower index is named.
 * @param cut triangles of the plane that lie inside solids
 * @returns   null where there are too many sheets, or they cannot be laid over one another
 */
export function closedAreas(
  found: FoundSight,
  parts: readonly Window[],
  cut: Float64Array,
  conditions: ConditionSets,
): ReadonlyMap<number, FoundArea> | null {
  const { sheets, footing, frame, closing, sight } = found;
  const sums = new Map<number, FoundArea>();
  if (sheets.length > MOST_SHEETS) return null;
  if (sheets.length === 0 || sight.lensInside !== null) return sums;
  for (const part of parts) {
    const free = leftWithin(footing, frame, found.solids, part).rings;
    const beside = sheets.map(({ shadows }) => leftWithin(footing, frame, shadows, part).rings);
    const laid = regionParts(part, [free, ringsOf(cut), ...beside]);
    if (laid === null) return null;
    for (const { members, triangles } of laid) {
      if (!members.includes(0) || members.includes(1)) continue;
      const under = sheets.filter((_, sheet) => !members.includes(sheet + 2));
      if (under.length === 0) continue;
      const local = triangles.map((n, at) => n - (footing.foot[at % 2] ?? 0));
      const { count } = conditions;
      // One condition a sheet, closed, and one, open, after those of the frame.
      const of = (p: number, q: number, values: Float64Array, at: number) => {
        conditions.of(p, q, values, at);
        under.forEach(({ normal }, sheet) => {
          const closed = closedAt(normal, closing, footing, p, q);
          values[at + count + 2 * sheet] = closed;
          values[at + count + 2 * sheet + 1] = -closed;
        });
      };
      const sets = under.map((_, sheet) => [
        ...conditions.framed,
        count + 2 * sheet,
        ...Array.from({ length: sheet }, (_e, earlier) => count + 2 * earlier + 1),
      ]);
      areasWhere(local, of, count + 2 * under.length, sets, conditions.sources).forEach(
        ({ value, bound }, sheet) => {
          const solid = under[sheet]?.solid ?? -1;
          const sum = sums.get(solid) ?? { value: 0, bound: 0 };
          sums.set(solid, { value: sum.value + value, bound: sum.bound + bound });
        },
      );
    }
  }
  return sums;
}

/** Triangles as counter-clockwise rings. */
function ringsOf(triangles: Float64Array): readonly Float64Array[] {
  return Array.from({ length: triangles.length / 6 }, (_, t) => {
    const corner = (k: number): Vec2 => [triangles[6 * t + 2 * k] ?? 0, triangles[6 * t + 2 * k + 1] ?? 0];
    const [a, b, c] = [corner(0), corner(1), corner(2)];
    const turn = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    return Float64Array.from(turn >= 0 ? [...a, ...b, ...c] : [...a, ...c, ...b]);
  });
}
