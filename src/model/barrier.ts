import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE, SAME_POINT } from '../base/tolerance.ts';
import { barrierLine, type BarrierLine } from './barrierLine.ts';
import { barrierPieces, type Piece, type Stretch } from './barrierPieces.ts';
import { LEAF, openLeaf, shutLeaf } from './leaf.ts';
import { joinMade, madeOf, unmade, type Made } from './made.ts';
import { modelFault } from './modelFault.ts';
import { offsetLine } from './offset.ts';
import { fitOpening, openingSizeFaults, overlapFault, type Fitted } from './openingFit.ts';
import { prism } from './prism.ts';
import { ribbon, type RibbonEdge } from './ribbon.ts';
import { cornerAt } from './ring.ts';
import { dotOf, difference, heading, moved, span } from './segment.ts';
import { joinMeshes, Shell, type Mesh } from './shell.ts';
import { numberFaults, sizeFaults } from './size.ts';
import type { Barrier } from './structure.ts';
import { addReveal, addWall, levelTop, type Cut } from './wall.ts';

/** An opening of a barrier on edge `edge` of its line; `full`: nothing of the barrier stands below or above it. */
interface Gap extends Fitted {
  readonly edge: number;
  readonly full: boolean;
}

/**
 * A wall, fence or hedge: a ribbon around its line up to its height, interrupted by its openings. An opening lower
 * than the barrier is cut through it; a higher one parts it. Leaves are solids of their own.
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
  const { gaps, faults } = gapsOf(barrier, line);
  const told = [...valid.notes, ...faults];
  const parting = gaps.filter(({ full }) => full);
  const meshes: Mesh[] = [];
  for (const piece of barrierPieces(line, parting, LEAST_SIZE)) {
    const mesh = pieceMesh(barrier, piece, gaps, told);
    if (!mesh) return madeOf(barrier, null, barrier.passage, told);
    meshes.push(mesh);
  }
  const leaves = gaps.map((gap) => leafOf(barrier, line, gap));
  if (meshes.length === 0) return joinMade([{ solids: [], faults: told }, ...leaves]);
  return joinMade([madeOf(barrier, joinMeshes(meshes), barrier.passage, told), ...leaves]);
}

function gapsOf(
  barrier: Barrier,
  line: BarrierLine,
): { readonly gaps: readonly Gap[]; readonly faults: Fault[] } {
  const gaps: Gap[] = [];
  const faults: Fault[] = [];
  for (const [index, opening] of barrier.openings.entries()) {
    const wrong = openingSizeFaults(opening, index);
    const edge = line.edges.indexOf(opening.face);
    if (edge < 0) {
      const count = barrier.closed ? barrier.line.length : barrier.line.length - 1;
      const about = { given: opening.face + 1, allowed: `a stretch from 1 to ${count}` };
      wrong.push(modelFault('opening.face', opening.name, ['openings', index, 'face'], about));
    }
    if (wrong.length > 0) {
      faults.push(...wrong);
      continue;
    }
    const isUp = opening.sill + opening.height > barrier.height - LEAST_SIZE;
    const full = isUp && opening.sill < SAME_POINT;
    const face = {
      length: span(cornerAt(line.points, edge), cornerAt(line.points, edge + 1)),
      foot: barrier.base,
      topAt: () => (full ? Number.POSITIVE_INFINITY : barrier.base + barrier.height),
      margin: full ? 0 : LEAST_SIZE,
      headroom: LEAST_SIZE,
    };
    const fit = fitOpening(opening, index, face, false);
    if ('fault' in fit) {
      faults.push(fit.fault);
      continue;
    }
    const others = gaps.filter((gap) => gap.edge === edge);
    // Two gates side by side make one gap; anything else needs barrier between.
    const overlap =
      overlapFault(
        fit.fitted,
        others.filter((gap) => full && gap.full),
        -SAME_POINT,
      ) ??
      overlapFault(
        { ...fit.fitted, foot: 0, head: 1 },
        others.filter((gap) => full !== gap.full).map((gap) => ({ ...gap, foot: 0, head: 1 })),
        LEAST_SIZE,
      ) ??
      overlapFault(
        fit.fitted,
        others.filter((gap) => !full && !gap.full),
        LEAST_SIZE,
      );
    if (overlap) faults.push(overlap);
    else gaps.push({ ...fit.fitted, edge, full });
  }
  return { gaps, faults };
}

/** The mesh of one run; openings that it has no plain stretch for are added to `faults`. */
function pieceMesh(barrier: Barrier, piece: Piece, gaps: readonly Gap[], faults: Fault[]): Mesh | null {
  const top = barrier.base + barrier.height;
  const isThrough = (gap: Gap, { edge, from, to }: Stretch): boolean =>
    !gap.full && gap.edge === edge && gap.from >= from && gap.to <= to;
  const through = piece.stretches.map((stretch) => gaps.filter((gap) => isThrough(gap, stretch)));
  const edges = ribbon(piece.points, piece.closed, barrier.thickness);
  const leftOut = (gap: Gap, allowed: string): void => {
    const about = { given: gap.opening.along, allowed };
    faults.push(modelFault('opening.corner', gap.opening.name, ['openings', gap.index, 'along'], about));
  };
  if (!edges) {
    // Too thick for its turns: the same line grown by the library, all of it closed.
    for (const gap of through.flat()) leftOut(gap, 'on a barrier thin enough for its turns');
    return prism(offsetLine(piece.points, piece.closed, barrier.thickness), barrier.base, top);
  }
  const shell = new Shell();
  edges.forEach((edge, k) => {
    const stretch = piece.stretches[k];
    const along = heading(cornerAt(piece.points, k), cornerAt(piece.points, k + 1));
    const ends = plainStretch(edge, cornerAt(piece.points, k), along);
    const fitting = (through[k] ?? []).flatMap((gap) => {
      const from = gap.from - (stretch?.from ?? 0);
      const to = gap.to - (stretch?.from ?? 0);
      if (from >= ends.from + LEAST_SIZE && to <= ends.to - LEAST_SIZE)
        return [{ from, to, foot: gap.foot, head: gap.head }];
      leftOut(gap, 'further from the corner, where both sides are plain');
      return [];
    });
    addPierced(shell, edge, cornerAt(piece.points, k), along, fitting, barrier.base, top);
    const next = edges[k + 1] ?? (piece.closed ? edges[0] : undefined);
    if (!next) return;
    // The bevel at a sharp turn, where the sides of two edges do not meet.
    if (!samePlace(edge.rightEnd, next.rightStart)) {
      addWall(
        shell,
        edge.rightEnd,
        next.rightStart,
        barrier.base,
        levelTop(edge.rightEnd, next.rightStart, top),
      );
    }
    if (!samePlace(edge.leftEnd, next.leftStart)) {
      addWall(shell, next.leftStart, edge.leftEnd, barrier.base, levelTop(next.leftStart, edge.leftEnd, top));
    }
  });
  const [first, last] = [edges[0], edges[edges.length - 1]];
  if (!piece.closed && first && last) {
    addWall(shell, last.rightEnd, last.leftEnd, barrier.base, levelTop(last.rightEnd, last.leftEnd, top));
    addWall(
      shell,
      first.leftStart,
      first.rightStart,
      barrier.base,
      levelTop(first.leftStart, first.rightStart, top),
    );
  }
  shell.cap(barrier.base, 'down');
  shell.cap(top, 'up');
  return shell.mesh();
}

const samePlace = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  a[0] === b[0] && a[1] === b[1];

/** The part of an edge where both of its sides run, metres from its start. */
function plainStretch(
  edge: RibbonEdge,
  start: readonly [number, number],
  along: readonly [number, number],
): { readonly from: number; readonly to: number } {
  const s = (point: readonly [number, number]): number => dotOf(difference(point, start), along);
  return {
    from: Math.max(s(edge.leftStart), s(edge.rightStart)),
    to: Math.min(s(edge.leftEnd), s(edge.rightEnd)),
  };
}

/** Both long sides of an edge, with cuts right through. */
function addPierced(
  shell: Shell,
  edge: RibbonEdge,
  start: readonly [number, number],
  along: readonly [number, number],
  cuts: readonly Cut[],
  foot: number,
  top: number,
): void {
  const { rightStart, rightEnd, leftStart, leftEnd } = edge;
  const rightAt = dotOf(difference(rightStart, start), along);
  const leftAt = dotOf(difference(leftEnd, start), along);
  const right = cuts.map((cut) => ({ ...cut, from: cut.from - rightAt, to: cut.to - rightAt }));
  const left = cuts.map((cut) => ({ ...cut, from: leftAt - cut.to, to: leftAt - cut.from }));
  const fronts = addWall(shell, rightStart, rightEnd, foot, levelTop(rightStart, rightEnd, top), right);
  const backs = addWall(shell, leftEnd, leftStart, foot, levelTop(leftEnd, leftStart, top), left);
  fronts.forEach((front, k) => {
    const back = backs[k];
    const cut = cuts[k];
    if (back && cut) addReveal(shell, front, [back[1], back[0], back[3], back[2]], cut.foot === foot);
  });
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
