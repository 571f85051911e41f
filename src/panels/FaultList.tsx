import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Fault } from '../base/fault.ts';
import type { Editor, Selected } from '../editor/editor.ts';
import { Button } from '../fittings/Button.tsx';
import { Group } from './Group.tsx';
import { useFaultWords } from './faultWords.ts';
import styles from './sheet.module.css';

const SHOWN = 12;

/** What could not be made as drawn, in words, each leading to the thing that it concerns. */
export function FaultList({ editor, answers }: { editor: Editor; answers: AnswersStore }) {
  const faults = useStore(answers, ({ assessment }) => assessment?.scene.faults ?? null);
  const words = useFaultWords();
  if (!faults || faults.length === 0) return null;
  const rest = faults.length - SHOWN;
  return (
    <Group title="Not as drawn">
      <ul className={styles.list}>
        {faults.slice(0, SHOWN).map((fault) => {
          const thing = thingOf(fault);
          return (
            <li key={`${fault.code} ${fault.path.join(' ')}`}>
              {words(fault)}{' '}
              {thing && (
                <Button look="quiet" press={() => editor.select(thing)}>
                  Show
                </Button>
              )}
            </li>
          );
        })}
        {rest > 0 && <li>And {rest} more.</li>}
      </ul>
    </Group>
  );
}

function thingOf({ path: [room, id] }: Fault): Selected | null {
  if (typeof id !== 'string') return null;
  if (room === 'cameras') return { kind: 'camera', id };
  return room === 'structures' ? { kind: 'structure', id } : null;
}
