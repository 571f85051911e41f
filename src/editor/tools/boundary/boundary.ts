import { accept } from '../../../base/fault.ts';
import { setBoundary } from '../../../plan/commands/setBoundary.ts';
import type { Editor } from '../../editor.ts';
import type { ToolState } from '../chart.ts';
import { drawingTool } from '../drawing/drawingTool.ts';
import type { DrawSpec } from '../drawing/drawSpec.ts';
import { counterClockwise } from '../drawing/newStructure.ts';
import { resting } from '../rest/resting.ts';

/** How it is drawn, whether it replaces another or not. */
export function boundarySpec({ store }: Editor): DrawSpec {
  const replaces = store.getState().plan.boundary !== null;
  return {
    tool: 'boundary',
    kinds: [
      {
        key: 'boundary',
        label: 'Site boundary',
        raise: null,
        make: (plan, { corners }) =>
          accept({ plan: setBoundary(plan, counterClockwise(corners)), thing: { kind: 'boundary' } }),
      },
    ],
    ends: 'ring',
    rectangle: true,
    rectangleOnly: false,
    raises: false,
    ask: (editor) => {
      if (replaces) editor.say('Boundary replaced. Undo brings the former back.');
      return resting(editor);
    },
  };
}

/** The boundary tool: the client's own ground. A new one replaces the old. */
export const bounding = (editor: Editor): ToolState => drawingTool(editor, boundarySpec(editor));
