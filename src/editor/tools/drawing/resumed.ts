import type { Editor, Tool } from '../../editor.ts';
import { boundarySpec } from '../boundary/boundary.ts';
import type { ToolState } from '../chart.ts';
import { LINE } from '../line/line.ts';
import { OUTLINE } from '../outline/outline.ts';
import { POSTS } from '../posts/posts.ts';
import { EMPTY } from './draft.ts';
import { continued } from './drawingTool.ts';
import type { DrawSpec } from './drawSpec.ts';
import type { OpenChain } from './openChain.ts';

const SPECS: Partial<Readonly<Record<Tool, (editor: Editor) => DrawSpec>>> = {
  outline: () => OUTLINE,
  line: () => LINE,
  posts: () => POSTS,
  boundary: boundarySpec,
};

/** A chain in hand again; null where no tool draws such a one any more. */
export function resumed(editor: Editor, { tool, kind, corners, axes, typed }: OpenChain): ToolState | null {
  const spec = SPECS[tool]?.(editor);
  const found = spec?.kinds.find(({ key }) => key === kind);
  return spec && found && corners.length > 0
    ? continued(editor, spec, found, { ...EMPTY, corners, axes, typed })
    : null;
}
