import type { Vec3 } from '../../base/vector.ts';
import type { Solid } from '../../model/solid.ts';
import type { Building, Opening } from '../../model/structure.ts';
import { onceEach } from './onceEach.ts';

/** What is drawn in the openings of a building that is one block: a leaf or pane at the back of each recess, with its bars. */
export interface Panes {
  readonly faces: readonly Solid[];
  /** Six numbers a segment, site frame. */
  readonly bars: readonly number[];
}

/** In front of the back of the recess, so that it is seen and not the wall, m. */
const BEFORE = 0.004;

export const panesOf = onceEach((building: Building): Panes => {
  // A hollow building has real panes.
  if (building.wallThickness !== null) return { faces: [], bars: [] };
  const made = building.openings
    .filter(({ kind, leaf }) => kind !== 'archway' && leaf !== 'open')
    .map((one) => pane(building, one));
  return { faces: made.flatMap(({ face }) => face), bars: made.flatMap(({ bars }) => bars) };
});

function pane(
  building: Building,
  opening: Opening,
): { readonly face: readonly Solid[]; readonly bars: readonly number[] } {
  const { outline } = building;
  const [from, to] = [outline[opening.face], outline[(opening.face + 1) % outline.length]];
  if (!from || !to) return { face: [], bars: [] };
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / size, (to[1] - from[1]) / size];
  const deep = Math.max(0, opening.setBack) - BEFORE;
  const foot = building.base + opening.sill;
  const at = (along: number, up: number): Vec3 => {
    const run = opening.along + along * opening.width;
    return [from[0] + ux * run - uy * deep, from[1] + uy * run + ux * deep, foot + up * opening.height];
  };
  const corners = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
  const face: Solid = {
    id: opening.id,
    structure: building.id,
    name: opening.name,
    passage: opening.passage,
    positions: Float64Array.from(corners.flat()),
    triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
  };
  const line = (a: Vec3, b: Vec3): number[] => [...a, ...b];
  const bars =
    opening.kind === 'window'
      ? [...line(at(0.5, 0), at(0.5, 1)), ...line(at(0, 0.5), at(1, 0.5))]
      : opening.width > 1.8
        ? [0.2, 0.4, 0.6, 0.8].flatMap((up) => line(at(0, up), at(1, up)))
        : [
            ...line(at(0.22, 0.5), at(0.78, 0.5)),
            ...line(at(0.78, 0.5), at(0.78, 0.88)),
            ...line(at(0.78, 0.88), at(0.22, 0.88)),
            ...line(at(0.22, 0.88), at(0.22, 0.5)),
          ];
  return { face: [face], bars };
}
