import { ARC, bulgeUpTo, type ArcRings } from './arcRings.ts';
import { Crossings } from './crossings.ts';

/**
 * The areas, m², that at least 1, 2, … of some regions cover, one number a region: a sum over the stretches of all edges
 * (Green's theorem), each of which bounds "at least c + 1" where c other regions lie beside it. No union, no grid.
 * Edges of different regions may share lines and corners: of equal edges the one with the lower index counts as lying
 * outside. Arcs that end at a crossing are cut where their chord is: the error is a square of the sagitta.
 */
export const areasByCount = (regions: readonly ArcRings[]): Float64Array =>
  sums(new Crossings(regions), regions.length);

function sums(
  { lattice, to, starts, arcs, covers, first, share, turn }: Crossings,
  regions: number,
): Float64Array {
  const { x, y, unit } = lattice;
  const areas = new Float64Array(regions);
  const half = (unit * unit) / 2;
  for (let ring = 0; ring + 1 < starts.length; ring += 1) {
    let cover = covers[ring] ?? 0;
    const end = starts[ring + 1] ?? 0;
    for (let edge = starts[ring] ?? 0; edge < end; edge += 1) {
      const next = to[edge] ?? 0;
      const twice = ((x[edge] ?? 0) * (y[next] ?? 0) - (x[next] ?? 0) * (y[edge] ?? 0)) * half;
      const bulge = arcs === null ? 0 : (arcs[edge * ARC] ?? 0);
      const last = first[edge + 1] ?? 0;
      let from = 0;
      for (let event = first[edge] ?? 0; event <= last; event += 1) {
        const till = event < last ? (share[event] ?? 0) : 1;
        // Events that rounding has put out of order leave no length, but may miscount for as long.
        const level = cover < 0 ? 0 : cover >= regions ? regions - 1 : cover;
        let here = twice * (till - from);
        if (bulge !== 0 && arcs !== null) {
          const [low, high] = [arcs[edge * ARC + 1] ?? 0, arcs[edge * ARC + 2] ?? 0];
          here += bulge * (bulgeUpTo(low + till * (high - low)) - bulgeUpTo(low + from * (high - low)));
        }
        areas[level] = (areas[level] ?? 0) + here;
        if (event < last) cover += turn[event] ?? 0;
        from = till;
      }
    }
    if (cover !== covers[ring]) throw new Error('a ring ends among other regions than it began');
  }
  return areas;
}
