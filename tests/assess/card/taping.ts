import type { Taped } from '../../../src/assess/card/taped.ts';
import type { DrillFacts, OnWall } from '../../../src/assess/card/drillFacts.ts';
import { bare } from '../../draw/card/cardSites.ts';

/** "900 left right jamb of Door": how much, on which side of the hole, which edge. */
export const tapedOf = (taped: readonly Taped[]): string[] =>
  taped.map(({ edge, size, side }) => `${Math.round(size * 1000)} ${side} ${edge}`);

/** The wall of a facts' spot, which must have one. */
export function wallOf({ spot }: DrillFacts): OnWall {
  if (spot.kind !== 'wall' && spot.kind !== 'soffit') throw new Error(spot.kind);
  return spot.wall;
}

/** 3.8 m from the left end of the first wall, the hole at 2.5 m, the lens 0.2 m out and 0.1 m below it. */
export const arm = {
  ...bare,
  kind: 'arm',
  host: 'house',
  face: 0,
  corner: 'start',
  distance: 3.8,
  height: 2.4,
  reach: 0.2,
  drop: 0.1,
} as const;
