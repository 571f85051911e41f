import { useId, useState } from 'react';
import { AS_BUILT, ROOM_FIELD } from '../../draw/card/footBlock.ts';
import { MOST_NOTE, noteAsBuilt } from '../../editor/cardActs.ts';
import type { Editor } from '../../editor/editor.ts';
import { useUnwritable } from '../../fittings/writable.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { Group } from '../Group.tsx';
import styles from './card.module.css';

/** How it was built: typed here, it stands on the card; left empty, the card has a line to write on. */
export function AsBuilt({ editor, camera }: { editor: Editor; camera: PlanCamera }) {
  return (
    <Group title="As built">
      {[ROOM_FIELD, ...AS_BUILT].map(({ id, label }) => (
        <Note
          key={id}
          label={label}
          value={camera.card.asBuilt[id] ?? ''}
          set={(text) => noteAsBuilt(editor, camera.id, id, text)}
        />
      ))}
    </Group>
  );
}

/** A text that may be empty: Enter or leaving keeps it, Esc restores. */
function Note({ label, value, set }: { label: string; value: string; set(text: string): void }) {
  const id = useId();
  const unwritable = useUnwritable();
  const [draft, setDraft] = useState<string | null>(null);
  const settle = () => {
    if (draft !== null && draft !== value) set(draft);
    setDraft(null);
  };
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        autoComplete="off"
        maxLength={MOST_NOTE}
        value={draft ?? value}
        readOnly={unwritable !== null}
        title={unwritable ?? undefined}
        onChange={(event) => setDraft(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle();
          if (event.key !== 'Escape' || draft === null) return;
          event.stopPropagation();
          setDraft(null);
        }}
        onBlur={settle}
      />
    </div>
  );
}
