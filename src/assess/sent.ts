import { JudgedCells, PlaneFields, type Fields } from '../coverage/judgedCells.ts';
import { unevenFrame } from '../coverage/unevenCells.ts';
import type { UnevenGround } from '../coverage/unevenGround.ts';
import type { Camera } from '../optics/camera.ts';
import type { Covered } from './coverCamera.ts';
import type { Ground } from './ground.ts';
import type { FoundCamera } from './shares.ts';

/** A coverage as it can be sent. */
export function sendable({ coverage: { cells, ...coverage }, shadows }: Covered): FoundCamera {
  const { rows, runs, faces } = cells;
  return { coverage, cells: { rows, runs, faces }, shadows };
}

/** The coverage that was sent, over the ground of whoever takes it over. */
export function revived({ coverage, cells, shadows }: FoundCamera, { grid, bare, uneven }: Ground): Covered {
  const { camera } = coverage;
  const fields =
    uneven === null ? new PlaneFields(camera, grid, cells.rows) : new UnevenFields(camera, uneven);
  return { coverage: { ...coverage, cells: new JudgedCells(grid, cells, bare, fields) }, shadows };
}

/** Densities over uneven ground, worked out when first asked for. */
class UnevenFields implements Fields {
  readonly across = null;
  private readonly camera: Camera;
  private readonly ground: UnevenGround;
  private made: Float32Array | null = null;

  constructor(camera: Camera, ground: UnevenGround) {
    this.camera = camera;
    this.ground = ground;
  }

  get density(): Float32Array {
    this.made ??= unevenFrame(this.camera, this.ground).density;
    return this.made;
  }
}
