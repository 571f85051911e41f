import type { Editor } from '../../editor.ts';
import type { ToolState } from '../chart.ts';
import { resting } from '../rest/resting.ts';
import { armed } from './armed.ts';
import { chaining } from './chaining.ts';
import type { Drawing, DrawKind, DrawSpec } from './drawSpec.ts';
import { EMPTY, type Draft } from './draft.ts';
import { finish } from './finish.ts';

/** A tool that draws by corners, with nothing drawn yet. */
export function drawingTool(editor: Editor, spec: DrawSpec, kind: DrawKind = spec.kinds[0]): ToolState {
  const next = spec.kinds[(spec.kinds.indexOf(kind) + 1) % spec.kinds.length] ?? kind;
  return armed(drawingOf(editor, spec, kind), EMPTY, {
    again: () => drawingTool(editor, spec, next),
    leave: () => resting(editor),
  });
}

/** The same with corners that were drawn before. */
export const continued = (editor: Editor, spec: DrawSpec, kind: DrawKind, draft: Draft): ToolState =>
  chaining(drawingOf(editor, spec, kind), draft);

function drawingOf(editor: Editor, spec: DrawSpec, kind: DrawKind): Drawing {
  const drawing: Drawing = {
    editor,
    spec,
    kind,
    armed: () => drawingTool(editor, spec, kind),
    finish: (drawn, stay) => finish(drawing, drawn, stay),
  };
  return drawing;
}
