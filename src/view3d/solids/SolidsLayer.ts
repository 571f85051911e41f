import { Material, type Group, type IUniform, type Mesh, type Vector3 } from 'three';
import type { Vec3 } from '../../base/vector.ts';
import { between } from '../../draw/colour.ts';
import type { Ink } from '../../draw/ink.ts';
import type { Solid } from '../../model/solid.ts';
import { FatLines } from '../lines/FatLines.ts';
import { inkVector, type WindowUniforms } from '../shading.ts';
import { cardUniforms, fill, screenMesh, solidMesh, tint } from './cardMesh.ts';
import { courseEnds } from './courses.ts';
import { edgesOf } from './edges.ts';
import { DRAWN, HOVERED, InkEdges, SELECTED, SELECTED_CASING } from './inkEdges.ts';
import type { Panes } from './panes.ts';

/** How much darker than its wall a leaf or pane is. */
const PANE = 0.1;
const SCREEN_VEIL = 0.16;
const GLASS_VEIL = 0.3;

/** All structures: card faces, meshes one sees through, glass, and their edges; what is hovered or selected stands out. */
export class SolidsLayer {
  private readonly card = cardUniforms();
  private readonly faces: Mesh = solidMesh(this.card);
  private readonly screens: Mesh = screenMesh(this.card, SCREEN_VEIL, true);
  private readonly glass: Mesh = screenMesh(this.card, GLASS_VEIL, false);
  private readonly paneCard = cardUniforms();
  private readonly panes: Mesh = solidMesh(this.paneCard);
  private readonly bars: FatLines;
  private readonly courses: FatLines;
  private readonly edges: InkEdges;
  private readonly hovered: InkEdges;
  private readonly casing: InkEdges;
  private readonly selected: InkEdges;
  private solids: readonly Solid[] = [];
  private origin: Vec3 = [0, 0, 0];
  private soft: (solid: Solid) => boolean = () => false;

  constructor(group: Group, window: WindowUniforms, eye: IUniform<Vector3>) {
    this.faces.renderOrder = 10;
    this.panes.renderOrder = 11;
    this.bars = new FatLines({ width: 0.7, strength: 0.4, order: 20 }, window);
    this.courses = new FatLines({ width: 0.6, strength: 0.13, order: 19 }, window);
    this.edges = new InkEdges(DRAWN, window, eye, 20);
    this.screens.renderOrder = 25;
    this.glass.renderOrder = 25;
    this.hovered = new InkEdges(HOVERED, window, eye, 26);
    this.casing = new InkEdges(SELECTED_CASING, window, eye, 27);
    this.selected = new InkEdges(SELECTED, window, eye, 28);
    const lines = [this.edges, this.hovered, this.casing, this.selected].map(({ mesh }) => mesh);
    group.add(this.faces, this.panes, this.bars.mesh, this.courses.mesh, this.screens, this.glass, ...lines);
  }

  tint(colours: Ink): void {
    tint(this.card, colours);
    tint(this.paneCard, {
      ...colours,
      cardSouth: between(colours.cardSouth, colours.ink, PANE),
      cardEast: between(colours.cardEast, colours.ink, PANE),
      cardNorth: between(colours.cardNorth, colours.ink, PANE),
    });
    this.bars.tint(colours.ink);
    this.courses.tint(colours.ink);
    this.edges.ink.value = inkVector(colours.ink);
    this.hovered.ink.value = inkVector(colours.ink);
    this.casing.ink.value = inkVector(colours.casing);
    this.selected.ink.value = inkVector(colours.saffron);
  }

  /**
   * @param panes what is drawn in openings
   * @param roofed true for solids whose pitched planes carry courses
   * @param soft true for solids whose inner edges are fine lines
   */
  show(
    solids: readonly Solid[],
    panes: Panes,
    origin: Vec3,
    roofed: (solid: Solid) => boolean,
    soft: (solid: Solid) => boolean,
  ): void {
    [this.solids, this.origin, this.soft] = [solids, origin, soft];
    const passing = (passage: Solid['passage']) => solids.filter((solid) => solid.passage === passage);
    fill(this.faces, passing('solid'), origin);
    fill(this.screens, passing('screen'), origin);
    fill(this.glass, passing('clear'), origin);
    fill(this.panes, panes.faces, origin);
    const near = (value: number, i: number): number => value - (origin[i % 3] ?? 0);
    this.bars.show(panes.bars.map(near));
    this.courses.showParts(solids.filter(roofed).map((solid) => courseEnds(solid, origin)));
    this.edges.show(edgesOf(solids, origin, soft));
  }

  /** Lights up structures by id. */
  point(hovered: string | null, selected: readonly string[]): void {
    const chosen = new Set(selected);
    const of = (wanted: (structure: string) => boolean) =>
      edgesOf(
        this.solids.filter(({ structure }) => wanted(structure)),
        this.origin,
        this.soft,
      );
    this.hovered.show(of((id) => id === hovered && !chosen.has(id)));
    const outlined = of((id) => chosen.has(id));
    this.casing.show(outlined);
    this.selected.show(outlined);
  }

  /**
   * Pushes faces back by as much as half a line is wide, so that lines on them show and those behind them do not.
   * @param ratio device pixels per CSS pixel
   */
  setRatio(ratio: number): void {
    for (const { material } of [this.faces, this.panes, this.screens, this.glass])
      if (material instanceof Material) material.polygonOffsetFactor = 0.9 + 0.9 * ratio;
  }

  /** The lattice on screens keeps about the same pitch on the sheet. */
  setLattice(metresPerPixel: number): void {
    this.card.uPitch.value = 2 ** Math.ceil(Math.log2(5 * metresPerPixel));
  }
}
