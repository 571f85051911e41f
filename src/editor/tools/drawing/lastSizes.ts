import type { Editor } from '../../editor.ts';

const sizes = new WeakMap<Editor, Map<string, number>>();

/** The height last given to a kind of thing in this window, m; `first` before there was one. Not kept with the plan. */
export const lastSize = (editor: Editor, kind: string, first: number): number =>
  sizes.get(editor)?.get(kind) ?? first;

export function rememberSize(editor: Editor, kind: string, size: number): void {
  const known = sizes.get(editor) ?? new Map<string, number>();
  known.set(kind, size);
  sizes.set(editor, known);
}
