import { fileSave } from 'browser-fs-access';
import type { Editor } from '../editor/editor.ts';
import { planText } from '../plan/write.ts';
import { fileNameOf } from './fileName.ts';

/** Saves the plan to a file of the person's: the same file again where the browser lets us. */
export function createSaving(editor: Editor): () => void {
  let last: { readonly plan: string; readonly handle: FileSystemFileHandle | null } | null = null;
  return () => {
    const { plan } = editor.store.getState();
    const blob = new Blob([planText(plan)], { type: 'application/json' });
    const fileName = `${fileNameOf(plan.name)}.plan.json`;
    const handle = last?.plan === plan.id ? last.handle : null;
    fileSave(blob, { fileName, extensions: ['.json'], id: 'soffit' }, handle).then(
      (saved) => {
        last = { plan: plan.id, handle: saved };
        editor.say(`Saved as ${saved?.name ?? fileName}.`);
      },
      (error: unknown) => {
        if (error instanceof DOMException && error.name === 'AbortError') return;
        editor.say(`The plan could not be saved: ${error instanceof Error ? error.message : String(error)}.`);
      },
    );
  };
}
