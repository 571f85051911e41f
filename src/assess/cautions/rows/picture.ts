import { alongRay, cautionId, isLeaves, placeOfCamera, placeOn, solidOf, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import { patches, shareOf } from '../pictureRays.ts';

/** Row 17: how much of the picture is sky. */
export function sky(about: About): readonly Found[] {
  const { picture, camera } = about;
  const share = shareOf(picture, ({ meets }) => meets === 'sky');
  const [tell, tight] = [about.limit('sky.tell'), about.limit('sky.tight')];
  if (share <= Math.min(tell, tight)) return [];
  const isTight = share > tight;
  return [
    {
      id: cautionId(17),
      severity: isTight ? 'tight' : 'tell',
      weight: share / (isTight ? tight : tell),
      figures: { row: 17, share },
      places: [placeOfCamera(about, camera.eye)],
      thresholds: [isTight ? 'sky.tight' : 'sky.tell'],
    },
  ];
}

/** Row 22: glass in the picture throws the camera's own infrared back. */
export function behindGlass(about: About): readonly Found[] {
  const { camera, set, dark, picture } = about;
  if (!dark || set.infrared === null) return [];
  const { range } = set.infrared;
  const [most] = patches(
    camera.eye,
    picture,
    ({ glass, glassAt }) => (glassAt <= range ? glass : -1),
    ({ glassAt }) => glassAt,
  );
  if (most === undefined) return [];
  const solid = solidOf(about, most.key);
  return [
    {
      id: cautionId(22, solid.id),
      severity: 'fails',
      weight: 1 + most.share,
      figures: { row: 22, thing: solid.name, share: most.share, near: most.near },
      places: [placeOn(about, solid, most.at)],
      thresholds: [],
    },
  ];
}

/** Row 25: leaves near in the picture, which the wind moves. */
export function leaves(about: About): readonly Found[] {
  const { camera, picture } = about;
  const [far, least] = [about.limit('leaves.far'), about.limit('leaves.share')];
  const found = patches(camera.eye, picture, (ray) =>
    ray.thing >= 0 && ray.far < far && isLeaves(about, solidOf(about, ray.thing)) ? ray.thing : -1,
  );
  const [most] = found;
  const share = found.reduce((sum, one) => sum + one.share, 0);
  if (most === undefined || share <= least) return [];
  const solid = solidOf(about, most.key);
  return [
    {
      id: cautionId(25),
      severity: 'tell',
      weight: share / least,
      figures: { row: 25, thing: solid.name, share, near: Math.min(...found.map(({ near }) => near)) },
      places: found.map(({ key, at }) => placeOn(about, solidOf(about, key), at)),
      thresholds: ['leaves.share', 'leaves.far'],
    },
  ];
}

/** Row 27: mesh, slats or railings that close up, being seen at a low angle to their face, and count as solid. */
export function closing(about: About): readonly Found[] {
  const { camera, picture, scene } = about;
  const least = about.limit('closing.share');
  return patches(
    camera.eye,
    picture,
    ({ closed }) => closed,
    ({ far }) => Math.min(far, camera.range),
  )
    .filter(({ share }) => share > least)
    .slice(0, 3)
    .map(({ key, share }): Found => {
      const solid = solidOf(about, key);
      const ray = picture.rays.find(({ closed }) => closed === key);
      const way = ray?.way ?? ([0, 0, 0] as const);
      const end = alongRay(camera.eye, way, camera.range);
      const hit = about.obstacles.segments.closedHit(camera.eye, end);
      return {
        id: cautionId(27, solid.id),
        severity: 'tight',
        weight: share / least,
        figures: { row: 27, thing: solid.name, share, angle: scene.closing },
        places:
          hit === null ? [] : [placeOn(about, solid, alongRay(camera.eye, way, hit.share * camera.range))],
        thresholds: ['closing.share'],
      };
    });
}
