import { sin, cos, turn } from '../../base/angle.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { HostFace } from '../../model/face.ts';
import { hostFaces } from '../../model/faces.ts';
import { placeMount } from '../../model/mounting.ts';
import { terrainOf } from '../../model/terrain.ts';
import type { Camera } from '../../optics/camera.ts';
import type { Mount, Plate } from '../../optics/mount.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Scene } from '../scene.ts';
import { Obstacles } from '../ground.ts';
import { bearingOf, edgeMarks, turnedFrom, type EdgeMark } from './aim.ts';
import { insideEnd, type InsideEnd } from './insideEnd.ts';
import { rightOfLine, tapedCorners, type TapedCorner } from './poleSpot.ts';
import { tapedFrom, type Taped } from './taped.ts';
import { inFront, seenAt, wallView, type WallView } from './wallView.ts';

/** A wall with the hole on it. */
export interface OnWall {
  readonly view: WallView;
  /** In the view. */
  readonly hole: Vec2;
  readonly taped: readonly Taped[];
  /** Other holes on the same wall. */
  readonly others: readonly { readonly name: string; readonly at: Vec2 }[];
  /** Where the ground meets the wall, from left to right, in the view. */
  readonly ground: readonly Vec2[];
  /** Height of the ground straight below the hole. */
  readonly groundAtHole: number;
}

/** Where the hole goes. */
export type Spot =
  | { readonly kind: 'wall'; readonly wall: OnWall; readonly plate: Plate }
  | {
      readonly kind: 'soffit';
      readonly wall: OnWall;
      readonly plate: Plate;
      /** From the wall outwards, or in under a board from its edge; and what is left beyond it, m. */
      readonly inset: number;
      readonly beyond: number;
      readonly under: 'eaves' | 'canopy' | 'ceiling';
    }
  /** Both walls, as one sees them from outside: the left one first. */
  | {
      readonly kind: 'corner';
      readonly walls: readonly [OnWall, OnWall];
      readonly plate: Plate;
      /** From straight out of the left and the right wall, °. */
      readonly turned: readonly [number, number];
    }
  | {
      readonly kind: 'pole';
      readonly foot: Vec3;
      readonly diameter: number;
      /** Bearing of the bracket, °. */
      readonly facing: number;
      readonly reach: number;
      readonly corners: readonly TapedCorner[];
      /** Outlines of what those corners belong to. */
      readonly outlines: readonly (readonly Vec2[])[];
      /** How far right of the line to the first of those corners the camera looks, °; null without one. */
      readonly fromLine: number | null;
    };

/** What an installer must know of a camera: metres and degrees. */
export interface DrillFacts {
  readonly camera: Camera;
  readonly set: PlanCamera;
  readonly spot: Spot;
  readonly hole: Vec3;
  readonly inside: InsideEnd;
  readonly lens: {
    /** Above the ground below it. */
    readonly height: number;
    /** Straight out from the wall, or from the middle of a post. */
    readonly out: number;
    /** Below the hole; negative above it. */
    readonly below: number;
  };
  /** Level direction straight out, and how far right of it the camera looks with the back to the wall, °. */
  readonly out: Vec2;
  readonly turned: number;
  readonly marks: readonly EdgeMark[];
}

/** Why a camera has no card. */
export type NoCard = 'loose' | 'lost' | 'away';

/**
 * The facts of a camera's drill card, from the plan and its scene.
 * @returns why there is none: fixed to nothing, its wall gone or changed, or away in these conditions
 */
export function drillFacts(plan: Plan, scene: Scene, id: string): DrillFacts | NoCard {
  const set = plan.cameras[id];
  const camera = scene.cameras.find((one) => one.id === id);
  if (!set || set.mount.kind === 'loose') return 'loose';
  const { mount } = set;
  const groundAt = groundOf(plan, scene);
  const placed = placeMount(
    mount,
    plan.structures,
    mount.kind === 'pole' ? groundAt(mount.at) : scene.ground,
  );
  if (!placed.ok || placed.value.hole === null) return 'lost';
  if (!camera) return 'away';
  const { hole } = placed.value;
  const spot = spotOf(plan, scene, set, hole, groundAt);
  if (spot === null) return 'lost';
  const out = outOf(spot, mount);
  const { eye } = camera;
  const obstacles = new Obstacles(scene.solids, scene.closing);
  const isFlat = plan.ground.kind === 'flat';
  return {
    camera,
    set,
    spot,
    hole,
    inside: insideOf(plan, mount, spot),
    lens: {
      height: eye[2] - groundAt([eye[0], eye[1]]),
      out: (eye[0] - hole[0]) * out[0] + (eye[1] - hole[1]) * out[1],
      below: spot.kind === 'pole' ? 0 : hole[2] - eye[2],
    },
    out,
    turned: turnedFrom(out, camera.pan),
    marks: edgeMarks(
      camera,
      obstacles.segments,
      isFlat ? scene.ground : null,
      (solid) => !isFlat && solid === scene.solids.length - 1,
      { hole: [hole[0], hole[1]], out },
    ),
  };
}

/** Height of the ground over the board. */
function groundOf(plan: Plan, scene: Scene): (place: Vec2) => number {
  const terrain = terrainOf(plan.ground, scene.board)?.terrain ?? null;
  return ([x, y]) => terrain?.heightAt(x, y) ?? scene.ground;
}

/** Straight out; of a pole the way its bracket points, of a corner the line between its walls. */
function outOf(spot: Spot, mount: Mount): Vec2 {
  switch (spot.kind) {
    case 'wall':
    case 'soffit':
      return spot.wall.view.out;
    case 'corner': {
      const [one, two] = spot.walls.map(({ view }) => view.out);
      const sum: Vec2 = [(one?.[0] ?? 0) + (two?.[0] ?? 0), (one?.[1] ?? 0) + (two?.[1] ?? 0)];
      const size = Math.hypot(...sum);
      return [sum[0] / size, sum[1] / size];
    }
    case 'pole':
      return mount.kind === 'pole' ? [sin(mount.facing), cos(mount.facing)] : [0, 1];
  }
}

function insideOf(plan: Plan, mount: Mount, spot: Spot): InsideEnd {
  switch (spot.kind) {
    case 'pole':
      return { kind: 'post' };
    case 'corner':
      return { kind: 'corner' };
    case 'soffit':
      return { kind: spot.under === 'canopy' ? 'board' : spot.under };
    case 'wall': {
      const structure = 'host' in mount ? plan.structures[mount.host] : undefined;
      return structure
        ? insideEnd(structure, spot.wall.view, spot.wall.hole)
        : { kind: 'through', thickness: null, rise: null };
    }
  }
}

function spotOf(
  plan: Plan,
  scene: Scene,
  set: PlanCamera,
  hole: Vec3,
  groundAt: (place: Vec2) => number,
): Spot | null {
  const { mount } = set;
  if (mount.kind === 'loose') return null;
  if (mount.kind === 'pole') return poleOf(plan, set, mount, hole);
  const structure = plan.structures[mount.host];
  if (!structure) return null;
  const faces = hostFaces(structure);
  const wallOf = (face: HostFace): OnWall => onWall(scene, wallView(structure, face), set.id, hole, groundAt);
  const named = (sort: HostFace['sort']) =>
    faces.find((face) => face.sort === sort && face.face === mount.face);
  if (mount.kind === 'soffit') {
    const face = named('soffit');
    if (!face) return null;
    const isCanopy = structure.kind === 'canopy';
    // Eaves run along a wall as far as it goes; a ceiling ends with its room.
    const roofed = face.within === null ? 'eaves' : 'ceiling';
    const under = isCanopy ? 'canopy' : roofed;
    const wall = wallOf(face);
    const front = inFront(wall.view, hole);
    const inset = isCanopy ? -front : front;
    return { kind: 'soffit', wall, plate: mount.plate, inset, beyond: face.depth - inset, under };
  }
  const face = named('wall');
  if (!face) return null;
  if (mount.kind !== 'corner') return { kind: 'wall', wall: wallOf(face), plate: mount.plate };
  const walls = faces.filter(({ sort }) => sort === 'wall');
  const before = walls.at(walls.indexOf(face) - 1);
  if (!before) return null;
  return {
    kind: 'corner',
    walls: [wallOf(before), wallOf(face)],
    plate: mount.plate,
    turned: [turnOf(before, set), turnOf(face, set)],
  };
}

const turnOf = ({ outward }: HostFace, { pan }: PlanCamera): number =>
  turn(bearingOf([outward[0], outward[1]]), pan);

function poleOf(plan: Plan, { pan }: PlanCamera, mount: Extract<Mount, { kind: 'pole' }>, hole: Vec3): Spot {
  const structures = plan.structureOrder.flatMap((id) => plan.structures[id] ?? []);
  const corners = tapedCorners(structures, mount.at);
  const [first] = corners;
  return {
    kind: 'pole',
    foot: hole,
    diameter: mount.diameter,
    facing: mount.facing,
    reach: mount.reach,
    corners,
    outlines: structures.flatMap((one) => {
      const ring = 'outline' in one ? one.outline : [];
      return corners.some(({ at }) => ring.includes(at)) ? [ring] : [];
    }),
    fromLine: first ? rightOfLine(mount.at, first.at, [sin(pan), cos(pan)]) : null,
  };
}

/** Where the ground meets a wall is told so often. */
const GROUND_STEPS = 24;

function onWall(
  scene: Scene,
  view: WallView,
  own: string,
  hole: Vec3,
  groundAt: (place: Vec2) => number,
): OnWall {
  const at = seenAt(view, hole);
  const placeAt = (x: number): Vec2 => [
    view.origin[0] + view.right[0] * x,
    view.origin[1] + view.right[1] * x,
  ];
  const groundAtHole = groundAt([hole[0], hole[1]]);
  const reach = Math.max(1, (view.soffit?.depth ?? 0) + 0.05);
  const others = scene.fixings.flatMap(({ camera, hole: other }) => {
    if (camera === own || other === null) return [];
    const name = scene.cameras.find(({ id }) => id === camera)?.name ?? camera;
    const front = inFront(view, other);
    const [x, y] = seenAt(view, other);
    const isOn = x > -0.01 && x < view.width + 0.01 && front > -0.01 && front < reach && y > view.foot - 0.01;
    // In front of the wall only what hangs under its eaves is on it.
    const isUnder = front < 0.01 || Math.abs(y - (view.soffit?.y ?? Number.NaN)) < 0.01;
    return isOn && isUnder ? [{ name, at: [x, y] as const }] : [];
  });
  return {
    view,
    hole: at,
    taped: tapedFrom(view, at, groundAtHole),
    others,
    ground: Array.from({ length: GROUND_STEPS + 1 }, (_, k): Vec2 => {
      const x = (view.width * k) / GROUND_STEPS;
      return [x, groundAt(placeAt(x))];
    }),
    groundAtHole,
  };
}
