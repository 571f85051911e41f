import type { Fault } from '../base/fault.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import { cellFor } from '../coverage/boardGrid.ts';
import type { Night } from '../coverage/light.ts';
import { groundCorners, groundHeight } from '../model/ground.ts';
import { placeMount } from '../model/mounting.ts';
import { postSolid } from '../model/post.ts';
import type { Solid } from '../model/solid.ts';
import { solidsOf } from '../model/solids.ts';
import { terrainOf } from '../model/terrain.ts';
import type { Structure } from '../model/structure.ts';
import type { Camera } from '../optics/camera.ts';
import { pictureRoll, settingOf } from '../optics/setting.ts';
import type { Plan, PlanCamera, Situation } from '../plan/plan.ts';
import type { Board, Fixing, Scene } from './scene.ts';
import { standingIn } from './standing.ts';

/** How far the board reaches beyond all that stands on it, m. */
const MARGIN = 5;
/** Half the side of the board of an empty plan, m. */
const EMPTY = 10;

/** The solids of one structure, the box around them over ground, and what could not be made of it. */
export interface Built {
  readonly solids: readonly Solid[];
  readonly faults: readonly Fault[];
  readonly board: Board;
}

/** Builds structures as a situation has them, null as drawn; a session gives one that remembers. */
export type Build = (structure: Structure, ground: number, situation: Situation | null) => Built;

/** A plan in a situation, null as drawn, as sight needs it. What cannot be made is left out with a fault that says so. */
export function sceneOf(
  plan: Plan,
  situation: Situation | null,
  build: Build = builtOf,
  terrainFor: typeof terrainOf = terrainOf,
  place: typeof placeMount = placeMount,
): Scene {
  const ground = groundHeight(plan.ground);
  const away = new Set(situation?.away);
  const solids: Solid[] = [];
  const boards: Board[] = [];
  const faults: Fault[] = [];
  for (const id of plan.structureOrder) {
    const structure = plan.structures[id];
    if (structure === undefined) continue;
    boards.push(build(structure, ground, null).board);
    if (away.has(id)) continue;
    const built = build(structure, ground, situation);
    solids.push(...built.solids);
    faults.push(...built.faults.map((fault) => ({ ...fault, path: ['structures', id, ...fault.path] })));
  }
  // Where cameras are over ground does not hang on its height: the board comes first, then the ground across it.
  const drawn = plan.cameraOrder.flatMap((id) => plan.cameras[id] ?? []);
  const board = boardOf(plan, boards, eyesOf(drawn, plan, ground, place));
  const made = terrainFor(plan.ground, board);
  faults.push(...(made?.faults ?? []).map((fault) => ({ ...fault, path: ['ground', ...fault.path] })));
  const terrain = made?.terrain ?? null;
  const groundAt = ([x, y]: Vec2): number => terrain?.heightAt(x, y) ?? ground;
  const cameras: Camera[] = [];
  const fixings: Fixing[] = [];
  for (const set of drawn) {
    const { id } = set;
    const foot = set.mount.kind === 'pole' ? groundAt(set.mount.at) : ground;
    const placed = placedCamera(set, plan, foot, place);
    const told = placed.camera === null ? placed.faults : [...placed.faults, ...awayFaults(set, plan, away)];
    faults.push(...told.map((fault) => ({ ...fault, path: ['cameras', id, ...fault.path] })));
    if (placed.camera === null) continue;
    if ('host' in set.mount && away.has(set.mount.host)) continue;
    cameras.push(placed.camera);
    fixings.push(placed.fixing);
    if (set.mount.kind !== 'pole') continue;
    solids.push(postSolid(id, set.name, set.mount, foot));
  }
  if (terrain !== null) solids.push(terrain.solid);
  return {
    situation: situation?.id ?? null,
    night: situation?.night ? nightOf(plan, groundAt) : null,
    ground,
    solids,
    cameras,
    fixings,
    board,
    boundary: plan.boundary,
    closing: plan.settings.screenClosing,
    patches: plan.patchOrder.flatMap((id) => plan.patches[id] ?? []),
    faults,
  };
}

/** A camera on a structure that is away is away with it. */
function awayFaults({ name, mount }: PlanCamera, plan: Plan, away: ReadonlySet<string>): readonly Fault[] {
  if (!('host' in mount) || !away.has(mount.host)) return [];
  const given = plan.structures[mount.host]?.name ?? mount.host;
  return [{ code: 'mount.away', path: ['mount', 'host'], given, subject: name }];
}

/** What lights the site at night: the cameras' own light, and lamps at their heights above the ground. */
export function nightOf(plan: Plan, groundAt: (place: Vec2) => number): Night {
  const infrared = plan.cameraOrder.flatMap((id) => {
    const own = plan.cameras[id]?.infrared;
    return own ? [[id, own] as const] : [];
  });
  const lamps = plan.lampOrder.flatMap((id): Night['lamps'] => {
    const lamp = plan.lamps[id];
    if (!lamp) return [];
    const { name, at, height, light } = lamp;
    return [{ id, name, eye: [at[0], at[1], groundAt(at) + height], light }];
  });
  return { infrared: new Map(infrared), lamps, leastLux: plan.settings.leastLux };
}

const eyesOf = (
  drawn: readonly PlanCamera[],
  plan: Plan,
  ground: number,
  place: typeof placeMount,
): readonly Vec3[] =>
  drawn.map((set) => placedCamera(set, plan, ground, place).camera?.eye).filter((eye) => eye !== undefined);

const ofMount = (fault: Fault): Fault => ({ ...fault, path: ['mount', ...fault.path] });

type Placed =
  | { readonly camera: Camera; readonly fixing: Fixing; readonly faults: readonly Fault[] }
  | { readonly camera: null; readonly faults: readonly Fault[] };

function placedCamera(set: PlanCamera, plan: Plan, ground: number, place: typeof placeMount): Placed {
  const mount = place(set.mount, plan.structures, ground);
  if (!mount.ok)
    return {
      camera: null,
      faults: mount.faults.map((fault) => ({ ...ofMount(fault), subject: set.name })),
    };
  const { setting, faults } = settingOf(set.device, set.name);
  const { eye, hole, outward, host } = mount.value;
  return {
    camera: {
      id: set.id,
      name: set.name,
      eye,
      pan: set.pan,
      tilt: set.tilt,
      roll: pictureRoll(set.device, set.roll),
      ...setting,
      range: set.range,
    },
    fixing: { camera: set.id, hole, outward, host },
    faults: [...mount.notes.map(ofMount), ...faults],
  };
}

/** Builds one structure on ground of a height, m, as a situation has it. */
export function builtOf(structure: Structure, ground: number, situation: Situation | null): Built {
  const standing = situation === null ? structure : standingIn(structure, situation).structure;
  const { solids, faults } = solidsOf(standing, ground);
  return { solids, faults, board: boxOf(solids) };
}

/** The box over ground around solids; left > right where there are none. */
export function boxOf(solids: readonly Solid[]): Board {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { positions } of solids)
    for (let at = 0; at < positions.length; at += 3) {
      const [x, y] = [positions[at] ?? 0, positions[at + 1] ?? 0];
      left = Math.min(left, x);
      right = Math.max(right, x);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
    }
  return { left, bottom, right, top };
}

/**
 * The box of boundary, structures, posts and cameras, grown by MARGIN and then to whole cells; of a plan that has none of
 * them, the box of its ground.
 */
function boardOf(
  { boundary, cameras, ground }: Plan,
  boards: readonly Board[],
  eyes: readonly Vec3[],
): Board {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (x: number, y: number) => {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  };
  boundary?.forEach(([x, y]) => take(x, y));
  for (const board of boards) {
    if (board.left > board.right) continue;
    take(board.left, board.bottom);
    take(board.right, board.top);
  }
  eyes.forEach(([x, y]) => take(x, y));
  for (const { mount } of Object.values(cameras)) if (mount.kind === 'pole') take(mount.at[0], mount.at[1]);
  if (left > right) groundCorners(ground).forEach(([x, y]) => take(x, y));
  if (left > right)
    [left, bottom, right, top] = [MARGIN - EMPTY, MARGIN - EMPTY, EMPTY - MARGIN, EMPTY - MARGIN];
  const cell = cellFor(right - left + 2 * MARGIN, top - bottom + 2 * MARGIN);
  const grown = (size: number) => Math.ceil((size + 2 * MARGIN) / cell - 1e-6) * cell;
  return {
    left: left - MARGIN,
    bottom: bottom - MARGIN,
    right: left - MARGIN + grown(right - left),
    top: bottom - MARGIN + grown(top - bottom),
  };
}
