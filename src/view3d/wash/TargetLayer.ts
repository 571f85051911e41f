import type { Group, IUniform, Texture } from 'three';
import type { Assessment } from '../../assess/assessment.ts';
import { scale, subtract, type Vec3 } from '../../base/vector.ts';
import type { FlatSurface } from '../../model/surface.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { bandColours, contourInk } from '../../draw/bandInk.ts';
import { ink, type Theme } from '../../draw/ink.ts';
import { groundOf } from '../ground/terrainFaces.ts';
import { boardEdges } from '../ground/terrainLines.ts';
import { FatLines } from '../lines/FatLines.ts';
import { inkVector, type WindowUniforms } from '../shading.ts';
import { askedOfCells, cellLabels } from './cellLabels.ts';
import { MOST_BANDS } from './lensShader.ts';
import { Surface } from './Surface.ts';
import type { Shown } from '../ModelScene.ts';
import { outlineOf, openingsOn } from './surfaceOutline.ts';
import { washSegments } from './washSegments.ts';
import { WashLines } from './WashLines.ts';

/** How much of what lies beneath it a plane in the air covers. */
const THROUGH = 0.84;

/** The share of the coverage that gives way to the ground while it is not that of what stands. */
const VEIL = 0.6;

/** How far before a wall or a roof the wash on it is drawn, m. */
const LIFT = 0.02;

/** The wash with its lines: on the ground, or on a plane above it that lower things show through and solids cut. */
export class TargetLayer {
  private readonly plane: Surface;
  private readonly onGround: WashLines;
  private readonly onPlane: WashLines;
  private readonly edge: FatLines;
  private readonly posts: FatLines;
  private readonly outline: FatLines;
  private readonly openings: FatLines;
  private readonly ground: Surface;
  private theme: Theme = 'light';
  private bands = 0;
  private raised = false;
  private lifted: {
    readonly surface: FlatSurface;
    readonly origin: Vec3;
    readonly place: Vec3;
  } | null = null;
  private below = false;
  private veiled = false;

  constructor(group: Group, ground: Surface, wash: IUniform<Texture>, window: WindowUniforms) {
    this.ground = ground;
    this.onGround = new WashLines(wash, window, false, 2);
    this.plane = new Surface(wash, window, true, 30);
    this.onPlane = new WashLines(wash, window, true, 31);
    this.edge = new FatLines({ width: 1, strength: 0.7, dash: [7, 4], order: 31 }, window);
    this.posts = new FatLines({ width: 0.9, strength: 0.7, order: 31 }, window);
    this.outline = new FatLines({ width: 1.5, order: 32 }, window);
    this.openings = new FatLines({ width: 0.9, strength: 0.7, order: 32 }, window);
    const lines = [this.edge, this.posts, this.outline, this.openings].map(({ mesh }) => mesh);
    group.add(this.onGround.mesh, this.plane.mesh, this.onPlane.mesh, ...lines);
  }

  /** The surface that carries the wash at present. */
  get washed(): Surface {
    return this.raised ? this.plane : this.ground;
  }

  tint(theme: Theme): void {
    this.theme = theme;
    const colours = ink[theme];
    for (const surface of [this.ground, this.plane]) {
      surface.uniforms.uGround.value = inkVector(colours.ground);
      surface.uniforms.uCoral.value = inkVector(colours.coralLine);
    }
    for (const lines of [this.onGround, this.onPlane]) {
      lines.uniforms.uInk.value = inkVector(colours.ink);
      lines.uniforms.uCoral.value = inkVector(colours.coralLine);
    }
    this.edge.tint(colours.ink);
    this.posts.tint(colours.ink);
    this.outline.tint(colours.ink);
    this.openings.tint(colours.ink);
    this.tintBands();
  }

  private tintBands(): void {
    const colours = bandColours(Math.max(1, this.bands), this.theme).slice(0, MOST_BANDS);
    const { ground } = ink[this.theme];
    colours.forEach((band, i) => {
      const line = inkVector(contourInk(colours[i - 1] ?? ground, band, this.theme));
      for (const { uniforms } of [this.ground, this.plane]) uniforms.uBandInk.value[i] = inkVector(band);
      for (const { uniforms } of [this.onGround, this.onPlane]) uniforms.uContourInk.value[i] = line;
    });
  }

  show(
    assessment: Assessment,
    counted: readonly CameraCoverage[],
    origin: Vec3,
    { dragged, structures }: Pick<Shown, 'dragged' | 'structures'>,
  ): void {
    if (assessment.edition.bands.length !== this.bands) {
      this.bands = assessment.edition.bands.length;
      this.tintBands();
    }
    const { surface } = assessment;
    const { board, ground } = assessment.scene;
    const height = assessment.question.target.height;
    const raised = height > 0 || surface !== null;
    this.raised = raised;
    this.ground.uniforms.uWashed.value = !raised;
    this.plane.uniforms.uFill.value = surface === null ? THROUGH : 1;
    const place = surface === null ? origin : this.liftedFrom(surface, origin);
    const { count, from, to, kind } = washSegments(counted, assessment, place, dragged);
    (raised ? this.onPlane : this.onGround).show(count, from, to, kind);
    this.order();
    const asked = askedOfCells(assessment);
    const labels = asked === 'nothing' ? null : cellLabels(assessment, counted, asked);
    const shift: readonly [number, number] = surface === null ? [origin[0], origin[1]] : [0, 0];
    (raised ? this.plane : this.ground).ask(labels, asked, shift);
    (raised ? this.ground : this.plane).ask(null, asked, shift);
    if (surface !== null) {
      this.plane.layOn(surface, place);
      this.edge.show([]);
      this.posts.show([]);
      this.outline.show(outlineOf(surface, place));
      this.openings.show(openingsOn(surface, structures, place));
      return;
    }
    this.outline.show([]);
    this.openings.show([]);
    const faces = groundOf(assessment.scene);
    if (faces !== null) {
      const near = (value: number, i: number): number => value - (origin[i % 3] ?? 0);
      const { rim, posts } = boardEdges(faces, height);
      if (raised) this.plane.layOver(faces, board, height, origin);
      this.edge.show(raised ? rim.map(near) : []);
      this.posts.show(raised ? posts.map(near) : []);
      return;
    }
    if (raised) this.plane.lay(board, ground + height, origin);
    const [l, b, r, t] = [
      board.left - origin[0],
      board.bottom - origin[1],
      board.right - origin[0],
      board.top - origin[1],
    ];
    const [low, z] = [ground - origin[2], ground + height - origin[2]];
    const corners = [
      [l, b],
      [r, b],
      [r, t],
      [l, t],
    ] as const;
    this.edge.show(
      raised
        ? corners.flatMap(([x, y], i) => {
            const next = corners[(i + 1) % 4] ?? [x, y];
            return [x, y, z, next[0], next[1], z];
          })
        : [],
    );
    this.posts.show(raised ? corners.flatMap(([x, y]) => [x, y, low, x, y, z]) : []);
  }

  /** What places on a face are given from, so that the wash lies a hair before it; the same object while neither changes. */
  private liftedFrom(surface: FlatSurface, origin: Vec3): Vec3 {
    if (this.lifted?.surface !== surface || this.lifted.origin !== origin)
      this.lifted = { surface, origin, place: subtract(origin, scale(surface.plane.normal, LIFT)) };
    return this.lifted.place;
  }

  /** While what stands is ahead of its coverage, this is paler, and without lines. */
  veil(on: boolean): void {
    if (this.veiled === on) return;
    this.veiled = on;
    for (const { uniforms } of [this.ground, this.plane]) uniforms.uVeil.value = on ? VEIL : 0;
    this.order();
  }

  /** Pitch of the hatch: chosen once a view, so that it stays put on the ground while orbiting. */
  setHatch(metresPerPixel: number): void {
    const pitch = 2 ** Math.ceil(Math.log2(7 * metresPerPixel));
    const between = Math.min(1, Math.max(0, (pitch / metresPerPixel - 12) / 2));
    for (const { uniforms } of [this.ground, this.plane]) {
      uniforms.uPitch.value = pitch;
      uniforms.uBetween.value = between;
    }
  }

  /** From below neither ground nor plane is drawn. */
  fromBelow(below: boolean): void {
    this.below = below;
    this.order();
  }

  private order(): void {
    this.plane.mesh.visible = this.raised && !this.below;
    this.onPlane.mesh.visible = this.raised && !this.below && !this.veiled;
    this.onGround.mesh.visible = !this.raised && !this.below && !this.veiled;
  }
}
