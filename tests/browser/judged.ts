import type { Assessment } from '../../src/assess/assessment.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { isWithin, nearestBlocker } from '../oracle/bruteCaster.ts';
import type { Triangles } from '../oracle/bruteCaster.ts';
import { plainDensity, plainImage } from '../oracle/plainCamera.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';

type Point = readonly [x: number, y: number, z: number];

/** What one camera makes of a point, worked out anew: rays over all triangles, and a projection of the tests' own. */
export interface Judgement {
  /** Index + 1 of the band; 0 where it is not covered. */
  readonly band: number;
  readonly density: number;
  /** In the frame, but something solid stands before it. */
  readonly hidden: boolean;
}

/** Judges points of a target surface without the engine's sight, density or bands; solids and places of lenses are the engine's. */
export class Judge {
  private readonly solids: Triangles;
  private readonly screens: Triangles;
  private readonly all: Triangles;
  private readonly cameras: readonly Camera[];
  private readonly densities: readonly number[];
  private readonly level: number;
  private readonly isFace: boolean;

  constructor({ scene, edition, question }: Assessment) {
    this.solids = rawTriangles(scene.solids, ({ passage }) => passage === 'solid');
    this.screens = rawTriangles(scene.solids, ({ passage }) => passage === 'screen');
    this.all = rawTriangles(scene.solids);
    this.cameras = scene.cameras;
    this.densities = edition.bands.map(({ density }) => density);
    this.level = scene.ground + question.target.height;
    this.isFace = question.target.kind === 'face';
  }

  /** By name of the camera; null inside a solid. */
  at(x: number, y: number): ReadonlyMap<string, Judgement> | null {
    const point: Point = [x, y, this.level];
    // The ground lies on the bottom of what stands on it: a hair above it tells.
    if (isWithin(this.all, [x, y, this.level + 1e-6])) return null;
    return new Map(this.cameras.map((camera) => [camera.name, this.judged(camera, point)]));
  }

  private judged(camera: Camera, point: Point): Judgement {
    const none = { band: 0, density: 0, hidden: false };
    const image = plainImage(camera, point);
    const { width, height } = camera.frame;
    if (image === null || image[0] < 0 || image[1] < 0 || image[0] > width || image[1] > height) return none;
    if (nearestBlocker(this.solids, camera.eye, point) !== null) return { ...none, hidden: true };
    const [dx, dy, dz] = [point[0] - camera.eye[0], point[1] - camera.eye[1], point[2] - camera.eye[2]];
    const density = plainDensity(camera, point);
    if (nearestBlocker(this.screens, camera.eye, point) !== null || Math.hypot(dx, dy, dz) > camera.range)
      return { ...none, density };
    const reached = this.densities.filter((least) => density >= least).length;
    if (!this.isFace) return { band: reached, density, hidden: false };
    // A face from above: past 20° it no longer serves to identify, past 30° not to recognise. Common practice, no source.
    const above = (Math.atan2(-dz, Math.hypot(dx, dy)) * 180) / Math.PI;
    const most = above > 30 ? 125 : above > 20 ? 250 : Infinity;
    const kept = this.densities.filter((least) => least < most).length;
    return { band: Math.min(reached, kept), density, hidden: false };
  }
}
