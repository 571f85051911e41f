import { alongRay, cautionId, isLeaves, placeOfCamera, placeOn, solidOf, type About } from '../about.ts';
import type { Vec3 } from '../../../base/vector.ts';
import type { Found } from '../caution.ts';
import { gap, nearestOnSolid } from '../closest.ts';
import { coneWays } from './nearLight.ts';

/** Cover farther above than this keeps no rain off, m. */
const COVER = 5;

const UP = { right: [1, 0, 0], down: [0, 1, 0], forward: [0, 0, 1] } as const satisfies Record<string, Vec3>;

/** Row 14: a dome without cover above it, or with infrared behind its bubble. */
export function dome(about: About): readonly Found[] {
  const { set, camera, obstacles, dark } = about;
  if (set.housing !== 'dome') return [];
  const { segments } = obstacles;
  const covers = coneWays(UP, about.limit('dome.cone'), 6, 24).some(
    (way) => segments.firstHit(camera.eye, alongRay(camera.eye, way, COVER), 'solid') !== null,
  );
  const infrared = set.infrared !== null;
  if (covers && !infrared) return [];
  return [
    {
      id: cautionId(14),
      severity: dark ? 'tight' : 'tell',
      weight: 1,
      figures: { row: 14, open: !covers, infrared },
      places: [placeOfCamera(about, camera.eye)],
      thresholds: ['dome.cone'],
    },
  ];
}

/** Row 15: infrared beside the lens close under cover, or near leaves, draws spiders. */
export function spiders(about: About): readonly Found[] {
  const { set, camera, obstacles, scene } = about;
  if (set.infrared === null) return [];
  const { eye } = camera;
  const high = about.limit('spiders.cover');
  const above =
    high > 0.002 ? obstacles.segments.firstHit(eye, [eye[0], eye[1], eye[2] + high], 'solid') : null;
  const say = (what: 'cover' | 'leaves', solid: number, at: Vec3, limit: number): Found => {
    const thing = solidOf(about, solid);
    return {
      id: cautionId(15, what),
      severity: 'tell',
      weight: limit / Math.max(0.01, gap(eye, at)),
      figures: { row: 15, what, thing: thing.name, distance: gap(eye, at) },
      places: [placeOn(about, thing, at)],
      thresholds: [what === 'cover' ? 'spiders.cover' : 'spiders.leaves'],
    };
  };
  if (above !== null) return [say('cover', above.solid, [eye[0], eye[1], eye[2] + above.share * high], high)];
  const most = about.limit('spiders.leaves');
  const nearest = scene.solids
    .flatMap((solid, index) => {
      const at = isLeaves(about, solid) ? nearestOnSolid(obstacles.facets, index, eye) : null;
      return at !== null && gap(eye, at) < most ? [{ index, at }] : [];
    })
    .sort((one, two) => gap(eye, one.at) - gap(eye, two.at))[0];
  return nearest === undefined ? [] : [say('leaves', nearest.index, nearest.at, most)];
}
