import {
  NearestFilter,
  Scene,
  WebGLRenderTarget,
  type PerspectiveCamera,
  type Texture,
  type WebGLRenderer,
} from 'three';
import type { Assessment } from '../../assess/assessment.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { siteGroup } from '../frame.ts';
import { CameraWash } from './cameraWash.ts';

/** A part of a picture, px from its lower left corner. */
export interface Part {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * What the cameras see of the target plane, worked out at each pixel of the window and kept in a picture that is never
 * shown: the ground reads it at its own pixel. Maximum on band and state, sum on the count, so any number of cameras fits.
 */
export class Wash {
  private readonly scene = new Scene();
  private readonly group = siteGroup();
  private readonly cameras = new Map<string, CameraWash>();
  private readonly target = new WebGLRenderTarget(1, 1, {
    depthBuffer: false,
    minFilter: NearestFilter,
    magFilter: NearestFilter,
    generateMipmaps: false,
  });

  constructor() {
    this.scene.add(this.group);
  }

  /** Has the program made that the first camera will need. */
  prepare(renderer: WebGLRenderer, camera: PerspectiveCamera): void {
    const first = new CameraWash();
    this.group.add(...first.meshes);
    renderer.setRenderTarget(this.target);
    renderer.compile(this.scene, camera);
    renderer.setRenderTarget(null);
    this.group.remove(...first.meshes);
  }

  get texture(): Texture {
    return this.target.texture;
  }

  resize(width: number, height: number): void {
    this.target.setSize(width, height);
  }

  /** @param counted the cameras whose sight is shown */
  show(assessment: Assessment, counted: readonly CameraCoverage[], origin: Vec3): void {
    for (const [id, wash] of this.cameras) {
      if (counted.some(({ camera }) => camera.id === id)) continue;
      this.group.remove(...wash.meshes);
      wash.dispose();
      this.cameras.delete(id);
    }
    for (const coverage of counted) {
      let wash = this.cameras.get(coverage.camera.id);
      if (!wash) {
        wash = new CameraWash();
        this.cameras.set(coverage.camera.id, wash);
        this.group.add(...wash.meshes);
      }
      wash.show(coverage, assessment, origin);
    }
  }

  /** @param part of the kept picture that is worked out, px; the rest is left empty */
  render(renderer: WebGLRenderer, camera: PerspectiveCamera, part?: Part): void {
    if (part) this.target.viewport.set(part.x, part.y, part.width, part.height);
    renderer.setRenderTarget(this.target);
    renderer.setClearColor(0x000000, 0);
    renderer.clear(true, false, false);
    renderer.render(this.scene, camera);
    renderer.setRenderTarget(null);
  }
}
