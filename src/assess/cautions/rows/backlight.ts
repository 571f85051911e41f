import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { imageFromSite } from '../../../optics/projection.ts';
import { cornerAt, inRing, signedArea } from '../../../model/ring.ts';
import { heading } from '../../../model/segment.ts';
import type { Building, Opening } from '../../../model/structure.ts';
import { alongRay, cautionId, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import { wayTo } from '../pictureRays.ts';

/** Cover above the lens within this counts as under cover, m. */
const COVER = 6;
/** Beyond an opening to the open there is nothing near, m. */
const OPEN = 3;

/** Corners of an opening in the wall's outer face. */
export function openingCorners(
  { outline, base }: Building,
  { face, along, width, sill, height }: Opening,
): readonly Vec3[] {
  const [a, b] = [cornerAt(outline, face), cornerAt(outline, face + 1)];
  const [x, y] = heading(a, b);
  const at = (s: number, z: number): Vec3 => [a[0] + x * s, a[1] + y * s, base + z];
  return [
    at(along, sill),
    at(along + width, sill),
    at(along + width, sill + height),
    at(along, sill + height),
  ];
}

/** The share of the picture that an outline in space takes up, clipped to the frame; 0 where part of it has no image. */
function shareOfPicture({ camera }: Pick<About, 'camera'>, corners: readonly Vec3[]): number {
  const images = corners.map((corner) => imageFromSite(camera, corner));
  const ring: Vec2[] = [];
  for (const image of images) {
    if (image === null) return 0;
    ring.push([image.u, image.v]);
  }
  const { width, height } = camera.frame;
  const clipped = [
    (p: Vec2) => p[0],
    (p: Vec2) => width - p[0],
    (p: Vec2) => p[1],
    (p: Vec2) => height - p[1],
  ].reduce<readonly Vec2[]>((part, off) => cut(part, off), ring);
  return Math.abs(signedArea(clipped)) / (width * height);
}

/** What of a ring lies where a linear function is ≥ 0. */
function cut(ring: readonly Vec2[], off: (p: Vec2) => number): Vec2[] {
  return ring.flatMap((p, k): Vec2[] => {
    const q = cornerAt(ring, k + 1);
    const [one, two] = [off(p), off(q)];
    const share = one / (one - two);
    const met: Vec2[] =
      one >= 0 === two >= 0 ? [] : [[p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share]];
    return one >= 0 ? [p, ...met] : met;
  });
}

/** Whether the lens is under cover or indoors, so that the open is bright to it. */
const isCovered = ({ camera, obstacles, scene }: About): boolean => {
  const [x, y, z] = camera.eye;
  return (
    scene.solids.length > 0 && obstacles.segments.firstHit(camera.eye, [x, y, z + COVER], 'solid') !== null
  );
};

/** Row 18: a face in front of an opening to the open, seen from indoors or from under cover. */
export function backlit(about: About): readonly Found[] {
  const { camera, plan, asked, obstacles } = about;
  if (!asked.some(({ requirement }) => requirement.target === 'face') || !isCovered(about)) return [];
  const least = about.limit('backlight.share');
  const buildings = Object.values(plan.structures).flatMap((one) =>
    one.kind === 'building' && one.wallThickness !== null ? [one] : [],
  );
  return asked.flatMap(({ requirement, served }): Found[] => {
    if (requirement.target !== 'face') return [];
    for (const spot of served) {
      const way = wayTo(camera.eye, spot.at);
      for (const building of buildings)
        for (const opening of building.openings) {
          const corners = openingCorners(building, opening);
          const far = throughOpening(camera.eye, way, corners);
          const head = Math.hypot(...spot.at.map((n, axis) => n - (camera.eye[axis] ?? 0)));
          // Behind the head, or about it where somebody stands in the opening.
          if (far === null || far < head - 0.5) continue;
          const isOpen =
            obstacles.segments.firstHit(spot.at, alongRay(camera.eye, way, far + OPEN), 'solid') === null;
          const share = shareOfPicture(about, corners);
          if (!isOpen || share <= least) continue;
          return [
            {
              id: cautionId(18, requirement.id, opening.id),
              severity: 'tight',
              weight: share / least,
              figures: { row: 18, requirement: requirement.name, opening: opening.name, share },
              places: [
                {
                  at: alongRay(camera.eye, way, far),
                  thing: { kind: 'opening', id: opening.id, on: building.id },
                },
              ],
              thresholds: ['backlight.share'],
            },
          ];
        }
    }
    return [];
  });
}

/** How far along a ray it passes outwards through an opening; null where it does not. */
function throughOpening(eye: Vec3, way: Vec3, corners: readonly Vec3[]): number | null {
  const [a, b, , d] = corners;
  if (a === undefined || b === undefined || d === undefined) return null;
  const [x, y] = heading([a[0], a[1]], [b[0], b[1]]);
  // The outside is on the right of the edge.
  const facing = way[0] * y - way[1] * x;
  if (!(facing > 0)) return null;
  const far = ((a[0] - eye[0]) * y - (a[1] - eye[1]) * x) / facing;
  if (!(far > 0)) return null;
  const at = alongRay(eye, way, far);
  const s = (at[0] - a[0]) * x + (at[1] - a[1]) * y;
  const width = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const ring: Vec2[] = [
    [0, a[2]],
    [width, a[2]],
    [width, d[2]],
    [0, d[2]],
  ];
  return inRing([s, at[2]], ring) ? far : null;
}
