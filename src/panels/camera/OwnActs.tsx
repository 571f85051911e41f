import { useState } from 'react';
import { useStore } from 'zustand';
import { keepAs } from '../../editor/devices/putUp.ts';
import type { OwnDevices } from '../../editor/devices/ownDevices.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import { TextField } from '../../fittings/TextField.tsx';
import type { PlanCamera } from '../../plan/plan.ts';
import styles from '../sheet.module.css';

interface OwnActsProps {
  readonly editor: Editor;
  readonly own: OwnDevices;
  readonly camera: PlanCamera;
}

/** Keeps a camera as one's own kind, and exchanges own kinds as a file. */
export function OwnActs({ editor, own, camera }: OwnActsProps) {
  const count = useStore(own.store, ({ devices }) => devices.length);
  const kept = useStore(own.store, (state) => state.kept);
  const [name, setName] = useState(camera.sheet.name ?? `Like ${camera.name}`);
  return (
    <>
      <TextField label="Call it" value={name} most={120} set={setName} />
      <div className={styles.acts}>
        <Button press={() => keepAs(editor, own, camera, name)}>Keep {camera.name} as my own</Button>
        <Button press={() => void readFile(editor, own)}>Read a file</Button>
        <Button off={count === 0 ? 'You have none yet.' : null} press={() => void saveFile(editor, own)}>
          Save mine to a file
        </Button>
      </div>
      {!kept && (
        <p className={styles.trouble}>
          This device has no room to keep them. They last as long as this window: save them to a file.
        </p>
      )}
    </>
  );
}

const WANTED = { description: 'Files of cameras', extensions: ['.json'], id: 'soffit-devices' };

async function readFile(editor: Editor, own: OwnDevices): Promise<void> {
  try {
    const { fileOpen } = await import('browser-fs-access');
    const file = await fileOpen(WANTED);
    const { taken, faults } = own.take(await file.text());
    if (faults.length > 0)
      editor.say(`“${file.name}” cannot be read. Your own kinds are as they were.`, faults);
    else editor.say(`${taken} ${taken === 1 ? 'kind' : 'kinds'} read from “${file.name}”.`);
  } catch (error) {
    said(editor, error, 'The file could not be read');
  }
}

async function saveFile(editor: Editor, own: OwnDevices): Promise<void> {
  try {
    const { fileSave } = await import('browser-fs-access');
    const fileName = 'cameras.json';
    const saved = await fileSave(new Blob([own.text()], { type: 'application/json' }), {
      fileName,
      extensions: WANTED.extensions,
      mimeTypes: ['application/json'],
      id: WANTED.id,
    });
    editor.say(`Saved as ${saved?.name ?? fileName}.`);
  } catch (error) {
    said(editor, error, 'The file could not be saved');
  }
}

/** Says why, unless the person closed the system's chooser. */
function said(editor: Editor, error: unknown, what: string): void {
  if (error instanceof DOMException && error.name === 'AbortError') return;
  editor.say(`${what}: ${error instanceof Error ? error.message : String(error)}.`);
}
