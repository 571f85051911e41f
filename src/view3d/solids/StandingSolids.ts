import type { Group, IUniform, Vector3 } from 'three';
import type { Vec3 } from '../../base/vector.ts';
import type { Ink } from '../../draw/ink.ts';
import type { Solid } from '../../model/solid.ts';
import type { Structure } from '../../model/structure.ts';
import { GROUND } from '../ground/terrainFaces.ts';
import type { WindowUniforms } from '../shading.ts';
import { panesOf } from './panes.ts';
import { SolidsLayer } from './SolidsLayer.ts';

type Structures = Readonly<Record<string, Structure>>;

/**
 * The structures of the plan. While some of them are shaped, these alone are made anew with each move: the others stay in a
 * picture of their own, from which what moves was taken when it first moved.
 */
export class StandingSolids {
  private readonly still: SolidsLayer;
  private readonly moving: SolidsLayer;
  /** What stands in the plan that nothing is ahead of. */
  private stood: readonly Solid[] = [];
  private origin: Vec3 = [0, 0, 0];
  private hovered: string | null = null;
  private selected: readonly string[] = [];
  /** What is drawn apart. */
  private readonly apart = new Set<string>();

  constructor(group: Group, window: WindowUniforms, eye: IUniform<Vector3>) {
    this.still = new SolidsLayer(group, window, eye);
    this.moving = new SolidsLayer(group, window, eye);
  }

  /** All of them, as they stand. */
  show(solids: readonly Solid[], structures: Structures, origin: Vec3): void {
    [this.stood, this.origin] = [solids, origin];
    if (this.apart.size > 0) {
      this.apart.clear();
      this.put(this.moving, [], structures);
    }
    this.put(this.still, solids, structures);
  }

  /** The same ahead of what stands: only what differs from it is made. */
  showAhead(solids: readonly Solid[], structures: Structures): void {
    const before = this.apart.size;
    const [stood, now] = [new Set(this.stood), new Set(solids)];
    for (const solid of solids) if (!stood.has(solid)) this.apart.add(solid.structure);
    for (const solid of this.stood) if (!now.has(solid)) this.apart.add(solid.structure);
    if (this.apart.size !== before) {
      this.put(
        this.still,
        this.stood.filter(({ structure }) => !this.apart.has(structure)),
        structures,
      );
      this.still.point(this.hovered, this.selected);
    }
    this.put(
      this.moving,
      solids.filter(({ structure }) => this.apart.has(structure)),
      structures,
    );
    this.moving.point(this.hovered, this.selected);
  }

  /** Lights up structures by id, also those that are shown ahead later. */
  point(hovered: string | null, selected: readonly string[]): void {
    [this.hovered, this.selected] = [hovered, selected];
    for (const layer of [this.still, this.moving]) layer.point(hovered, selected);
  }

  tint(colours: Ink): void {
    for (const layer of [this.still, this.moving]) layer.tint(colours);
  }

  setRatio(ratio: number): void {
    for (const layer of [this.still, this.moving]) layer.setRatio(ratio);
  }

  setLattice(metresPerPixel: number): void {
    for (const layer of [this.still, this.moving]) layer.setLattice(metresPerPixel);
  }

  private put(layer: SolidsLayer, solids: readonly Solid[], structures: Structures): void {
    // What is away in these conditions has no solids, so no panes either.
    const there = new Set(solids.map(({ structure }) => structure));
    const panes = [...there].flatMap((id) => {
      const structure = structures[id];
      return structure?.kind === 'building' && !structure.hidden ? [panesOf(structure)] : [];
    });
    layer.show(
      solids.filter(({ id, structure }) => id !== GROUND && structures[structure]?.hidden !== true),
      { faces: panes.flatMap(({ faces }) => faces), bars: panes.flatMap(({ bars }) => bars) },
      this.origin,
      ({ structure }) => structures[structure]?.kind === 'building',
      ({ structure }) => structures[structure]?.kind === 'tree',
    );
  }
}
