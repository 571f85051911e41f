import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import { validFootprint } from './footprint.ts';
import { madeOf, unmade, type Made } from './made.ts';
import { modelFault } from './modelFault.ts';
import { prism } from './prism.ts';
import { cornerAt } from './ring.ts';
import { heading, leftOf, moved } from './segment.ts';
import { joinMeshes, type Mesh } from './shell.ts';
import { numberFaults, sizeFaults } from './size.ts';
import type { Canopy, Ring } from './structure.ts';

/** Side of a square post, m. */
const POST = 0.1;
/** At a sharp corner a post stands no further in than this, m. */
const FURTHEST_IN = 0.25;

/** A canopy: its board, and square posts within its first corners from the ground up to it. One solid. */
export function canopySolids(canopy: Canopy, ground = 0): Made {
  const wrong = [
    ...numberFaults(canopy.top, ['top'], canopy.name),
    ...sizeFaults(canopy.thickness, ['thickness'], canopy.name),
  ];
  const valid = validFootprint(canopy.outline, [], canopy.name);
  if (!valid.ok) return unmade([...wrong, ...valid.faults]);
  const clear = canopy.top - canopy.thickness - ground;
  if (wrong.length === 0 && clear < LEAST_SIZE) {
    const about = { given: canopy.top, allowed: `above ${ground + canopy.thickness + LEAST_SIZE} m` };
    wrong.push(modelFault('size.small', canopy.name, ['top'], about));
  }
  const { outline } = valid.value;
  const isCount = Number.isInteger(canopy.posts) && canopy.posts >= 0 && canopy.posts <= outline.length;
  if (!isCount) {
    const about = { given: canopy.posts, allowed: `a whole number from 0 to ${outline.length}` };
    wrong.push(modelFault('canopy.posts', canopy.name, ['posts'], about));
  }
  if (wrong.length > 0) return unmade(wrong);

  const underside = canopy.top - canopy.thickness;
  const meshes: Mesh[] = [];
  const board = prism([outline], underside, canopy.top);
  if (!board) return madeOf(canopy, null, 'solid', valid.notes);
  meshes.push(board);
  const order = valid.value.reversed ? [...outline.keys()].reverse() : [...outline.keys()];
  for (const corner of order.slice(0, canopy.posts)) {
    const post = prism([postRing(outline, corner)], ground, underside);
    if (post) meshes.push(post);
  }
  return madeOf(canopy, joinMeshes(meshes), 'solid', valid.notes);
}

/** A square flush with both edges of its corner, turned along the edge that leaves it. */
function postRing(outline: Ring, corner: number): Ring {
  const at = cornerAt(outline, corner);
  const along = heading(at, cornerAt(outline, corner + 1));
  const inOne = leftOf(heading(cornerAt(outline, corner - 1), at));
  const inTwo = leftOf(along);
  const half = POST / 2;
  // Half a post away from both edges: along the bisector, further the sharper the corner.
  const both: Vec2 = [inOne[0] + inTwo[0], inOne[1] + inTwo[1]];
  const size = Math.hypot(...both);
  const distance = size > 0 ? Math.min((2 * half) / size, FURTHEST_IN) : half;
  const centre = size > 0 ? moved(at, [both[0] / size, both[1] / size], distance) : at;
  const start = moved(centre, along, -half);
  const end = moved(centre, along, half);
  return [
    moved(start, inTwo, -half),
    moved(end, inTwo, -half),
    moved(end, inTwo, half),
    moved(start, inTwo, half),
  ];
}
