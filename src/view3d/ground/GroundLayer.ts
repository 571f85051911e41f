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

const THIN = { widths: [0.9, 0.8, 0], strengths: [0.5, 0.4, 0] } as const;

/** The baseboard with its edge, the ground upon it, and the site boundary. */
export class GroundLayer {
  private readonly card = cardUniforms();
  private readonly slab: Mesh = solidMesh(this.card);
  private readonly edges: InkEdges;
  private readonly boundary: FatLines;
  private readonly shadow = new BoardShadow(-1);
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
    group.add(this.shadow.mesh, this.slab, this.surface.mesh, this.edges.mesh, this.boundary.mesh);
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
    this.boundary.tint(colours.ink);
    this.surface.uniforms.uContact.value = colours.contactShade;
  }

  show(scene: Scene, origin: Vec3): void {
    const slab = boardSolid(scene.board, scene.ground);
    fill(this.slab, [slab], origin);
    this.edges.show(edgesOf([slab], origin, () => false));
    this.surface.lay(scene.board, scene.ground, origin);
    this.surface.uniforms.uShade.value?.dispose();
    this.surface.uniforms.uShade.value = contactShade(scene);
    const z = scene.ground - origin[2];
    const ring = scene.boundary ?? [];
    this.boundary.show(
      ring.flatMap(([x, y], i) => {
        const next = ring[(i + 1) % ring.length] ?? [x, y];
        return [x - origin[0], y - origin[1], z, next[0] - origin[0], next[1] - origin[1], z];
      }),
    );
  }

  /** @param ratio device pixels per CSS pixel */
  castShadow({ board, ground }: Scene, sheet: Sheet, ratio: number): void {
    this.shadow.fall(board, ground, sheet, ratio);
    if (sheet.eye[2] < ground) this.shadow.mesh.visible = false;
  }

  /** From below, the ground is its edge alone. */
  fromBelow(below: boolean): void {
    this.slab.visible = !below;
    this.surface.mesh.visible = !below;
  }
}
