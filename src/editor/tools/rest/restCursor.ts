import { add } from '../../../base/vector.ts';
import type { Editor } from '../../editor.ts';
import { gripsOf } from '../../grips/gripsOf.ts';
import { sameGrip } from '../../grips/pullOf.ts';
import type { ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';

type Cursor = ToolState['cursor'];

/** The cursor at rest: that of the handle under it, or whether there is something to move. */
export function restCursor(editor: Editor, at: Pointed, seized: string | null): Cursor {
  if (seized === 'body') return 'move';
  if (seized !== 'grip' || !at.grip) return seized === null || seized === 'frame' ? 'default' : 'grab';
  const { grip, screen } = at;
  const { plan, selection } = editor.store.getState();
  const placed = gripsOf(plan, selection).find((one) => sameGrip(one.grip, grip));
  if (!placed) return 'grab';
  if (placed.locked) return 'not-allowed';
  if (typeof placed.way === 'string') return placed.way === 'turn' ? 'grab' : 'move';
  const [from, to] = [screen.place(placed.at), screen.place(add(placed.at, placed.way.along))];
  return from && to ? resizeCursor(to[0] - from[0], to[1] - from[1]) : 'grab';
}

/** The resize cursor nearest to a direction on the window, px right and down. */
function resizeCursor(x: number, y: number): Cursor {
  const turned = ((Math.atan2(y, x) * 4) / Math.PI + 8) % 4;
  const cursors = ['ew-resize', 'nwse-resize', 'ns-resize', 'nesw-resize'] as const;
  return cursors[Math.round(turned) % 4] ?? 'ew-resize';
}
