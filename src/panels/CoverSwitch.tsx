import { useStore } from 'zustand';
import type { Editor, Selected } from '../editor/editor.ts';
import { Segmented } from '../fittings/Segmented.tsx';
import styles from './coverSwitch.module.css';

/** What is shaped by its handles. */
const SHAPED: readonly Selected['kind'][] = ['structure', 'opening', 'service', 'group'];

/** While something is in hand to be shaped: whether its coverage is worked out with each move or at the end. */
export function CoverSwitch({ editor }: { editor: Editor }) {
  const shaping = useStore(
    editor.store,
    ({ selected }) => selected !== null && SHAPED.includes(selected.kind),
  );
  const on = useStore(editor.store, (state) => state.coverShaping);
  if (!shaping) return null;
  return (
    <div className={styles['switch']}>
      <span aria-hidden="true">Coverage</span>
      <Segmented<'off' | 'on'>
        label="Coverage"
        viewing
        value={on ? 'on' : 'off'}
        choices={[
          { value: 'off', label: 'Off while shaping' },
          { value: 'on', label: 'On' },
        ]}
        set={(value) => editor.coverShaping(value === 'on')}
      />
    </div>
  );
}
