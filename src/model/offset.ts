import { EndType, FillRule, inflatePathsD, JoinType, unionD } from 'clipper2-ts';
import type { Ring } from './structure.ts';

/** A corner whose mitre would reach further than this, in offsets, is cut square. */
const MITRE_LIMIT = 4;
/** Decimals of a metre that the library keeps. */
const DECIMALS = 8;

const pathOf = (ring: Ring): { x: number; y: number }[] => ring.map(([x, y]) => ({ x, y }));
const ringFrom = (path: readonly { readonly x: number; readonly y: number }[]): Ring =>
  path.map(({ x, y }) => [x, y] as const);

/**
 * Rings moved outwards by `by` metres (inwards when negative), with mitred corners; rings that vanish are gone,
 * rings that meet are one. Winding as given: outlines counter-clockwise, holes clockwise. Rounded to 1e-8 m.
 */
export function offsetRings(rings: readonly Ring[], by: number): Ring[] {
  const paths = rings.map(pathOf);
  return inflatePathsD(paths, by, JoinType.Miter, EndType.Polygon, MITRE_LIMIT, DECIMALS).map(ringFrom);
}

/** The rings around a line of corners with a thickness, square at open ends; what it covers on their left. */
export function offsetLine(line: Ring, closed: boolean, thickness: number): Ring[] {
  const path = pathOf(line);
  const end = closed ? EndType.Joined : EndType.Butt;
  return inflatePathsD([path], thickness / 2, JoinType.Miter, end, MITRE_LIMIT, DECIMALS).map(ringFrom);
}

/** What is covered by any of several rings that may overlap, each with what it covers on its left. Rounded to 1e-8 m. */
export function unionRings(rings: readonly Ring[]): Ring[] {
  return unionD(rings.map(pathOf), [], FillRule.Positive, DECIMALS).map(ringFrom);
}
