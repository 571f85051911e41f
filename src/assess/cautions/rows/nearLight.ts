import { cos, sin } from '../../../base/angle.ts';
import { add, scale, type Vec3 } from '../../../base/vector.ts';
import { GROUND } from '../../../model/terrainSolid.ts';
import { axesOf, inFrame } from '../../../optics/projection.ts';
import { alongRay, cautionId, placeOn, solidOf, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import { gap, nearestOnSolid } from '../closest.ts';
import { patches, rayMeets, type Patch } from '../pictureRays.ts';

/** A face nearer than this to its own infrared is white, m. Common practice, no source. */
const FACE = 1.5;

/** Unit directions of a cone around another, in rings from its middle to its edge. @param half ° */
export function coneWays(
  { right, down, forward }: ReturnType<typeof axesOf>,
  half: number,
  rings: number,
  around: number,
): readonly Vec3[] {
  const ways: Vec3[] = [forward];
  for (let ring = 1; ring <= rings; ring += 1) {
    const off = (half * ring) / rings;
    for (let one = 0; one < around; one += 1) {
      const turn = (360 * one) / around;
      const side = add(scale(right, cos(turn)), scale(down, sin(turn)));
      ways.push(add(scale(forward, cos(off)), scale(side, sin(off))));
    }
  }
  return ways;
}

/** How far away what this camera is for is: what it is asked for, else what its axis meets, m. */
function wantedAt({ asked, camera, obstacles, scene, set }: About): number {
  const spot = asked.flatMap(({ served }) => served)[0];
  if (spot !== undefined) return gap(camera.eye, spot.at);
  const ahead = rayMeets(camera.eye, axesOf(camera).forward, obstacles, scene.ground);
  return Math.min(ahead.far, set.infrared?.range ?? camera.range);
}

/** Row 12: what stands near the lens in the picture or the beam throws the camera's own infrared back. */
export function thrownBack(about: About): readonly Found[] {
  const { camera, set, dark, obstacles, picture, scene } = about;
  if (!dark || set.infrared === null) return [];
  const [any, some] = [about.limit('glare.near'), about.limit('glare.far')];
  const far = wantedAt(about);
  const shares = patches(camera.eye, picture, (ray) => ray.thing);
  const found = new Map<number, Patch>(shares.map((patch) => [patch.key, exactly(about, patch)]));
  for (const way of coneWays(axesOf(camera), Math.min(179, set.infrared.beam / 2), 6, 24)) {
    const { thing, far: near } = rayMeets(camera.eye, way, obstacles, scene.ground);
    if (thing < 0 || near >= any || near >= (found.get(thing)?.near ?? Infinity)) continue;
    found.set(thing, {
      key: thing,
      share: found.get(thing)?.share ?? 0,
      near,
      at: alongRay(camera.eye, way, near),
    });
  }
  const [tell, tight] = [about.limit('glare.tell'), about.limit('glare.tight')];
  const things = [...found.values()].flatMap(({ key, share, near, at }): Found[] => {
    const solid = solidOf(about, key);
    const isTight = near < any || (near < some && share > tight);
    if (solid.id === GROUND || !(isTight || (near < some && share > tell))) return [];
    return [
      {
        id: cautionId(12, solid.id),
        severity: isTight ? 'tight' : 'tell',
        weight: near < any ? any / Math.max(near, 0.01) : share / tell,
        figures: { row: 12, thing: solid.name, near, far, times: (far / near) ** 2, share },
        places: [placeOn(about, solid, at)],
        thresholds: near < any ? ['glare.near'] : ['glare.far', isTight ? 'glare.tight' : 'glare.tell'],
      },
    ];
  });
  return [...things, ...faces(about)];
}

/** The nearest point of a thing itself, where that is in the picture; else the nearest that a ray met. */
function exactly({ camera, obstacles }: About, patch: Patch): Patch {
  const at = nearestOnSolid(obstacles.facets, patch.key, camera.eye);
  return at !== null && inFrame(camera, at) ? { ...patch, at, near: gap(camera.eye, at) } : patch;
}

function faces({ asked, camera }: About): readonly Found[] {
  return asked.flatMap(({ requirement, served }): Found[] => {
    if (requirement.target !== 'face') return [];
    const far = served.map((spot) => gap(camera.eye, spot.at));
    const near = Math.min(...far);
    const spot = served[far.indexOf(near)];
    if (spot === undefined || near >= FACE) return [];
    const most = Math.max(...far);
    return [
      {
        id: cautionId(12, 'face', requirement.id),
        severity: 'tell',
        weight: FACE / near,
        figures: {
          row: 12,
          thing: `face at ${requirement.name}`,
          near,
          far: most,
          times: (most / near) ** 2,
          share: 0,
        },
        places: [{ at: spot.at, thing: null }],
        thresholds: [],
      },
    ];
  });
}
