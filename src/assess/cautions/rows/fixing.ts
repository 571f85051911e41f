import { cos, sin } from '../../../base/angle.ts';
import type { Vec3 } from '../../../base/vector.ts';
import { GROUND } from '../../../model/terrainSolid.ts';
import { inRing } from '../../../model/ring.ts';
import { angleOfView } from '../../../optics/lens.ts';
import { cautionId, placeOn, solidOf, stopId, type About } from '../about.ts';
import type { Found, Place } from '../caution.ts';
import type { FiguresOf } from '../figures.ts';
import type { ThresholdId } from '../thresholds.ts';

/** Row 33: a fixing in a soffit or canopy board of a building from before asbestos was banned, or of no known year. */
export function oldBoards(about: About): readonly Found[] {
  const { set, plan, fixing } = about;
  if (set.mount.kind !== 'soffit' || fixing.hole === null) return [];
  const host = plan.structures[set.mount.host];
  const year = host?.kind === 'building' ? host.yearBuilt : null;
  if (year !== null && year >= about.limit('boards.year')) return [];
  return [
    {
      id: stopId(33, 'boards', fixing.hole),
      severity: 'stop',
      weight: 1.5,
      figures: { row: 33, year },
      places: [{ at: fixing.hole, thing: { kind: 'structure', id: set.mount.host } }],
      thresholds: ['boards.year'],
    },
  ];
}

/** A leaning ladder stands so much out for its height. Source: facts C1, HSE and Ladder Association LA455. */
const OUT = 1 / 4;

/** Where the ladder leans: the fixing, and the level way out from what it leans on. A post is climbed at its back. */
function leansAt({ set, fixing, camera }: About): { readonly at: Vec3; readonly out: Vec3 } | null {
  const { mount } = set;
  if (mount.kind === 'pole')
    return {
      at: [mount.at[0], mount.at[1], camera.eye[2]],
      out: [-sin(mount.facing), -cos(mount.facing), 0],
    };
  return fixing.hole === null || fixing.outward === null ? null : { at: fixing.hole, out: fixing.outward };
}

/** Row 34: what a ladder would stand on, and how far out. A stop where that is no good place, or the fixing is high. */
export function ladder(about: About): readonly Found[] {
  const { groundAt, obstacles, plan } = about;
  const leans = leansAt(about);
  if (leans === null) return [];
  const { at, out } = leans;
  const below = at[2] - groundAt([at[0], at[1]]);
  if (below <= about.limit('ladder.from')) return [];
  const far = below * OUT;
  const [x, y] = [at[0] + out[0] * far, at[1] + out[1] * far];
  const ground = groundAt([x, y]);
  const hit = obstacles.segments.firstHit([x, y, at[2]], [x, y, ground - 0.01], 'solid');
  const solid = hit === null ? null : solidOf(about, hit.solid);
  const stands = hit === null || solid === null || solid.id === GROUND ? null : solid;
  const level = hit === null || stands === null ? ground : at[2] + (ground - 0.01 - at[2]) * hit.share;
  const height = at[2] - level;
  const foot: Vec3 = [x, y, level];
  const slope = slopeAt(about, x, y);
  const why: FiguresOf<34>['why'] =
    stands !== null
      ? 'thing'
      : plan.boundary !== null && !inRing([x, y], plan.boundary)
        ? 'neighbour'
        : slope > about.limit('ladder.slope')
          ? 'slope'
          : height > about.limit('ladder.high')
            ? 'high'
            : null;
  const place: Place = stands === null ? { at: foot, thing: null } : placeOn(about, stands, foot);
  const limit: ThresholdId =
    why === 'high' ? 'ladder.high' : why === 'slope' ? 'ladder.slope' : 'ladder.from';
  return [
    {
      id: why === null ? cautionId(34) : stopId(34, why, at),
      severity: why === null ? 'tell' : 'stop',
      weight: height / 5,
      figures: { row: 34, height, out: height * OUT, on: stands?.name ?? 'ground', why },
      places: [place],
      thresholds: [limit],
    },
  ];
}

/** How steep the ground is at a place, °: of a patch that lies there, else of the ground itself over half a metre. */
function slopeAt({ plan, groundAt }: About, x: number, y: number): number {
  const patch = Object.values(plan.patches).find(({ outline }) => inRing([x, y], outline));
  if (patch !== undefined) return patch.pitch;
  const step = 0.25;
  const [dx, dy] = [
    groundAt([x + step, y]) - groundAt([x - step, y]),
    groundAt([x, y + step]) - groundAt([x, y - step]),
  ];
  return (Math.atan(Math.hypot(dx, dy) / (2 * step)) * 180) / Math.PI;
}

/** Row 35: a narrow lens on a high post or a long arm, which sways. */
export function sway(about: About): readonly Found[] {
  const { set, camera } = about;
  const { mount } = set;
  if (mount.kind !== 'pole' && mount.kind !== 'arm') return [];
  const length = mount.kind === 'pole' ? mount.height : mount.reach;
  const limit = mount.kind === 'pole' ? 'sway.pole' : 'sway.arm';
  const angle = angleOfView(camera.focalLength, camera.k, camera.sensor.width);
  if (angle === null || angle >= about.limit('sway.angle') || length <= about.limit(limit)) return [];
  return [
    {
      id: cautionId(35),
      severity: 'tell',
      weight: length / about.limit(limit),
      figures: { row: 35, of: mount.kind, length, angle },
      places: [{ at: camera.eye, thing: { kind: 'camera', id: set.id } }],
      thresholds: [limit, 'sway.angle'],
    },
  ];
}
