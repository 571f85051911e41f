import type { Editor } from '../editor/editor.ts';
import { pictureFrom, type Shelf } from '../editor/shelf.ts';
import type { Plan } from '../plan/plan.ts';
import { planText } from '../plan/write.ts';
import { loadFileAccess } from './chooseFile.ts';
import { fileNameOf } from './fileName.ts';

/** Saves the plan to a file of the person's: the same file again where the browser lets us. */
export function createSaving(editor: Editor, shelf: Shelf): () => void {
  let last: { readonly plan: string; readonly handle: FileSystemFileHandle | null } | null = null;
  return () => {
    const { plan } = editor.store.getState();
    const isPacked = plan.pictureOrder.length > 0;
    const extension = isPacked ? '.soffit' : '.json';
    const fileName = `${fileNameOf(plan.name)}${isPacked ? '' : '.plan'}${extension}`;
    const handle = last?.plan === plan.id && last.handle?.name.endsWith(extension) ? last.handle : null;
    // The chooser is asked for at once, while the press still counts; what goes into the file may take a while.
    const blob = isPacked
      ? packed(plan, shelf)
      : Promise.resolve(new Blob([planText(plan)], { type: 'application/json' }));
    const saving = loadFileAccess().then(({ fileSave }) =>
      fileSave(
        blob,
        {
          fileName,
          extensions: [extension],
          mimeTypes: [isPacked ? 'application/zip' : 'application/json'],
          id: 'soffit',
        },
        handle,
      ),
    );
    saving.then(
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

/** The plan with those of its pictures that this device has. */
async function packed(plan: Plan, shelf: Shelf): Promise<Blob> {
  const { packPlan } = await import('../exchange/planPack.ts');
  const pictures = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const { file } of Object.values(plan.pictures)) {
    const held = pictureFrom(await shelf.picture(file.sha).catch(() => null));
    if (held) pictures.set(file.sha, held.bytes);
  }
  return new Blob([packPlan(plan, pictures)], { type: 'application/zip' });
}
