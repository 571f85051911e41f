import type { Editor } from '../editor/editor.ts';
import { cleanName } from '../plan/commands/renameThing.ts';
import { setPhotometry } from '../editor/settings/lampSettings.ts';
import { chooseFile } from './chooseFile.ts';

/** Lets a person choose a photometric file, and gives its light to a lamp. */
export function openLight(editor: Editor, lamp: string): void {
  chooseFile({ description: 'Light files', extensions: ['.ies'], id: 'soffit-light' })
    .then((file) => readLight(editor, lamp, file))
    .catch((error: unknown) => {
      // The person closed the system's file chooser.
      if (error instanceof DOMException && error.name === 'AbortError') return;
      editor.say(`The file could not be read: ${error instanceof Error ? error.message : String(error)}.`);
    });
}

async function readLight(editor: Editor, lamp: string, file: File): Promise<void> {
  // Fetched only by those who have such a file.
  const [{ fileText }, { readPhotometry }] = await Promise.all([
    import('../exchange/fileText.ts'),
    import('../exchange/photometry/readPhotometry.ts'),
  ]);
  const text = fileText(file.name, new Uint8Array(await file.arrayBuffer()));
  const read = text.ok ? readPhotometry(file.name, text.value) : text;
  if (!read.ok) {
    editor.say(`“${file.name}” was not opened. The lamp is as it was.`, read.faults);
    return;
  }
  if (!Object.hasOwn(editor.store.getState().plan.lamps, lamp)) return;
  const source = cleanName(file.name) || 'light file';
  const name = editor.store.getState().plan.lamps[lamp]?.name ?? lamp;
  editor.run(`Light of ${name}`, (plan) => setPhotometry(plan, lamp, source, read.value));
  editor.say(`${name} shines as “${file.name}” says.`, read.notes);
}
