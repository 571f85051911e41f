import { MOST_SHADOWS } from '../coverage/causes.ts';
import type { Camera } from '../optics/camera.ts';
import type { Window } from '../sight/sight.ts';
import type { Covered } from './coverCamera.ts';
import type { Question } from './assessment.ts';
import { carried } from './carried.ts';
import type { Ground } from './ground.ts';
import { sameBoard } from './layouts.ts';
import type { Scene } from './scene.ts';
import { solidsChange, type SolidsChange } from './solidsChange.ts';
import { touching } from './touching.ts';

/** Among what a camera was covered, and by which rules. */
export interface Basis {
  readonly scene: Scene;
  readonly ground: Ground;
  /** Target, bands, limits and light in words: what is not the same there is covered anew. */
  readonly rules: string;
}

interface Kept {
  readonly basis: Basis;
  readonly causes: Question['causes'];
  readonly covered: Covered;
}

/** What is known of a camera: `isRough` where its causes are quick and exact ones are asked for. */
interface Known {
  readonly covered: Covered;
  readonly isRough: boolean;
}

/** Coverages by camera, carried over from one scene to the next where no change touches them. */
export class KeptCoverages {
  private readonly kept = new Map<string, Kept>();
  private change: Change | null = null;

  set(id: string, basis: Basis, causes: Question['causes'], covered: Covered): void {
    this.kept.set(id, { basis, causes, covered });
  }

  /** Forgets cameras that the plan no longer has. */
  keepOnly(has: (id: string) => boolean): void {
    for (const id of this.kept.keys()) if (!has(id)) this.kept.delete(id);
  }

  /** The coverage of a camera among these solids, carried over where that needs no new look; null where it does. */
  find(camera: Camera, basis: Basis, causes: Question['causes']): Known | null {
    const known = this.kept.get(camera.id);
    if (!known || known.basis.rules !== basis.rules || !sameCamera(known.covered.coverage.camera, camera))
      return null;
    const isRough = causes === 'exact' && known.causes === 'quick';
    if (known.basis.scene.solids === basis.scene.solids && known.basis.ground === basis.ground)
      return { covered: known.covered, isRough };
    const change = this.changeTo(known.basis, basis);
    if (change === null || !outOf(known, change, basis)) return null;
    const covered = { ...known.covered, coverage: carried(known.covered.coverage, change.around) };
    this.kept.set(camera.id, { basis, causes: known.causes, covered });
    return { covered, isRough };
  }

  /**
   * The same before the ground is laid out: whether exact causes alone are missing.
   * @returns null where the camera would have to be covered anew
   */
  foresee(
    camera: Camera,
    scene: Scene,
    rules: string,
    causes: Question['causes'],
  ): { readonly isRough: boolean } | null {
    const known = this.kept.get(camera.id);
    if (!known || known.basis.rules !== rules || !sameCamera(known.covered.coverage.camera, camera))
      return null;
    const before = known.basis.scene;
    const isRough = causes === 'exact' && known.causes === 'quick';
    if (!sameBoard(before.board, scene.board) || before.boundary !== scene.boundary) return null;
    const change = solidsChange(before.solids, scene.solids);
    return change !== null && misses(known, change.boxes) ? { isRough } : null;
  }

  /** What differs between two bases; several cameras in a row come from the same one. */
  private changeTo(before: Basis, after: Basis): Change | null {
    const last = this.change;
    if (last !== null && sameBasis(last.before, before) && sameBasis(last.after, after)) return last;
    this.change = changeOf(before, after);
    return this.change;
  }
}

const sameBasis = (one: Basis, two: Basis): boolean =>
  one.ground === two.ground && one.scene.solids === two.scene.solids;

interface Change extends SolidsChange {
  readonly before: Basis;
  readonly after: Basis;
  readonly around: Parameters<typeof carried>[1];
}

function changeOf(before: Basis, after: Basis): Change | null {
  const solids = solidsChange(before.scene.solids, after.scene.solids);
  if (solids === null || !sameSheet(before.ground, after.ground)) return null;
  const { ground } = after;
  const around = {
    ground,
    indices: solids.indices,
    solids: after.scene.solids.length,
  };
  return { ...solids, before, after, around };
}

/** Whether a change stays out of all that a coverage tells, and its areas would be got in the same way. */
function outOf(known: Kept, { before, boxes }: Change, { ground }: Basis): boolean {
  return misses(known, boxes) && (known.causes === 'quick' || sameWay(known, before.ground, ground));
}

function misses({ basis, covered }: Kept, boxes: SolidsChange['boxes']): boolean {
  // What stands in a lamp's light throws its shadow from where no camera looks.
  if (boxes.length > 0 && (basis.scene.night?.lamps.length ?? 0) > 0) return false;
  // Over uneven ground targets are on no plane that a box could lie beyond.
  if (boxes.length > 0 && basis.ground.uneven !== null) return false;
  const { plane, floor, grid } = basis.ground;
  return !boxes.some(touching(covered.coverage.camera, { plane, floor, cell: grid.cell }));
}

/** Exact causes fall back to cells by what the whole plane holds: then a camera that nothing touches is told otherwise too. */
function sameWay({ covered }: Kept, before: Ground, after: Ground): boolean {
  const [one, two] = [before.within.cut, after.within.cut];
  if (one === null || two === null) return one === two;
  const most = covered.shadows + Math.max(one.length, two.length) / 6;
  return one.length === two.length || most <= MOST_SHADOWS;
}

/** Whether two grounds have the same cells, of which the same count. */
function sameSheet(one: Ground, two: Ground): boolean {
  const [a, b] = [one.grid, two.grid];
  return (
    a.cell === b.cell &&
    a.left === b.left &&
    a.bottom === b.bottom &&
    a.columns === b.columns &&
    a.rows === b.rows &&
    (['origin', 'u', 'v', 'normal'] as const).every((part) =>
      one.plane[part].every((n, axis) => n === two.plane[part][axis]),
    ) &&
    one.floor.origin[2] === two.floor.origin[2] &&
    one.within.whole === two.within.whole &&
    // What counts is cut into these parts, so that they tell its mask too.
    sameRings([one.window, ...one.within.parts], [two.window, ...two.within.parts])
  );
}

const sameRings = (one: readonly Window[], two: readonly Window[]): boolean =>
  one.length === two.length &&
  one.every((ring, at) => {
    const other = two[at] ?? [];
    return (
      ring.length === other.length && ring.every(([x, y], n) => x === other[n]?.[0] && y === other[n]?.[1])
    );
  });

function sameCamera(one: Camera, two: Camera): boolean {
  return (
    one.name === two.name &&
    one.eye.every((n, axis) => n === two.eye[axis]) &&
    one.pan === two.pan &&
    one.tilt === two.tilt &&
    one.roll === two.roll &&
    one.focalLength === two.focalLength &&
    one.k === two.k &&
    one.range === two.range &&
    one.sensor.width === two.sensor.width &&
    one.sensor.height === two.sensor.height &&
    one.frame.width === two.frame.width &&
    one.frame.height === two.frame.height
  );
}
