import { subtract, type Vec3 } from '../../../base/vector.ts';
import { GROUND } from '../../../model/terrainSolid.ts';
import { cautionId, isLeaves, placeOn, solidOf, type About } from '../about.ts';
import type { Spot } from '../asked.ts';
import type { Found } from '../caution.ts';
import { cornersOf, gap, nearestOfSegments } from '../closest.ts';

/** What is nearer to the lens than this is its own wall, and what is nearer to the target stands behind or beside it, m. */
const AT_LENS = 0.5;
const AT_TARGET = 0.3;

/** What a sight line passes nearest: the solid, how far off, where. */
interface Passed {
  readonly solid: number;
  readonly clear: number;
  readonly at: Vec3;
}

/** The edge of a solid that a free sight line passes nearest, within a distance; null where there is none. */
function passedBy({ camera, obstacles, scene }: About, { at }: Spot, within: number): Passed | null {
  const far = gap(camera.eye, at);
  if (far <= AT_LENS + AT_TARGET) return null;
  const way = subtract(at, camera.eye);
  const along = (share: number): Vec3 => [
    camera.eye[0] + way[0] * share,
    camera.eye[1] + way[1] * share,
    camera.eye[2] + way[2] * share,
  ];
  const [from, to] = [along(AT_LENS / far), along(1 - AT_TARGET / far)];
  const { facets } = obstacles;
  let best: Passed | null = null;
  for (const group of facets.groups) {
    const solid = scene.solids[group.solid];
    if (solid === undefined || solid.id === GROUND || solid.passage === 'clear') continue;
    if (!boxNear(group.box, from, to, best?.clear ?? within)) continue;
    for (let facet = group.from; facet < group.to; facet += 1) {
      const [a, b, c] = cornersOf(facets, facet);
      for (const [p, q] of [
        [a, b],
        [b, c],
        [c, a],
      ] as const) {
        const { on, other } = nearestOfSegments(from, to, p, q);
        const clear = gap(on, other);
        if (clear < (best?.clear ?? within)) best = { solid: group.solid, clear, at: other };
      }
    }
  }
  return best;
}

/** Whether a segment comes within a distance of a box, roughly: never no where it does. */
function boxNear(box: Float64Array, from: Vec3, to: Vec3, within: number): boolean {
  return ([0, 1, 2] as const).every(
    (axis) =>
      Math.max(from[axis], to[axis]) >= (box[axis] ?? 0) - within &&
      Math.min(from[axis], to[axis]) <= (box[axis + 3] ?? 0) + within,
  );
}

/** Row 23: the sight line to what must be seen passes close to an edge that would hide it. */
export function clearance(about: About): readonly Found[] {
  const [solidLimit, leafLimit] = [about.limit('clear.solid'), about.limit('clear.leaves')];
  return about.asked.flatMap((asked): Found[] => {
    // Where part is hidden already, the edge runs through what is asked for, and its verdict says so.
    if (asked.served.length < asked.spots.length) return [];
    const near = asked.served.flatMap((spot) => passedBy(about, spot, Math.max(solidLimit, leafLimit)) ?? []);
    const passed = near
      .map((one) => ({ ...one, limit: isLeaves(about, solidOf(about, one.solid)) ? leafLimit : solidLimit }))
      .filter(({ clear, limit }) => clear < limit)
      .sort((one, two) => one.clear / one.limit - two.clear / two.limit)[0];
    if (passed === undefined) return [];
    const solid = solidOf(about, passed.solid);
    return [
      {
        id: cautionId(23, asked.requirement.id),
        severity: 'tight',
        weight: passed.limit / Math.max(0.01, passed.clear),
        figures: { row: 23, requirement: asked.requirement.name, thing: solid.name, clear: passed.clear },
        places: [placeOn(about, solid, passed.at)],
        thresholds: [passed.limit === leafLimit && isLeaves(about, solid) ? 'clear.leaves' : 'clear.solid'],
      },
    ];
  });
}
