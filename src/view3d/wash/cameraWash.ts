import {
  AddEquation,
  BufferAttribute,
  BufferGeometry,
  CustomBlending,
  DynamicDrawUsage,
  MaxEquation,
  Mesh,
  OneFactor,
  Vector2,
  Vector3,
  DoubleSide,
  type RawShaderMaterial,
} from 'three';
import { cos, sin, tan } from '../../base/angle.ts';
import { dot, subtract, type Vec3 } from '../../base/vector.ts';
import type { Assessment } from '../../assess/assessment.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { axesOf, pixelPitch } from '../../optics/projection.ts';
import { pointOn } from '../planeFrame.ts';
import { shaderMaterial } from '../shading.ts';
import { askedOfCells, leastCosine } from './cellLabels.ts';
import { MOST_BANDS, MOST_CAPS } from './lensShader.ts';
import { FRAME_PASS, SCREEN_PASS, SEEN_PASS, washFragment, washVertex } from './washShader.ts';

const blending = {
  depthTest: false,
  depthWrite: false,
  side: DoubleSide,
  transparent: true,
  blending: CustomBlending,
  blendEquation: MaxEquation,
  blendSrc: OneFactor,
  blendDst: OneFactor,
  blendEquationAlpha: AddEquation,
  blendSrcAlpha: OneFactor,
  blendDstAlpha: OneFactor,
} as const;

const lensUniforms = () => ({
  uU: { value: new Vector3() },
  uV: { value: new Vector3() },
  uNormal: { value: new Vector3() },
  uHeight: { value: 0 },
  uRange: { value: 0 },
  uFramed: { value: true },
  uBandCount: { value: 0 },
  uBands: { value: new Float32Array(MOST_BANDS) },
  uCapCount: { value: 0 },
  uCaps: { value: Array.from({ length: MOST_CAPS }, () => new Vector2()) },
  uSides: { value: Array.from({ length: MOST_CAPS }, () => new Vector2()) },
  uLooks: { value: 0 },
  uLook: { value: new Vector2() },
  uNight: { value: 0 },
  uInfrared: { value: new Vector2() },
  uRight: { value: new Vector3() },
  uDown: { value: new Vector3() },
  uForward: { value: new Vector3() },
  uK: { value: 1 },
  uFocal: { value: new Vector2() },
  uHalfFrame: { value: new Vector2() },
});

/** The three passes of one camera: its frame, what it sees through screens, what it sees. */
export class CameraWash {
  private readonly uniforms = lensUniforms();
  private readonly passes = [FRAME_PASS, SCREEN_PASS, SEEN_PASS].map((pass) => passMesh(this.uniforms, pass));
  private shown: CameraCoverage | null = null;
  private origin: Vec3 = [0, 0, 0];

  get meshes(): readonly Mesh[] {
    return this.passes;
  }

  show(coverage: CameraCoverage, assessment: Assessment, origin: Vec3): void {
    const { edition, faceCaps } = assessment;
    this.setLens(coverage);
    this.setLight(coverage, assessment);
    this.setLooks(coverage, assessment);
    this.uniforms.uBandCount.value = Math.min(MOST_BANDS, edition.bands.length);
    edition.bands.slice(0, MOST_BANDS).forEach(({ density }, i) => {
      this.uniforms.uBands.value[i] = density;
    });
    this.uniforms.uCapCount.value = Math.min(MOST_CAPS, faceCaps.length);
    faceCaps.slice(0, MOST_CAPS).forEach(({ above, side, band }, i) => {
      this.uniforms.uSides.value[i]?.set(cos(side), sin(side));
      this.uniforms.uCaps.value[i]?.set(above >= 90 ? 1e9 : tan(above), band);
    });
    if (this.shown?.sight === coverage.sight && origin === this.origin) return;
    this.shown = coverage;
    this.origin = origin;
    this.upload(coverage, origin);
  }

  private setLens({ camera, sight }: CameraCoverage): void {
    const { plane } = sight;
    const u = this.uniforms;
    const { right, down, forward } = axesOf(camera);
    const pitch = pixelPitch(camera);
    u.uU.value.set(...plane.u);
    u.uV.value.set(...plane.v);
    u.uNormal.value.set(...plane.normal);
    u.uHeight.value = dot(subtract(camera.eye, plane.origin), plane.normal);
    u.uRange.value = camera.range;
    u.uFramed.value = sight.framed;
    u.uRight.value.set(...right);
    u.uDown.value.set(...down);
    u.uForward.value.set(...forward);
    u.uK.value = camera.k;
    u.uFocal.value.set(camera.focalLength * pitch.across, camera.focalLength * pitch.down);
    u.uHalfFrame.value.set(camera.frame.width / 2, camera.frame.height / 2);
  }

  /** Which way faces look. */
  private setLooks({ camera }: CameraCoverage, { question: { target } }: Assessment): void {
    const u = this.uniforms;
    const looks = target.kind === 'face' ? target.looks : undefined;
    u.uLooks.value = looks === undefined ? 0 : looks.kind === 'bearing' ? 1 : 2;
    if (looks?.kind === 'bearing') u.uLook.value.set(sin(looks.bearing), cos(looks.bearing));
    if (looks?.kind === 'place') u.uLook.value.set(looks.at[0] - camera.eye[0], looks.at[1] - camera.eye[1]);
  }

  /** Its own infrared at night; what lamps light comes from the cells. */
  private setLight({ camera }: CameraCoverage, assessment: Assessment): void {
    const { night } = assessment.scene;
    const u = this.uniforms;
    // Where cells judge all, the lens says only what is in sight.
    u.uNight.value = night === null || askedOfCells(assessment) === 'all' ? 0 : 1;
    const own = night?.infrared.get(camera.id);
    u.uInfrared.value.set(own?.range ?? 0, own ? leastCosine(own) : 2);
  }

  private upload({ camera, sight }: CameraCoverage, origin: Vec3): void {
    const { plane } = sight;
    const foot: readonly [number, number] = [
      dot(subtract(camera.eye, plane.origin), plane.u),
      dot(subtract(camera.eye, plane.origin), plane.v),
    ];
    const at = subtract(pointOn(plane, foot[0], foot[1]), origin);
    const [frame, screens, seen] = this.passes;
    if (!frame || !screens || !seen) return;
    for (const mesh of this.passes) {
      const { u, v, normal: n } = plane;
      mesh.matrix.set(u[0], v[0], n[0], at[0], u[1], v[1], n[1], at[1], u[2], v[2], n[2], at[2], 0, 0, 0, 1);
      mesh.matrixWorldNeedsUpdate = true;
    }
    put(frame, fan(sight.frame), foot);
    put(
      screens,
      sight.beyondScreens === sight.seen ? new Float64Array() : sight.beyondScreens.triangles,
      foot,
    );
    put(seen, sight.seen.triangles, foot);
  }

  dispose(): void {
    for (const mesh of this.passes) {
      mesh.geometry.dispose();
      (mesh.material as RawShaderMaterial).dispose();
    }
  }
}

function passMesh(uniforms: ReturnType<typeof lensUniforms>, pass: number): Mesh {
  const material = shaderMaterial(
    washVertex,
    washFragment,
    { ...uniforms, uPass: { value: pass } },
    blending,
  );
  const mesh = new Mesh(new BufferGeometry(), material);
  mesh.matrixAutoUpdate = false;
  mesh.frustumCulled = false;
  return mesh;
}

/** Puts triangles (a, b of each corner) into a mesh relative to the foot, keeping its buffer while it suffices. */
function put(mesh: Mesh, triangles: Float64Array, foot: readonly [number, number]): void {
  const { length } = triangles;
  mesh.visible = length > 0;
  if (length === 0) return;
  let place = mesh.geometry.getAttribute('place') as BufferAttribute | undefined;
  if (!place || place.array.length < length) {
    place = new BufferAttribute(new Float32Array(Math.ceil(length * 1.5)), 2).setUsage(DynamicDrawUsage);
    mesh.geometry.dispose();
    mesh.geometry.setAttribute('place', place);
  }
  for (let i = 0; i < length; i += 1)
    place.array[i] = (triangles[i] ?? 0) - (i % 2 === 0 ? foot[0] : foot[1]);
  place.clearUpdateRanges();
  place.addUpdateRange(0, length);
  place.needsUpdate = true;
  mesh.geometry.setDrawRange(0, length / 2);
}

/** The triangles of a convex polygon. */
function fan(corners: Float64Array): Float64Array {
  const count = corners.length / 2;
  if (count < 3) return new Float64Array();
  const triangles = new Float64Array((count - 2) * 6);
  for (let i = 2; i < count; i += 1) {
    triangles.set(corners.subarray(0, 2), (i - 2) * 6);
    triangles.set(corners.subarray(i * 2 - 2, i * 2 + 2), (i - 2) * 6 + 2);
  }
  return triangles;
}
