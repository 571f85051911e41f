import type { Group, IUniform, Mesh, Vector3 } from 'three';
import type { Vec3 } from '../../base/vector.ts';
import type { Ink } from '../../draw/ink.ts';
import type { Solid } from '../../model/solid.ts';
import { inkVector, type WindowUniforms } from '../shading.ts';
import { cardUniforms, fill, screenMesh, solidMesh, tint } from './cardMesh.ts';
import { edgesOf } from './edges.ts';
import { DRAWN, HOVERED, InkEdges, SELECTED, SELECTED_CASING } from './inkEdges.ts';

const SCREEN_VEIL = 0.16;
const GLASS_VEIL = 0.3;

/** All structures: card faces, meshes one sees through, glass, and their edges; what is hovered or selected stands out. */
export class SolidsLayer {
  private readonly card = cardUniforms();
  private readonly faces: Mesh = solidMesh(this.card);
  private readonly screens: Mesh = screenMesh(this.card, SCREEN_VEIL, true);
  private readonly glass: Mesh = screenMesh(this.card, GLASS_VEIL, false);
  private readonly edges: InkEdges;
  private readonly hovered: InkEdges;
  private readonly casing: InkEdges;
  private readonly selected: InkEdges;
  private solids: readonly Solid[] = [];
  private origin: Vec3 = [0, 0, 0];
  private soft: (solid: Solid) => boolean = () => false;

  constructor(group: Group, window: WindowUniforms, eye: IUniform<Vector3>) {
    this.faces.renderOrder = 10;
    this.edges = new InkEdges(DRAWN, window, eye, 20);
    this.screens.renderOrder = 25;
    this.glass.renderOrder = 25;
    this.hovered = new InkEdges(HOVERED, window, eye, 26);
    this.casing = new InkEdges(SELECTED_CASING, window, eye, 27);
    this.selected = new InkEdges(SELECTED, window, eye, 28);
    const lines = [this.edges, this.hovered, this.casing, this.selected].map(({ mesh }) => mesh);
    group.add(this.faces, this.screens, this.glass, ...lines);
  }

  tint(colours: Ink): void {
    tint(this.card, colours);
    this.edges.ink.value = inkVector(colours.ink);
    this.hovered.ink.value = inkVector(colours.ink);
    this.casing.ink.value = inkVector(colours.casing);
    this.selected.ink.value = inkVector(colours.saffron);
  }

  /** @param soft true for solids whose inner edges are fine lines */
  show(solids: readonly Solid[], origin: Vec3, soft: (solid: Solid) => boolean): void {
    [this.solids, this.origin, this.soft] = [solids, origin, soft];
    const passing = (passage: Solid['passage']) => solids.filter((solid) => solid.passage === passage);
    fill(this.faces, passing('solid'), origin);
    fill(this.screens, passing('screen'), origin);
    fill(this.glass, passing('clear'), origin);
    this.edges.show(edgesOf(solids, origin, soft));
  }

  /** Lights up structures by id; null lights none. */
  point(hovered: string | null, selected: string | null): void {
    const none = { count: 0, ...emptyEdges };
    const of = (id: string | null) =>
      id === null
        ? none
        : edgesOf(
            this.solids.filter(({ structure }) => structure === id),
            this.origin,
            this.soft,
          );
    this.hovered.show(hovered === selected ? none : of(hovered));
    const chosen = of(selected);
    this.casing.show(chosen);
    this.selected.show(chosen);
  }

  /** The lattice on screens keeps about the same pitch on the sheet. */
  setLattice(metresPerPixel: number): void {
    this.card.uPitch.value = 2 ** Math.ceil(Math.log2(5 * metresPerPixel));
  }
}

const emptyEdges = {
  from: new Float32Array(),
  to: new Float32Array(),
  left: new Float32Array(),
  right: new Float32Array(),
  kind: new Float32Array(),
};
