import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { Button } from '../fittings/Button.tsx';
import styles from './topBar.module.css';

/** Whether and when the plan was kept, or what is in the way of it. */
export function KeptWords({ editor, editHere }: { editor: Editor; editHere(): void }) {
  const kept = useStore(editor.store, (state) => state.kept);
  const readOnly = useStore(editor.store, (state) => state.readOnly);
  const empty = useStore(
    editor.store,
    ({ plan }) => plan.structureOrder.length === 0 && plan.cameraOrder.length === 0,
  );
  if (readOnly)
    return (
      <p className={styles.kept}>
        <b>read only, open in another tab</b>
        <Button press={editHere}>Edit here instead</Button>
      </p>
    );
  if (kept.trouble !== null)
    return (
      <p className={styles.kept}>
        <b>{kept.trouble}</b>
      </p>
    );
  if (kept.at === null)
    return <p className={styles.kept}>{empty ? 'nothing drawn yet' : 'not changed yet'}</p>;
  const time = new Date(kept.at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return <p className={styles.kept}>kept on this device, {time}</p>;
}
