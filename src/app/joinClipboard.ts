import type { AnswersStore } from '../answers/store.ts';
import type { Commands } from '../editor/commands.ts';
import type { Editor } from '../editor/editor.ts';
import { afterFirst } from '../view3d/afterFirst.ts';

/** Fetches what copies and pastes once the first coverage stands, and joins it to the window. Returns how to part them. */
export function joinClipboard(editor: Editor, answers: AnswersStore, commands: Commands): () => void {
  let stops: readonly (() => void)[] | null = [];
  const join = async () => {
    const { browserClipboard, clipCommands, listenToClipboard } = await import('./clipboard.ts');
    if (stops === null) return;
    stops = [...stops, commands.add(clipCommands(editor, browserClipboard())), listenToClipboard(editor)];
  };
  // Without it there is no clipboard; the plan is no worse for it.
  stops = [afterFirst(answers, () => void join().catch(() => undefined))];
  return () => {
    stops?.forEach((stop) => stop());
    stops = null;
  };
}
