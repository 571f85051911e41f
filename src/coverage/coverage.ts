import type { Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Grid } from '../sight/grid.ts';
import type { Sight } from '../sight/sight.ts';
import type { Area } from './area.ts';
import type { RowRuns } from './rowRuns.ts';
import type { State } from './state.ts';
import type { Target } from './target.ts';

/** What one camera makes of each cell. Arrays have one entry a cell of `grid`; they are made when they are first read. */
export interface Cells {
  readonly grid: Grid;
  /** First and last column of each row that can lie in the frame: two numbers a row. */
  readonly rows: Int32Array;
  /** What is along each row, by codes of cellCode.ts: all that the arrays say but for densities. */
  readonly runs: RowRuns;
  /** Whether the targets are faces, which can fall below the band of their density. */
  readonly faces: boolean;
  /** Index into STATES. */
  readonly state: Uint8Array;
  /** Index + 1 into the edition's bands; 0 where the state is not covered. */
  readonly band: Uint8Array;
  /** Horizontal px/m; 0 out of frame. */
  readonly density: Float32Array;
  /** On a wall, roof or patch: px/m along its own horizontal, a second number; null on level targets, which have none. */
  readonly across: Float32Array | null;
  /** Of a face: why a covered cell is below the band of its density (KEPT, TOO_STEEP, FROM_THE_SIDE); null for the rest. */
  readonly lost: Uint8Array | null;
  /** Index into the scene's solids of what hides or screens it; −1 where nothing does. */
  readonly hider: Int32Array;
  /** Visits the runs of cells in the frame: first and last, their state, and what hides or screens them or −1. */
  eachRun(visit: (from: number, to: number, state: number, hider: number) => void): void;
  /** The same camera's cells among other solids: with what lies inside them before any camera looks, and other runs. */
  among(grid: Grid, bare: Uint8Array, runs: RowRuns): Cells;
}

/** What one solid hides first. */
export interface HiderArea {
  /** Index in the scene. */
  readonly solid: number;
  readonly area: Area;
}

/** Areas within the boundary, else the board. */
export interface CameraAreas {
  /** Nothing in the way, at any density. */
  readonly seen: Area;
  readonly byState: Readonly<Record<State, Area>>;
  /** What of the frame lies inside solids. */
  readonly insideFrame: Area;
  /** One an edition band, coarsest first: covered at just that band. */
  readonly byBand: readonly Area[];
  /** Hidden, by solid, largest first. */
  readonly byHider: readonly HiderArea[];
  /** Seen faces that fall below the band of their density: looked down on too steeply, or else seen too far from the side. */
  readonly lost: { readonly tooSteep: Area; readonly fromTheSide: Area };
}

/** How far one camera serves in the vertical plane of its axis, m from the point below the lens; null where never. */
export interface Reach {
  readonly nearBlindDistance: number | null;
  /** One an edition band: the farthest target at that band or better. */
  readonly byBand: readonly (number | null)[];
}

/** The frame in space, for the picture: stops at what it meets. Site frame. */
export interface Frustum {
  /** Polylines from the lens along the frame's four corners: lens, then the first hit (or the range). */
  readonly corners: readonly Vec3[];
  /** What the frame's edge draws on the target plane and on what it meets: one polyline an edge of the frame. */
  readonly trace: readonly (readonly Vec3[])[];
  readonly axisEnd: Vec3;
  /** Index of the solid that the axis meets; −1 ground; null where it meets nothing within range. */
  readonly axisMeets: number | null;
}

/** All that one camera makes of the target surface. */
export interface CameraCoverage {
  readonly camera: Camera;
  readonly target: Target;
  readonly sight: Sight;
  readonly cells: Cells;
  readonly areas: CameraAreas;
  readonly reach: Reach;
  readonly frustum: Frustum;
}

/** All cameras asked for together. Arrays have one entry a cell. */
export interface SiteCoverage {
  readonly grid: Grid;
  /** Best band over the cameras, index + 1; 0 where none covers. */
  readonly band: Uint8Array;
  /** Index into the cameras of who gives it; 255 none. */
  readonly best: Uint8Array;
  /** How many cameras cover the cell. */
  readonly count: Uint8Array;
  readonly byBand: readonly Area[];
  /** One a camera: covered, at any band, by at least 1, 2, … of them. */
  readonly byCount: readonly Area[];
  /** Open ground that no camera covers, and the area asked about altogether (inside solids left out). */
  readonly unseen: Area;
  readonly open: Area;
}
