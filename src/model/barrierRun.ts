import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Gap } from './barrierGaps.ts';
import type { Piece } from './barrierPieces.ts';
import type { RibbonEdge } from './ribbon.ts';
import { cornerAt } from './ring.ts';
import { difference, dotOf, heading } from './segment.ts';
import { Shell, type Mesh } from './shell.ts';
import { addReveal, addWall, levelTop, type Cut } from './wall.ts';

/**
 * The mesh of one run of a barrier, null when it did not close, and which of the openings were cut through it: those on
 * a stretch where both of its sides are plain.
 */
export function runMesh(
  piece: Piece,
  edges: readonly RibbonEdge[],
  openings: readonly Gap[],
  foot: number,
  top: number,
): { readonly mesh: Mesh | null; readonly cut: readonly Gap[] } {
  const shell = new Shell();
  const cut: Gap[] = [];
  edges.forEach((edge, k) => {
    const stretch = piece.stretches[k];
    const start = cornerAt(piece.points, k);
    const along = heading(start, cornerAt(piece.points, k + 1));
    const ends = plainStretch(edge, start, along);
    const cuts = openings.flatMap((gap) => {
      if (gap.edge !== stretch?.edge) return [];
      const [from, to] = [gap.from - stretch.from, gap.to - stretch.from];
      if (from < ends.from + LEAST_SIZE || to > ends.to - LEAST_SIZE) return [];
      cut.push(gap);
      return [{ from, to, foot: gap.foot, head: gap.head }];
    });
    addPierced(shell, edge, start, along, cuts, foot, top);
    const next = edges[k + 1] ?? (piece.closed ? edges[0] : undefined);
    if (!next) return;
    // The bevel at a sharp turn, where the sides of two edges do not meet.
    if (!samePlace(edge.rightEnd, next.rightStart)) {
      addWall(shell, edge.rightEnd, next.rightStart, foot, levelTop(edge.rightEnd, next.rightStart, top));
    }
    if (!samePlace(edge.leftEnd, next.leftStart)) {
      addWall(shell, next.leftStart, edge.leftEnd, foot, levelTop(next.leftStart, edge.leftEnd, top));
    }
  });
  const [first, last] = [edges[0], edges[edges.length - 1]];
  if (!piece.closed && first && last) {
    addWall(shell, last.rightEnd, last.leftEnd, foot, levelTop(last.rightEnd, last.leftEnd, top));
    addWall(shell, first.leftStart, first.rightStart, foot, levelTop(first.leftStart, first.rightStart, top));
  }
  shell.cap(foot, 'down');
  shell.cap(top, 'up');
  return { mesh: shell.mesh(), cut };
}

const samePlace = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];

/** The part of an edge where both of its sides run, metres from its start. */
function plainStretch(
  edge: RibbonEdge,
  start: Vec2,
  along: Vec2,
): { readonly from: number; readonly to: number } {
  const s = (point: Vec2): number => dotOf(difference(point, start), along);
  return {
    from: Math.max(s(edge.leftStart), s(edge.rightStart)),
    to: Math.min(s(edge.leftEnd), s(edge.rightEnd)),
  };
}

/** Both long sides of an edge, with cuts right through. */
function addPierced(
  shell: Shell,
  edge: RibbonEdge,
  start: Vec2,
  along: Vec2,
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
