import { dot, scale, subtract, type Vec3 } from '../../../base/vector.ts';
import { hostFaces } from '../../../model/faces.ts';
import type { HostFace } from '../../../model/face.ts';
import { axesOf, siteRayFromImage } from '../../../optics/projection.ts';
import { cautionId, placeOn, solidOf, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import type { FiguresOf } from '../figures.ts';

/** Points along each side of the frame; its corners are among them. */
const SIDE = 24;
/** A wall that ends nearer than this beside the lens has nothing to glare, m. */
const GOES_ON = 0.5;

/** Directions along the edge of the picture. */
function edgeWays({ camera }: About): readonly Vec3[] {
  const { width, height } = camera.frame;
  const ways: Vec3[] = [];
  const take = (u: number, v: number) => {
    const way = siteRayFromImage(camera, { u, v });
    if (way !== null) ways.push(way);
  };
  for (let at = 0; at <= SIDE; at += 1) {
    const share = at / SIDE;
    take(share * width, 0);
    take(share * width, height);
    take(0, share * height);
    take(width, share * height);
  }
  return ways;
}

interface OwnPlane {
  readonly face: HostFace;
  /** Towards the side that the lens is on. */
  readonly normal: Vec3;
}

/** The walls or the soffit that a camera hangs on. */
function ownPlanes({ plan, set }: About): readonly OwnPlane[] {
  const { mount } = set;
  if (!('host' in mount)) return [];
  const structure = plan.structures[mount.host];
  if (structure === undefined) return [];
  const faces = hostFaces(structure);
  const walls = faces.filter(({ sort }) => sort === 'wall');
  const own = faces.find(
    (face) => face.face === mount.face && face.sort === (mount.kind === 'soffit' ? 'soffit' : 'wall'),
  );
  if (own === undefined) return [];
  if (mount.kind === 'soffit') return [{ face: own, normal: [0, 0, -1] }];
  const before =
    mount.kind === 'corner' ? walls[(walls.indexOf(own) - 1 + walls.length) % walls.length] : undefined;
  return [own, ...(before === undefined ? [] : [before])].map((face) => ({ face, normal: face.outward }));
}

/** Whether a wall, or soffit, goes on beside the lens the way that a direction runs along it. */
function goesOn({ face, normal }: OwnPlane, eye: Vec3, way: Vec3): boolean {
  const flat = subtract(way, scale(normal, dot(way, normal)));
  const size = Math.hypot(...flat);
  if (size < 1e-9) return false;
  const at: Vec3 = [
    eye[0] + (flat[0] / size) * GOES_ON,
    eye[1] + (flat[1] / size) * GOES_ON,
    eye[2] + (flat[2] / size) * GOES_ON,
  ];
  const off = subtract(at, face.start);
  const along = dot(off, face.along);
  if (along < 0 || along > face.width) return false;
  if (face.sort === 'wall') return at[2] >= face.foot && at[2] <= face.top;
  const out = dot(off, face.outward);
  return out >= 0 && out <= face.depth;
}

const degrees = (sine: number): number => (Math.asin(Math.max(-1, Math.min(1, sine))) * 180) / Math.PI;

interface Edge {
  /** Off the plane, °; Infinity where the plane does not go on beside any of the picture's edge. */
  readonly angle: number;
  readonly way: Vec3;
}

/** The edge of the picture, or of the beam, that is least off a plane. */
const leastOff = (plane: OwnPlane, eye: Vec3, ways: readonly Vec3[]): Edge =>
  ways
    .filter((way) => goesOn(plane, eye, way))
    .map((way): Edge => ({ angle: degrees(dot(way, plane.normal)), way }))
    .reduce((least, one) => (one.angle < least.angle ? one : least), {
      angle: Infinity,
      way: plane.normal,
    });

/** A metre on from the lens along its wall or soffit, the way that an edge runs: where it glares. */
function ahead({ face, normal }: OwnPlane, eye: Vec3, way: Vec3): Vec3 {
  const flat = subtract(way, scale(normal, dot(way, normal)));
  const size = Math.max(1e-9, Math.hypot(...flat));
  const off = dot(subtract(eye, face.start), normal);
  const on = ([e, f, n]: readonly [number, number, number]): number => e + f / size - off * n;
  return [
    on([eye[0], flat[0], normal[0]]),
    on([eye[1], flat[1], normal[1]]),
    on([eye[2], flat[2], normal[2]]),
  ];
}

/** The edge of the beam that is nearest to a plane: half the beam off the axis, straight towards it. */
function beamWay({ camera, set }: About, { normal }: OwnPlane): Vec3 | null {
  if (set.infrared === null) return null;
  const { forward } = axesOf(camera);
  const rise = dot(forward, normal);
  const flat = subtract(forward, scale(normal, rise));
  const size = Math.hypot(...flat);
  if (size < 1e-9) return null;
  const angle =
    Math.asin(Math.max(-1, Math.min(1, rise))) - (Math.min(180, set.infrared.beam / 2) * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [
    (flat[0] / size) * c + normal[0] * s,
    (flat[1] / size) * c + normal[1] * s,
    (flat[2] / size) * c + normal[2] * s,
  ];
}

/** Row 13: the edge of the picture or of the beam runs along the wall or soffit that carries the camera, or past it. */
export function ownWall(about: About): readonly Found[] {
  const { camera, set, dark } = about;
  const limit = about.limit('ownWall.angle');
  const lit = dark && set.infrared !== null;
  const ways = edgeWays(about);
  const found = ownPlanes(about).flatMap((plane): Found[] => {
    const beam = lit ? beamWay(about, plane) : null;
    const picture = leastOff(plane, camera.eye, ways);
    const [what, edge] =
      picture.angle < limit || beam === null
        ? (['picture', picture] as const)
        : (['beam', leastOff(plane, camera.eye, [beam])] as const);
    if (edge.angle >= limit) return [];
    const at = ahead(plane, camera.eye, edge.way);
    const found = say(about, what, plane.face.name, edge.angle, lit);
    return [{ ...found, places: [{ at, thing: { kind: 'structure', id: plane.face.structure } }] }];
  });
  return found.length > 0 ? found : soffitSeen(about, lit);
}

function say(about: About, what: FiguresOf<13>['what'], surface: string, angle: number, lit: boolean): Found {
  return {
    id: cautionId(13, what, surface),
    severity: lit ? 'tight' : 'tell',
    weight: 1 + Math.max(0, about.limit('ownWall.angle') - angle) / 10,
    figures: { row: 13, what, surface, angle },
    places: [{ at: about.fixing.hole ?? about.camera.eye, thing: { kind: 'camera', id: about.set.id } }],
    thresholds: ['ownWall.angle'],
  };
}

/** The underside of its own eaves in the picture. */
function soffitSeen(about: About, lit: boolean): readonly Found[] {
  const { set, picture, camera, obstacles } = about;
  if (!('host' in set.mount)) return [];
  const { host } = set.mount;
  const ray = picture.rays.find(({ thing, facet, way, far }) => {
    if (thing < 0 || far > 3 || way[2] <= 0 || solidOf(about, thing).structure !== host) return false;
    const { normals } = obstacles.facets;
    const [x, y, z] = [normals[facet * 3] ?? 0, normals[facet * 3 + 1] ?? 0, normals[facet * 3 + 2] ?? 0];
    return z < -0.5 * Math.hypot(x, y, z);
  });
  if (ray === undefined) return [];
  const solid = solidOf(about, ray.thing);
  const { eye } = camera;
  const at: Vec3 = [
    eye[0] + ray.way[0] * ray.far,
    eye[1] + ray.way[1] * ray.far,
    eye[2] + ray.way[2] * ray.far,
  ];
  const found = say(about, 'soffit', solid.name, 0, lit);
  return [{ ...found, places: [placeOn(about, solid, at)] }];
}
