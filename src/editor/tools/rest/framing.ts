import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor, Selected } from '../../editor.ts';
import { groundCornersOf } from '../../grips/shapeOf.ts';
import { words, type ToolState } from '../chart.ts';
import type { Screen } from '../pointed.ts';

/** A frame is drawn over the window: it selects what lies wholly within. */
export function framing(editor: Editor, rest: () => ToolState): ToolState {
  const { plan } = editor.store.getState();
  const state = (ghost: ToolState['ghost'], found: readonly Selected[]): ToolState => ({
    name: 'rest framing',
    strip: words(countWords(found.length)),
    ghost,
    cursor: 'crosshair',
    drag: ({ screen: { spot: from } }, { screen }) => {
      const within = thingsWithin(plan, screen, from, screen.spot);
      return state({ kind: 'frame', from, to: screen.spot, count: within.length }, within);
    },
    release: () => {
      editor.selectAll(found);
      return rest();
    },
    escape: rest,
  });
  return state(null, []);
}

const countWords = (count: number): string =>
  count === 0 ? 'Nothing lies wholly in it' : count === 1 ? '1 thing' : `${count} things`;

/** What has its whole footprint, or its place, within a frame of the window. */
function thingsWithin(plan: Plan, screen: Screen, [ax, ay]: Vec2, [bx, by]: Vec2): Selected[] {
  const level = groundHeight(plan.ground);
  const isIn = (point: Vec3): boolean => {
    const spot = screen.place(point);
    return spot !== null && (spot[0] - ax) * (spot[0] - bx) <= 0 && (spot[1] - ay) * (spot[1] - by) <= 0;
  };
  const areIn = (corners: readonly Vec2[], z: number): boolean =>
    corners.length > 0 && corners.every(([x, y]) => isIn([x, y, z]));
  const found: Selected[] = [];
  for (const id of plan.structureOrder) {
    const structure = plan.structures[id];
    if (!structure || structure.hidden) continue;
    const base = 'base' in structure ? structure.base : level;
    if (areIn(groundCornersOf(structure), base)) found.push({ kind: 'structure', id });
  }
  for (const { id, outline } of Object.values(plan.patches))
    if (areIn(outline, level)) found.push({ kind: 'patch', id });
  for (const { id, at, height } of Object.values(plan.lamps))
    if (isIn([at[0], at[1], level + height])) found.push({ kind: 'lamp', id });
  for (const { id, mount, hidden } of Object.values(plan.cameras)) {
    const placed = placeMount(mount, plan.structures, level);
    if (!hidden && placed.ok && isIn(placed.value.eye)) found.push({ kind: 'camera', id });
  }
  return found;
}
