import type { Fault } from '../base/fault.ts';
import type { Vec3 } from '../base/vector.ts';
import { cellFor } from '../coverage/boardGrid.ts';
import { groundHeight } from '../model/ground.ts';
import { placeMount } from '../model/mounting.ts';
import { postSolid } from '../model/post.ts';
import type { Solid } from '../model/solid.ts';
import { solidsOf } from '../model/solids.ts';
import type { Structure } from '../model/structure.ts';
import type { Camera } from '../optics/camera.ts';
import { settingOf } from '../optics/setting.ts';
import type { Plan, PlanCamera } from '../plan/plan.ts';
import type { Board, Fixing, Scene } from './scene.ts';

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

/** Builds structures; a session gives one that remembers. */
export type Build = (structure: Structure, ground: number) => Built;

/** A plan, as drawn, as sight needs it. What cannot be made is left out with a fault that says so. */
export function sceneOf(plan: Plan, build: Build = builtOf): Scene {
  const solids: Solid[] = [];
  const boards: Board[] = [];
  const faults: Fault[] = [];
  for (const id of plan.structureOrder) {
    const structure = plan.structures[id];
    if (structure === undefined) continue;
    const built = build(structure, groundHeight(plan.ground));
    solids.push(...built.solids);
    boards.push(built.board);
    faults.push(...built.faults.map((fault) => ({ ...fault, path: ['structures', id, ...fault.path] })));
  }
  const cameras: Camera[] = [];
  const fixings: Fixing[] = [];
  for (const id of plan.cameraOrder) {
    const set = plan.cameras[id];
    if (set === undefined) continue;
    const placed = placedCamera(set, plan);
    faults.push(...placed.faults.map((fault) => ({ ...fault, path: ['cameras', id, ...fault.path] })));
    if (placed.camera === null) continue;
    cameras.push(placed.camera);
    fixings.push(placed.fixing);
    if (set.mount.kind !== 'pole') continue;
    const post = postSolid(id, set.name, set.mount, groundHeight(plan.ground));
    solids.push(post);
    boards.push(boxOf([post]));
  }
  return {
    ground: groundHeight(plan.ground),
    solids,
    cameras,
    fixings,
    board: boardOf(plan.boundary, boards, cameras),
    boundary: plan.boundary,
    faults,
  };
}

type Placed =
  | { readonly camera: Camera; readonly fixing: Fixing; readonly faults: readonly Fault[] }
  | { readonly camera: null; readonly faults: readonly Fault[] };

function placedCamera(set: PlanCamera, plan: Plan): Placed {
  const mount = placeMount(set.mount, plan.structures, groundHeight(plan.ground));
  if (!mount.ok)
    return { camera: null, faults: mount.faults.map((fault) => ({ ...fault, subject: set.name })) };
  const { setting, faults } = settingOf(set.device, set.name);
  const { eye, hole, outward, host } = mount.value;
  return {
    camera: {
      id: set.id,
      name: set.name,
      eye,
      pan: set.pan,
      tilt: set.tilt,
      roll: set.roll,
      ...setting,
      range: set.range,
    },
    fixing: { camera: set.id, hole, outward, host },
    faults: [...mount.notes, ...faults],
  };
}

/** Builds one structure on ground of a height, m. */
export function builtOf(structure: Structure, ground: number): Built {
  const { solids, faults } = solidsOf(structure, ground);
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

/** The box of boundary, structures and cameras, grown by MARGIN and then to whole cells. */
function boardOf(boundary: Plan['boundary'], boards: readonly Board[], cameras: readonly Camera[]): Board {
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
  cameras.forEach(({ eye }: { eye: Vec3 }) => take(eye[0], eye[1]));
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
