import {
  ColorManagement,
  LinearSRGBColorSpace,
  NoToneMapping,
  PerspectiveCamera,
  Scene as Graph,
  Vector3,
  WebGLRenderer,
  type Group,
  type IUniform,
  type Texture,
} from 'three';
import type { Assessment } from '../assess/assessment.ts';
import type { Scene } from '../assess/scene.ts';
import { distance, subtract, type Vec3 } from '../base/vector.ts';
import { numberFromHex } from '../draw/colour.ts';
import { ink, type Theme } from '../draw/ink.ts';
import type { LaidPicture } from '../editor/pictures/siteCorners.ts';
import type { SquaredPicture } from '../editor/pictures/wallPictures.ts';
import type { Structure } from '../model/structure.ts';
import type { LampShown } from './labels/LampSigns.ts';
import { reachCircles } from './lamps.ts';
import { FatLines } from './lines/FatLines.ts';
import { CameraLayer } from './cameras/CameraLayer.ts';
import { lookAlong, siteGroup } from './frame.ts';
import { groundOf } from './ground/terrainFaces.ts';
import { GroundLayer } from './ground/GroundLayer.ts';
import { siteBox, withPictures } from './modelBox.ts';
import { eyeOf, type Orbit } from './orbit.ts';
import { windowUniforms, type WindowUniforms } from './shading.ts';
import { sheetOf } from './sheet.ts';
import { PictureLayer } from './pictures/PictureLayer.ts';
import type { PictureBitmap } from './pictures/pictureTexture.ts';
import { SquaredLayer } from './pictures/SquaredLayer.ts';
import { StandingSolids } from './solids/StandingSolids.ts';
import type { Surface } from './wash/Surface.ts';
import { TargetLayer } from './wash/TargetLayer.ts';
import { Wash } from './wash/Wash.ts';

/** What the Model shows besides the assessment. */
export interface Shown {
  readonly hovered: string | null;
  readonly selected: readonly string[];
  /** The camera whose frame is drawn. */
  readonly camera: string | null;
  /** Changes with the cameras that count. */
  readonly key: string;
  readonly counted: (camera: string) => boolean;
  /** A drag goes on: lines may be coarse. */
  readonly dragged: boolean;
  /** The plan's: some are left out of the picture, a tree is drawn softly, a block's openings have leaves. */
  readonly structures: Readonly<Record<string, Structure>>;
  /** What stands: the assessment's scene, or what is ahead of it while something is shaped. */
  readonly standing: Scene;
  /** The coverage is that of something else than what stands. */
  readonly veiled: boolean;
  readonly lamps: readonly LampShown[];
  /** Laid on the ground. */
  readonly pictures: readonly LaidPicture[];
  /** Squared onto walls. */
  readonly squared: readonly SquaredPicture[];
}

/** What a picture of two halves is made of: both show one scene, each with a wash of its own. */
export interface Halves {
  readonly renderer: WebGLRenderer;
  readonly graph: Graph;
  readonly camera: PerspectiveCamera;
  readonly group: Group;
  readonly window: WindowUniforms;
  readonly wash: Wash;
  /** What all surfaces and lines read the wash from. */
  readonly washed: IUniform<Texture>;
  readonly ground: Surface;
  readonly target: TargetLayer;
  readonly cameras: CameraLayer;
}

/** Paints two halves in place of one picture. */
export interface SplitPaint {
  show(assessment: Assessment, shown: Shown, origin: Vec3): void;
  /** Renders the washes, before the window is cleared. */
  wash(): void;
  paint(width: number, height: number): void;
  tint(theme: Theme): void;
  resize(width: number, height: number): void;
  dispose(): void;
}

/** Sites farther than this from the renderer's origin move it, so that single precision stays fine. */
const FAR_FROM_ORIGIN = 500;

/** The picture of the Model: holds what is drawn and paints it when asked. */
export class ModelScene {
  private readonly renderer: WebGLRenderer;
  private readonly camera = new PerspectiveCamera();
  private readonly scene = new Graph();
  private readonly group = siteGroup();
  private readonly window = windowUniforms();
  private readonly eye: IUniform<Vector3> = { value: new Vector3() };
  private readonly wash = new Wash();
  private readonly solids: StandingSolids;
  private readonly ground: GroundLayer;
  private readonly target: TargetLayer;
  private readonly cameras: CameraLayer;
  private readonly lampRings: FatLines;
  private readonly pictures: PictureLayer;
  private readonly squared: SquaredLayer;
  private readonly washed: IUniform<Texture>;
  private split: SplitPaint | null = null;
  private origin: Vec3 = [0, 0, 0];
  private assessment: Assessment | null = null;
  private shown: Shown | null = null;
  private theme: Theme = 'light';

  /** @param changed is called when a picture of the site has come */
  constructor(canvas: HTMLCanvasElement, bitmap: PictureBitmap, changed: () => void) {
    // Tokens are written as the screen encodes them; nothing may convert them.
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
    const texture: IUniform<Texture> = { value: this.wash.texture };
    this.washed = texture;
    this.ground = new GroundLayer(this.group, texture, this.window, this.eye);
    this.target = new TargetLayer(this.group, this.ground.surface, texture, this.window);
    const { uniforms } = this.ground.surface;
    this.pictures = new PictureLayer(this.group, texture, uniforms, this.window, bitmap, changed);
    this.solids = new StandingSolids(this.group, this.window, this.eye);
    this.squared = new SquaredLayer(this.group, bitmap, changed);
    this.cameras = new CameraLayer(this.group, this.window);
    this.lampRings = new FatLines({ width: 2, strength: 0.8, dash: [2, 4], order: 4 }, this.window);
    this.group.add(this.lampRings.mesh);
    this.scene.add(this.group);
    this.tint('light');
    // The browser makes the programs while the plan is still being worked out; asking how they fare would wait for them.
    this.renderer.debug.checkShaderErrors = false;
    this.renderer.compile(this.scene, this.camera);
    this.wash.prepare(this.renderer, this.camera);
  }

  /** Has the picture painted in two halves; null: whole again. */
  splitBy(make: ((halves: Halves) => SplitPaint) | null): void {
    this.split?.dispose();
    const { renderer, scene: graph, camera, group, window, wash, washed, target, cameras } = this;
    const ground = this.ground.surface;
    this.split =
      make && make({ renderer, graph, camera, group, window, wash, washed, ground, target, cameras });
    washed.value = wash.texture;
    this.split?.tint(this.theme);
    const { x, y } = window.uViewport.value;
    this.split?.resize(x, y);
    this.shown = null;
  }

  tint(theme: Theme): void {
    this.theme = theme;
    this.split?.tint(theme);
    this.ground.tint(theme);
    this.solids.tint(ink[theme]);
    this.cameras.tint(ink[theme]);
    this.target.tint(theme);
    this.lampRings.tint(ink[theme].ink);
    this.pictures.tint(ink[theme].ink);
  }

  resize(width: number, height: number, ratio: number): void {
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(width, height, false);
    const [w, h] = [Math.floor(width * ratio), Math.floor(height * ratio)];
    this.wash.resize(w, h);
    this.split?.resize(w, h);
    this.window.uViewport.value.set(w, h);
    this.window.uRatio.value = ratio;
    this.solids.setRatio(ratio);
  }

  show(assessment: Assessment, shown: Shown): void {
    const before = this.assessment;
    const last = this.shown;
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
    const { veiled, structures } = shown;
    const anew =
      moved ||
      before?.scene.solids !== scene.solids ||
      (!veiled && (last?.veiled === true || last?.structures !== structures));
    if (anew) this.solids.show(scene.solids, structures, this.origin);
    if (veiled && (anew || last?.standing !== shown.standing))
      this.solids.showAhead(shown.standing.solids, structures);
    this.target.veil(veiled);
    if (anew || !sameGround(before, assessment)) this.ground.show(scene, this.origin);
    if (anew || last?.hovered !== shown.hovered || !sameList(last.selected, shown.selected))
      this.solids.point(shown.hovered, shown.selected);
    if (this.split) this.split.show(assessment, shown, this.origin);
    else if (
      moved ||
      before !== assessment ||
      last?.counted !== shown.counted ||
      last.dragged !== shown.dragged
    ) {
      const counted = assessment.cameras.filter(({ camera }) => shown.counted(camera.id));
      this.wash.show(assessment, counted, this.origin);
      this.target.show(assessment, counted, this.origin, shown);
    }
    // By day a lamp lights nothing that counts.
    if (moved || before?.scene.night !== scene.night || last?.lamps !== shown.lamps)
      this.lampRings.show(scene.night === null ? [] : reachCircles(shown.lamps, this.origin));
    if (anew || last?.pictures !== shown.pictures)
      this.pictures.show(shown.pictures, groundOf(scene), this.origin);
    if (moved || last?.squared !== shown.squared) this.squared.show(shown.squared, this.origin);
    if (!this.split && (moved || before !== assessment || last?.camera !== shown.camera)) {
      const chosen = assessment.cameras.find(({ camera }) => camera.id === shown.camera) ?? null;
      this.cameras.show(chosen, this.origin);
    }
  }

  paint(orbit: Orbit, width: number, height: number): void {
    const { assessment, renderer } = this;
    if (assessment) {
      const box = withPictures(siteBox(this.shown?.standing ?? assessment.scene), this.shown?.pictures ?? []);
      const middle: Vec3 = [
        (box.low[0] + box.high[0]) / 2,
        (box.low[1] + box.high[1]) / 2,
        (box.low[2] + box.high[2]) / 2,
      ];
      lookAlong(this.camera, orbit, this.origin, width / height, {
        middle,
        radius: distance(middle, box.high) + 1,
      });
      const eye = eyeOf(orbit);
      this.eye.value.set(...subtract(eye, this.origin));
      const below = eye[2] < assessment.scene.ground;
      this.ground.fromBelow(below);
      this.pictures.fromBelow(below);
      // A wall is drawn from any height; what is behind it hides it from behind.
      const level = assessment.scene.ground + assessment.question.target.height;
      this.target.fromBelow(assessment.surface === null && eye[2] < level);
      const sheet = sheetOf(orbit, width, height);
      const scale = sheet.metresPerPixel(orbit.pivot);
      this.target.setHatch(scale);
      this.solids.setLattice(scale);
      this.ground.castShadow(assessment.scene, sheet, this.window.uRatio.value);
      if (this.split) this.split.wash();
      else this.wash.render(renderer, this.camera);
    }
    renderer.setClearColor(numberFromHex(ink[this.theme].paper), 1);
    renderer.clear(true, true, false);
    if (!assessment) return;
    if (this.split) this.split.paint(width, height);
    else renderer.render(this.scene, this.camera);
  }

  dispose(): void {
    this.split?.dispose();
    this.renderer.dispose();
  }
}

const sameGround = (one: Assessment | null, two: Assessment): boolean =>
  one !== null &&
  one.scene.boundary === two.scene.boundary &&
  one.scene.ground === two.scene.ground &&
  one.scene.board.left === two.scene.board.left &&
  one.scene.board.right === two.scene.board.right &&
  one.scene.board.bottom === two.scene.board.bottom &&
  one.scene.board.top === two.scene.board.top;

const sameList = (one: readonly string[], two: readonly string[]): boolean =>
  one.length === two.length && one.every((id, i) => id === two[i]);
