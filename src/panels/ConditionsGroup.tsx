import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { addConditions, conditionsOf } from '../editor/settings/conditions.ts';
import { Button } from '../fittings/Button.tsx';
import { useUnwritable } from '../fittings/writable.ts';
import { Group } from './Group.tsx';
import styles from './sheet.module.css';

/** Ways to more conditions than the plan has: night at once, others in their sheet. */
export function ConditionsGroup({ editor }: { editor: Editor }) {
  const plan = useStore(editor.store, (state) => state.plan);
  const unwritable = useUnwritable();
  const add = (name: string, night: boolean) => {
    const id = addConditions(editor, name, night);
    editor.select({ kind: 'situation', id });
    editor.askIn(id);
  };
  const hasNight = conditionsOf(plan).some(({ night }) => night);
  return (
    <Group title="Conditions">
      <p className={styles.note}>
        Night, a van away, trees bare, a gate open: what holds as drawn may not hold then.
      </p>
      <div className={styles.acts}>
        {!hasNight && (
          <Button off={unwritable} press={() => add('Night', true)}>
            Add night
          </Button>
        )}
        <Button off={unwritable} press={() => add('Conditions', false)}>
          Add conditions
        </Button>
      </div>
    </Group>
  );
}
