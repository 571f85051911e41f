import { hostFaces } from '../../../model/faces.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Selected } from '../../editor.ts';
import { poleMount, wallMount, type WallKind } from '../mount/mountAt.ts';
import { placed, type Candidate } from './candidate.ts';

/** Where a camera hangs unless the wall is lower, and how far it stays below the wall's top, m; common practice, no source. */
const FIRST_HEIGHT = 2.7;
const BELOW_TOP = 0.3;

/**
 * A spot to begin from without a pointer: the middle of the longest wall of what is selected, else of the first
 * building; a post at the origin where nothing has a wall.
 */
export function keyedSpot(plan: Plan, selected: Selected | null, kind: WallKind): Candidate {
  const chosen = selected?.kind === 'structure' ? plan.structures[selected.id] : undefined;
  const first = plan.structureOrder.find((id) => plan.structures[id]?.kind === 'building');
  const host = chosen ?? (first === undefined ? undefined : plan.structures[first]);
  const walls = host ? hostFaces(host).filter(({ sort }) => sort === 'wall') : [];
  const wall = walls.reduce<(typeof walls)[number] | null>(
    (longest, face) => (longest === null || face.width > longest.width ? face : longest),
    null,
  );
  if (host === undefined || wall === null) return placed(plan, poleMount([0, 0], 180), null);
  const height =
    Math.min(FIRST_HEIGHT, Math.max(wall.top - BELOW_TOP, (wall.foot + wall.top) / 2)) -
    groundHeight(plan.ground);
  return placed(plan, wallMount({ face: wall, along: wall.width / 2, height, out: 0 }, kind, host), 'middle');
}
