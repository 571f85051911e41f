import { Material, type Group, type IUniform, type Mesh, type Texture, type Vector3 } from 'three';
import type { Scene } from '../../assess/scene.ts';
import type { Vec3 } from '../../base/vector.ts';
import { ink, type Theme } from '../../draw/ink.ts';
import { FatLines } from '../lines/FatLines.ts';
import { inkVector, type WindowUniforms } from '../shading.ts';
import type { Sheet } from '../sheet.ts';
import { cardUniforms, fill, solidMesh, tint } from '../solids/cardMesh.ts';
import { edgesOf } from '../solids/edges.ts';
import { InkEdges } from '../solids/inkEdges.ts';
import { Surface } from '../wash/Surface.ts';
import { BoardShadow } from './BoardShadow.ts';
import { boardSolid } from './board.ts';
import { contactShade } from './contactShade.ts';
import { groundOf, skirtOf, type TerrainFaces } from './terrainFaces.ts';
import { boardEdges, drapedRing, heightLines } from './terrainLines.ts';

const THIN = { widths: [0.9, 0.8, 0], strengths: [0.5, 0.4, 0] } as const;

/** The baseboard with its edge, the ground upon it, and the site boundary. */
export class GroundLayer {
  private readonly card = cardUniforms();
  private readonly slab: Mesh = solidMesh(this.card);
  private readonly edges: InkEdges;
  private readonly boundary: FatLines;
  private readonly draped: FatLines;
  private readonly shadow = new BoardShadow(-1);
  /** On uneven ground: the sides of the board, its edges, and lines of equal height. */
  private readonly skirt: Mesh = solidMesh(this.card);
  private readonly rim: FatLines;
  private readonly heights: FatLines;
  private laid: { readonly ground: TerrainFaces; readonly origin: Vec3 } | null = null;
  readonly surface: Surface;

  constructor(group: Group, wash: IUniform<Texture>, window: WindowUniforms, eye: IUniform<Vector3>) {
    this.slab.renderOrder = 0;
    // Else the lines on the ground would sink into it.
    if (this.slab.material instanceof Material) this.slab.material.depthWrite = false;
    this.surface = new Surface(wash, window, false, 1);
    this.edges = new InkEdges(THIN, window, eye, 3);
    this.boundary = new FatLines(
      { width: 1, strength: 0.5, dash: [10, 4], depthTest: false, order: 3 },
      window,
    );
    this.skirt.renderOrder = 0;
    this.rim = new FatLines({ width: 0.9, strength: 0.5, order: 3 }, window);
    this.heights = new FatLines({ width: 0.8, strength: 0.3, order: 3 }, window);
    this.draped = new FatLines({ width: 1, strength: 0.5, dash: [10, 4], order: 3 }, window);
    const uneven = [this.rim, this.heights, this.draped].map(({ mesh }) => mesh);
    group.add(this.shadow.mesh, this.slab, this.skirt, this.surface.mesh, this.edges.mesh);
    group.add(this.boundary.mesh, ...uneven);
  }

  tint(theme: Theme): void {
    const colours = ink[theme];
    this.shadow.tint(theme);
    tint(this.card, {
      ...colours,
      cardTop: colours.ground,
      cardSouth: colours.cardEast,
      cardEast: colours.cardNorth,
    });
    this.edges.ink.value = inkVector(colours.ink);
    for (const lines of [this.boundary, this.draped, this.rim, this.heights]) lines.tint(colours.ink);
    this.surface.uniforms.uContact.value = colours.contactShade;
  }

  show(scene: Scene, origin: Vec3): void {
    this.surface.uniforms.uShade.value?.dispose();
    this.surface.uniforms.uShade.value = contactShade(scene);
    const uneven = groundOf(scene);
    if (uneven === null) this.showLevel(scene, origin);
    else this.showUneven(uneven, scene, origin);
  }

  private showLevel(scene: Scene, origin: Vec3): void {
    this.laid = null;
    const slab = boardSolid(scene.board, scene.ground);
    fill(this.slab, [slab], origin);
    fill(this.skirt, [], origin);
    this.edges.show(edgesOf([slab], origin, () => false));
    for (const lines of [this.rim, this.heights, this.draped]) lines.show([]);
    this.surface.lay(scene.board, scene.ground, origin);
    const z = scene.ground - origin[2];
    const ring = scene.boundary ?? [];
    this.boundary.show(
      ring.flatMap(([x, y], i) => {
        const next = ring[(i + 1) % ring.length] ?? [x, y];
        return [x - origin[0], y - origin[1], z, next[0] - origin[0], next[1] - origin[1], z];
      }),
    );
  }

  private showUneven(ground: TerrainFaces, { board, boundary }: Scene, origin: Vec3): void {
    const near = (value: number, i: number): number => value - (origin[i % 3] ?? 0);
    this.draped.show(drapedRing(ground, boundary ?? []).map(near));
    if (this.laid?.ground === ground && this.laid.origin === origin) return;
    this.laid = { ground, origin };
    fill(this.slab, [], origin);
    fill(this.skirt, [skirtOf(ground)], origin);
    this.edges.show(edgesOf([], origin, () => false));
    this.boundary.show([]);
    const { rim, foot, posts } = boardEdges(ground, 0);
    this.rim.show([...rim, ...foot, ...posts].map(near));
    this.heights.show(heightLines(ground).map(near));
    this.surface.layOver(ground, board, 0, origin);
  }

  /** @param ratio device pixels per CSS pixel */
  castShadow({ board, ground }: Scene, sheet: Sheet, ratio: number): void {
    this.shadow.fall(board, ground, sheet, ratio);
    if (sheet.eye[2] < ground) this.shadow.mesh.visible = false;
  }

  /** From below, the ground is its edge alone. */
  fromBelow(below: boolean): void {
    this.surface.mesh.visible = !below;
    this.slab.visible = !below && this.laid === null;
    this.skirt.visible = !below && this.laid !== null;
    for (const { mesh } of [this.heights, this.draped]) mesh.visible = !below && this.laid !== null;
  }
}
