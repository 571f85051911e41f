import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Gap } from './barrierGaps.ts';
import type { Piece } from './barrierPieces.ts';
import type { RibbonEdge } from './ribbon.ts';
import { cornerAt } from './ring.ts';
import { difference, dotOf, heading, leftOf } from './segment.ts';
import { Shell, type Mesh } from './shell.ts';
import { addReveal, addWall, levelTop, type Cut } from './wall.ts';

/**
 * The mesh of one run of a barrier, null when it did not close, and which of the openings were cut through it: those on
 * a stretch where both of its sides are plain. Each triangle belongs to one stretch, whose sheet the mesh tells.
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
  const ways = edges.map((_, k) => heading(cornerAt(piece.points, k), cornerAt(piece.points, k + 1)));
  edges.forEach((edge, k) => {
    shell.mark = k;
    const stretch = piece.stretches[k];
    const start = cornerAt(piece.points, k);
    const along = cornerAt(ways, k);
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
    if (next) addBevel(shell, edge, next, foot, top);
  });
  const [first, last] = [edges[0], edges[edges.length - 1]];
  if (!piece.closed && first && last) {
    addWall(shell, last.rightEnd, last.leftEnd, foot, levelTop(last.rightEnd, last.leftEnd, top));
    shell.mark = 0;
    addWall(shell, first.leftStart, first.rightStart, foot, levelTop(first.leftStart, first.rightStart, top));
  }
  const mesh = shell.mesh();
  return { mesh: mesh && { ...mesh, sheets: sheetsOf(shell.marks(), ways) }, cut };
}

/** The level unit normal of each triangle's stretch. */
function sheetsOf(marks: readonly number[], ways: readonly Vec2[]): Float64Array {
  const sheets = new Float64Array(3 * marks.length);
  marks.forEach((stretch, triangle) => sheets.set(leftOf(cornerAt(ways, stretch)), 3 * triangle));
  return sheets;
}

/** What fills a sharp turn, where the sides of two edges do not meet: an upright face, and its corner above and below. */
function addBevel(shell: Shell, edge: RibbonEdge, next: RibbonEdge, foot: number, top: number): void {
  const add = (from: Vec2, to: Vec2, inner: Vec2): void => {
    addWall(shell, from, to, foot, levelTop(from, to, top));
    shell.face([from, to, inner].map(([x, y]) => shell.corner(x, y, top)));
    shell.face([from, inner, to].map(([x, y]) => shell.corner(x, y, foot)));
  };
  if (!samePlace(edge.rightEnd, next.rightStart)) add(edge.rightEnd, next.rightStart, edge.leftEnd);
  if (!samePlace(edge.leftEnd, next.leftStart)) add(next.leftStart, edge.leftEnd, edge.rightEnd);
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

/** Both long sides of an edge with cuts right through, and what lies above and below. */
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
  shell.face([rightStart, rightEnd, leftEnd, leftStart].map(([x, y]) => shell.corner(x, y, top)));
  // Below, between the openings that stand on the foot.
  const low = ([x, y]: Vec2): number => shell.corner(x, y, foot);
  let [fromRight, fromLeft] = [low(rightStart), low(leftStart)];
  const standing = cuts
    .flatMap((cut, k) => {
      const [front, back] = [fronts[k], backs[k]];
      return front && back && cut.foot === foot ? [{ cut, front, back }] : [];
    })
    .toSorted((one, two) => one.cut.from - two.cut.from);
  for (const { front, back } of standing) {
    shell.face([fromRight, fromLeft, back[1], front[0]]);
    [fromRight, fromLeft] = [front[1], back[0]];
  }
  shell.face([fromRight, fromLeft, low(leftEnd), low(rightEnd)]);
}
