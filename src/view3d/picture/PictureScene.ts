import {
  ColorManagement,
  LinearSRGBColorSpace,
  Matrix4,
  NoToneMapping,
  PerspectiveCamera,
  Scene as Graph,
  Vector3,
  WebGLRenderer,
  type IUniform,
  type Texture,
} from 'three';
import type { Assessment } from '../../assess/assessment.ts';
import type { Scene } from '../../assess/scene.ts';
import { distance, scale, subtract, type Vec3 } from '../../base/vector.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { numberFromHex } from '../../draw/colour.ts';
import { ink, type Theme } from '../../draw/ink.ts';
import type { Structure } from '../../model/structure.ts';
import type { Camera } from '../../optics/camera.ts';
import { uprightCamera } from '../../optics/upright.ts';
import { rendererFromSite, siteGroup } from '../frame.ts';
import { GroundLayer } from '../ground/GroundLayer.ts';
import { windowUniforms } from '../shading.ts';
import { StandingSolids } from '../solids/StandingSolids.ts';
import { TargetLayer } from '../wash/TargetLayer.ts';
import { Wash } from '../wash/Wash.ts';
import { aloneOf } from './aloneOf.ts';
import { bentFaces, faceLayout, flatFace, type FaceLayout, type ViewFace } from './viewFaces.ts';
import { Warp } from './Warp.ts';

/** What the picture shows besides the assessment. */
export interface PictureShown {
  readonly camera: Camera;
  readonly coverage: CameraCoverage;
  readonly structures: Readonly<Record<string, Structure>>;
  /** What stands, ahead of the coverage while something is shaped. */
  readonly standing: Scene;
  readonly veiled: boolean;
  readonly dragged: boolean;
  /** How much of the wash is drawn: through it the picture itself must still be seen. */
  readonly wash: number;
}

/** Nearer than this nothing is drawn, and lines are drawn so much less before their faces than in the Model. */
const [NEAR, BIAS] = [0.005, 0.0125];
/** Flat pictures that are bent afterwards are so much finer than the window, so that lines stay crisp where they are drawn out. */
const FINER = 1.5;
const FAR_FROM_ORIGIN = 500;
const HERE: Vec3 = [0, 0, 0];

/** Paints what one camera sees, by the Model's own layers, through a lens of any law. */
export class PictureScene {
  private readonly renderer: WebGLRenderer;
  private readonly camera = new PerspectiveCamera();
  private readonly graph = new Graph();
  private readonly group = siteGroup();
  private readonly window = windowUniforms();
  private readonly eye: IUniform<Vector3> = { value: new Vector3() };
  private readonly wash = new Wash();
  private readonly warp = new Warp();
  private readonly solids: StandingSolids;
  private readonly ground: GroundLayer;
  private readonly target: TargetLayer;
  private origin: Vec3 = HERE;
  private assessment: Assessment | null = null;
  private shown: PictureShown | null = null;
  private theme: Theme = 'light';
  private width = 1;
  private height = 1;
  private ratio = 1;
  private layout: { readonly key: string; readonly value: FaceLayout } | null = null;

  constructor(canvas: HTMLCanvasElement) {
    ColorManagement.enabled = false;
    this.renderer = new WebGLRenderer({
      canvas,
      antialias: false,
      alpha: false,
      stencil: false,
      powerPreference: 'low-power',
    });
    this.renderer.outputColorSpace = LinearSRGBColorSpace;
    this.renderer.toneMapping = NoToneMapping;
    this.renderer.autoClear = false;
    this.renderer.debug.checkShaderErrors = false;
    this.window.uBias.value = BIAS;
    const texture: IUniform<Texture> = { value: this.wash.texture };
    this.ground = new GroundLayer(this.group, texture, this.window, this.eye);
    this.target = new TargetLayer(this.group, this.ground.surface, texture, this.window);
    this.solids = new StandingSolids(this.group, this.window, this.eye);
    this.graph.add(this.group);
    this.camera.matrixAutoUpdate = false;
    this.tint('light');
  }

  tint(theme: Theme): void {
    this.theme = theme;
    this.ground.tint(theme);
    this.solids.tint(ink[theme]);
    this.target.tint(theme);
    this.warp.tint(ink[theme].sunk);
  }

  /** @param ratio device pixels per CSS pixel */
  resize(width: number, height: number, ratio: number): void {
    [this.width, this.height, this.ratio] = [Math.floor(width * ratio), Math.floor(height * ratio), ratio];
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(width, height, false);
  }

  show(assessment: Assessment, shown: PictureShown): void {
    const [before, last] = [this.assessment, this.shown];
    this.assessment = assessment;
    this.shown = shown;
    const { scene } = assessment;
    const middle: Vec3 = [
      (scene.board.left + scene.board.right) / 2,
      (scene.board.bottom + scene.board.top) / 2,
      scene.ground,
    ];
    const moved = distance(middle, this.origin) > FAR_FROM_ORIGIN;
    if (moved) this.origin = middle;
    const { veiled, structures, coverage } = shown;
    const anew =
      moved ||
      before?.scene.solids !== scene.solids ||
      (!veiled && (last?.veiled === true || last?.structures !== structures));
    if (anew) this.solids.show(scene.solids, structures, this.origin);
    if (veiled && (anew || last?.standing !== shown.standing))
      this.solids.showAhead(shown.standing.solids, structures);
    if (anew || before?.scene.board !== scene.board || before.scene.boundary !== scene.boundary)
      this.ground.show(scene, this.origin);
    if (moved || last?.coverage !== coverage || last.dragged !== shown.dragged || before !== assessment) {
      this.wash.show(assessment, [coverage], this.origin);
      this.target.show(aloneOf(assessment, coverage), [coverage], this.origin, shown);
    }
    this.target.veil(veiled);
    if (!veiled) this.target.washed.uniforms.uVeil.value = 1 - shown.wash;
  }

  paint(): void {
    const { assessment, shown, renderer, width, height } = this;
    renderer.setRenderTarget(null);
    renderer.setClearColor(numberFromHex(ink[this.theme].paper), 1);
    if (!assessment || !shown) {
      renderer.clear(true, true, false);
      return;
    }
    const camera = uprightCamera(shown.camera);
    const { eye } = camera;
    this.eye.value.set(...subtract(eye, this.origin));
    const level = assessment.scene.ground + assessment.question.target.height;
    this.ground.fromBelow(eye[2] < assessment.scene.ground);
    this.target.fromBelow(assessment.surface === null && eye[2] < level);
    // About what a metre takes up a few paces off.
    const perMetre = (camera.focalLength * width) / camera.sensor.width / 8;
    const hatch = this.ratio / perMetre;
    this.target.setHatch(hatch);
    this.solids.setLattice(hatch);
    this.setRatio(camera.k === 1 ? this.ratio : this.ratio * FINER);
    if (camera.k === 1) {
      this.wash.resize(width, height);
      this.face(flatFace(camera, width, height), eye, false);
      return;
    }
    const faces = bentFaces(camera, this.layoutFor(camera));
    this.warp.set(camera, faces, width, height);
    this.wash.resize(faces.width, faces.height);
    for (const face of faces.faces) this.face(face, eye, true);
    this.warp.render(renderer);
  }

  /** Stays the same while only the aim changes. */
  private layoutFor(camera: Camera): FaceLayout {
    const { focalLength, k, sensor, frame } = camera;
    const key = JSON.stringify([focalLength, k, sensor, frame, this.width]);
    if (this.layout?.key !== key)
      this.layout = { key, value: faceLayout(camera, (FINER * this.width) / frame.width) };
    return this.layout.value;
  }

  private setRatio(ratio: number): void {
    if (this.window.uRatio.value === ratio) return;
    this.window.uRatio.value = ratio;
    this.solids.setRatio(ratio);
  }

  /** Paints one flat picture. @param kept among the faces that are bent afterwards; else on the window */
  private face(face: ViewFace, eye: Vec3, kept: boolean): void {
    const { renderer, camera } = this;
    const { part } = face;
    this.look(face, eye);
    this.window.uViewport.value.set(part.width, part.height);
    this.wash.render(renderer, camera, part);
    const { target } = this.warp;
    if (kept) {
      target.viewport.set(part.x, part.y, part.width, part.height);
      target.scissor.set(part.x, part.y, part.width, part.height);
      target.scissorTest = true;
    }
    renderer.setRenderTarget(kept ? target : null);
    renderer.setClearColor(numberFromHex(ink[this.theme].paper), 1);
    renderer.clear(true, true, false);
    renderer.render(this.graph, camera);
  }

  private look({ right, up, ahead, left, most, bottom, top }: ViewFace, eye: Vec3): void {
    const { camera } = this;
    const at = rendererFromSite(subtract(eye, this.origin));
    const r = rendererFromSite(right);
    const u = rendererFromSite(up);
    const b = rendererFromSite(scale(ahead, -1));
    camera.matrix.copy(
      new Matrix4().set(
        r[0],
        u[0],
        b[0],
        at[0],
        r[1],
        u[1],
        b[1],
        at[1],
        r[2],
        u[2],
        b[2],
        at[2],
        0,
        0,
        0,
        1,
      ),
    );
    camera.updateMatrixWorld(true);
    const { board, ground } = this.assessment?.scene ?? { board: NO_BOARD, ground: 0 };
    const far = [
      [board.left, board.bottom],
      [board.right, board.bottom],
      [board.right, board.top],
      [board.left, board.top],
    ].reduce((away, [x = 0, y = 0]) => Math.max(away, distance([x, y, ground - 5], eye)), 50);
    camera.projectionMatrix.makePerspective(
      left * NEAR,
      most * NEAR,
      top * NEAR,
      bottom * NEAR,
      NEAR,
      far + 50,
    );
    camera.projectionMatrixInverse.copy(camera.projectionMatrix).invert();
  }

  dispose(): void {
    this.warp.dispose();
    this.renderer.dispose();
  }
}

const NO_BOARD = { left: 0, right: 0, bottom: 0, top: 0 };
