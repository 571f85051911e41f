import { turn } from '../base/angle.ts';
import type { Vec3 } from '../base/vector.ts';
import { mitred } from './eaves.ts';
import type { Footprint } from './footprint.ts';
import { levelWalls } from './flatRoof.ts';
import { raised } from './hipRoof.ts';
import { bearingOf } from './monopitchRoof.ts';
import { longer } from './rectangle.ts';
import { cornerAt } from './ring.ts';
import type { Loop, RoofShape } from './roofShape.ts';
import { heading } from './segment.ts';
import { between, type Straightened } from './straightRun.ts';
import type { Ring, Roof } from './structure.ts';
import { peakBetween, vergeOver } from './verge.ts';

/** The eaves edge along which the ridge runs: the one nearest in direction to the bearing asked for. */
function ridgeEdge(ring: Ring, ridge: number | null): number {
  if (ridge === null) return longer(ring);
  const off = (k: number): number => {
    const angle = Math.abs(turn(bearingOf(heading(cornerAt(ring, k), cornerAt(ring, k + 1))), ridge));
    return Math.min(angle, 180 - angle);
  };
  return off(1) < off(0) ? 1 : 0;
}

/**
 * A gable on a rectangle: two planes from the eaves to a ridge between the gable walls, which go up to it; verges flush.
 * Unlike on other outlines the ridge may run either way.
 */
export function rectangleGable(
  footprint: Footprint,
  { ring, runs }: Straightened,
  eavesZ: number,
  roof: Roof,
  overhang: number,
): RoofShape {
  const k = ridgeEdge(ring, roof.ridge);
  const [k1, k2, k3] = [(k + 1) % 4, (k + 2) % 4, (k + 3) % 4];
  const eaves = mitred(ring, (edge) => (edge === k || edge === k2 ? overhang : 0));
  const headingOf = (edge: number) => heading(cornerAt(ring, edge), cornerAt(ring, edge + 1));
  const low = (corner: number): Vec3 => raised(cornerAt(eaves, corner), eavesZ);
  const verge = (edge: number) => {
    const ends = [cornerAt(eaves, edge), cornerAt(eaves, edge + 1)] as const;
    const peak = peakBetween(ends, headingOf(edge - 1), headingOf(edge + 1), eavesZ, roof.pitch);
    return vergeOver(footprint.outline, runs[edge] ?? [], eavesZ, [low(edge), peak, low(edge + 1)]);
  };
  const [far, near] = [verge(k1), verge(k3)];
  const onWall = (edge: number): Vec3[] =>
    overhang > 0 ? [] : between(footprint.outline, runs[edge] ?? []).map((p) => raised(p, eavesZ));
  const tops = new Map<number, Loop>();
  for (const [edge, { tops: lines }] of [
    [k1, far],
    [k3, near],
  ] as const) {
    runs[edge]?.slice(0, -1).forEach((part, i) => {
      const top = lines[i];
      if (top) tops.set(part, top);
    });
  }
  const level = levelWalls(footprint, eavesZ);
  return {
    kind: 'gable',
    ...level,
    topOf: (edge) => tops.get(edge) ?? level.topOf(edge),
    faces: [
      [[low(k), ...onWall(k), ...far.up, far.peak, near.peak, ...near.down.slice(0, -1)]],
      [[low(k2), ...onWall(k2), ...near.up, near.peak, far.peak, ...far.down.slice(0, -1)]],
    ],
    caps: [{ z: eavesZ, outside: 'down' }],
    soffitDepth: (edge) => (tops.has(edge) ? 0 : overhang),
    notes: [],
  };
}
