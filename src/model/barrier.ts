import { LEAST_SIZE } from '../base/tolerance.ts';
import { barrierGaps, type Gap } from './barrierGaps.ts';
import { barrierLine, type BarrierLine } from './barrierLine.ts';
import { barrierPieces } from './barrierPieces.ts';
import { runMesh } from './barrierRun.ts';
import { LEAF, openLeaf, shutLeaf } from './leaf.ts';
import { joinMade, madeOf, unmade, type Made } from './made.ts';
import { chainEdges, firstMeet } from './meet.ts';
import { modelFault } from './modelFault.ts';
import { offsetLine, unionRings } from './offset.ts';
import { prism } from './prism.ts';
import { ribbon, ribbonRings } from './ribbon.ts';
import { cornerAt, inRing } from './ring.ts';
import { heading, moved } from './segment.ts';
import { joinMeshes, type Mesh } from './shell.ts';
import { numberFaults, sizeFaults } from './size.ts';
import type { Barrier, Ring } from './structure.ts';

/**
 * A wall, fence or hedge: a ribbon around its line up to its height, interrupted by its openings. An opening lower
 * than the barrier is cut through it; a higher one parts it. Leaves are solids of their own. A fence or wall that lets
 * part through is made of sheets, one a run; one so thick for its turns that it overlaps itself has none.
 */
export function barrierSolids(barrier: Barrier): Made {
  const wrong = [
    ...numberFaults(barrier.base, ['base'], barrier.name),
    ...sizeFaults(barrier.height, ['height'], barrier.name),
    ...sizeFaults(barrier.thickness, ['thickness'], barrier.name),
  ];
  const valid = barrierLine(barrier);
  if (!valid.ok) return unmade([...wrong, ...valid.faults]);
  if (wrong.length > 0) return unmade(wrong);
  const line = valid.value;
  const { gaps, faults } = barrierGaps(barrier, line);
  const { meshes, leftOut } = barrierMeshes(barrier, line, gaps);
  const told = [
    ...valid.notes,
    ...faults,
    ...leftOut.map(({ opening, index }) =>
      modelFault('opening.corner', opening.name, ['openings', index, 'along'], {
        given: opening.along,
        allowed: 'further from the corner, where both sides are plain',
      }),
    ),
  ];
  const leaves = gaps.filter((gap) => !leftOut.includes(gap)).map((gap) => leafOf(barrier, line, gap));
  if (meshes?.length === 0) return joinMade([{ solids: [], faults: told }, ...leaves]);
  const whole = meshes && joinMeshes(meshes);
  const isSheet = barrier.passage === 'screen' && barrier.sort !== 'hedge';
  return joinMade([madeOf(barrier, isSheet ? whole : plain(whole), barrier.passage, told), ...leaves]);
}

/** What is solid through and through, or grown, has no sheets. */
const plain = (mesh: Mesh | null): Mesh | null =>
  mesh && { positions: mesh.positions, triangles: mesh.triangles };

/** A mesh for each run between gaps, null when one did not close; and the openings that there is no plain stretch for. */
function barrierMeshes(
  barrier: Barrier,
  line: BarrierLine,
  gaps: readonly Gap[],
): { readonly meshes: readonly Mesh[] | null; readonly leftOut: readonly Gap[] } {
  const top = barrier.base + barrier.height;
  const parting = gaps.filter(({ full }) => full);
  const through = gaps.filter(({ full }) => !full);
  const pieces = barrierPieces(line, parting, LEAST_SIZE);
  const runs = pieces.flatMap((piece) => {
    const edges = ribbon(piece.points, piece.closed, barrier.thickness);
    return edges ? [{ piece, edges }] : [];
  });
  const rings = runs.flatMap(({ piece, edges }) => ribbonRings(edges, piece.closed));
  const isPlain = runs.length === pieces.length && (runs.length < 2 || areApart(rings));
  if (!isPlain) {
    // Too thick for its turns, so that it overlaps itself: the union of its runs, without what would go through them.
    const whole = pieces.flatMap(({ points, closed }) => offsetLine(points, closed, barrier.thickness));
    const mesh = prism(unionRings(whole), barrier.base, top);
    return { meshes: mesh && [mesh], leftOut: through };
  }
  const made = runs.map(({ piece, edges }) => runMesh(piece, edges, through, barrier.base, top));
  const meshes = made.flatMap(({ mesh }) => (mesh ? [mesh] : []));
  return {
    meshes: meshes.length === made.length ? meshes : null,
    leftOut: through.filter((gap) => !made.some(({ cut }) => cut.includes(gap))),
  };
}

/** Whether simple rings neither meet nor lie within one another. */
function areApart(rings: readonly Ring[]): boolean {
  if (firstMeet(rings.flatMap((ring, chain) => chainEdges(ring, chain, true)))) return false;
  return !rings.some((ring) => rings.some((other) => other !== ring && inRing(cornerAt(ring, 0), other)));
}

function leafOf(barrier: Barrier, line: BarrierLine, gap: Gap): Made {
  const { opening } = gap;
  if (opening.kind === 'archway') return unmade([]);
  const a = cornerAt(line.points, gap.edge);
  const along = heading(a, cornerAt(line.points, gap.edge + 1));
  const place = {
    hinge: moved(a, along, gap.from),
    along,
    width: gap.to - gap.from,
    foot: gap.foot,
    head: gap.head,
    thickness: LEAF,
  };
  return opening.leaf === 'open' ? openLeaf(barrier, opening, place) : shutLeaf(barrier, opening, place);
}
