import {
  BufferGeometry,
  Float32BufferAttribute,
  LinearFilter,
  Mesh,
  PerspectiveCamera,
  Scene,
  Vector2,
  Vector3,
  Vector4,
  WebGLRenderTarget,
  type Texture,
  type WebGLRenderer,
} from 'three';
import { dot, type Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { axesOf, pixelPitch } from '../../optics/projection.ts';
import { inkVector, shaderMaterial } from '../shading.ts';
import type { ViewFaces } from './viewFaces.ts';
import { MOST_FACES, warpFragment, warpVertex } from './warpShader.ts';

const vectors = () => Array.from({ length: MOST_FACES }, () => new Vector3());
const quads = () => Array.from({ length: MOST_FACES }, () => new Vector4());

/** Bends flat faces into the picture of a lens. */
export class Warp {
  /** Holds the faces. */
  readonly target = new WebGLRenderTarget(1, 1, {
    minFilter: LinearFilter,
    magFilter: LinearFilter,
    generateMipmaps: false,
  });

  private readonly uniforms = {
    uFaces: { value: null as Texture | null },
    uSize: { value: new Vector2() },
    uK: { value: 0 },
    uFocal: { value: new Vector2() },
    uHalf: { value: new Vector2() },
    uBeyond: { value: new Vector3() },
    uCount: { value: 0 },
    uRight: { value: vectors() },
    uUp: { value: vectors() },
    uAhead: { value: vectors() },
    uSlopes: { value: quads() },
    uPart: { value: quads() },
  };

  private readonly scene = new Scene();
  private readonly eye = new PerspectiveCamera();

  constructor() {
    const material = shaderMaterial(warpVertex, warpFragment, this.uniforms, {
      depthTest: false,
      depthWrite: false,
    });
    const geometry = new BufferGeometry();
    // One triangle over the whole window.
    geometry.setAttribute('place', new Float32BufferAttribute([-1, -1, 3, -1, -1, 3], 2));
    geometry.setIndex([0, 1, 2]);
    const mesh = new Mesh(geometry, material);
    mesh.frustumCulled = false;
    this.scene.add(mesh);
    this.uniforms.uFaces.value = this.target.texture;
  }

  /** @param beyond what stands where the lens has no ray, #RRGGBB */
  tint(beyond: string): void {
    this.uniforms.uBeyond.value = inkVector(beyond);
  }

  /** Takes up how a lens sees, and where its faces stand. @param camera upright @param width, height of the window, device px */
  set(camera: Camera, { faces, width: wide, height: high }: ViewFaces, width: number, height: number): void {
    if (this.target.width !== wide || this.target.height !== high) this.target.setSize(wide, high);
    const u = this.uniforms;
    const pitch = pixelPitch(camera);
    const scale: Readonly<Record<'x' | 'y', number>> = {
      x: width / camera.frame.width,
      y: height / camera.frame.height,
    };
    u.uSize.value.set(wide, high);
    u.uK.value = camera.k;
    u.uFocal.value.set(
      camera.focalLength * pitch.across * scale.x,
      camera.focalLength * pitch.down * scale.y,
    );
    u.uHalf.value.set(width / 2, height / 2);
    u.uCount.value = faces.length;
    const { right, down, forward } = axesOf(camera);
    const own = (way: Vec3): Vec3 => [dot(way, right), -dot(way, down), dot(way, forward)];
    faces.forEach((face, i) => {
      u.uRight.value[i]?.set(...own(face.right));
      u.uUp.value[i]?.set(...own(face.up));
      u.uAhead.value[i]?.set(...own(face.ahead));
      u.uSlopes.value[i]?.set(face.left, face.bottom, face.most - face.left, face.top - face.bottom);
      const { x, y, width: w, height: h } = face.part;
      u.uPart.value[i]?.set(x, y, w, h);
    });
  }

  render(renderer: WebGLRenderer): void {
    renderer.setRenderTarget(null);
    renderer.render(this.scene, this.eye);
  }

  dispose(): void {
    this.target.dispose();
  }
}
