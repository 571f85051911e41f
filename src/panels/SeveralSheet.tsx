import { Group as GroupIcon } from 'lucide-react';
import type { Editor, Selected } from '../editor/editor.ts';
import {
  groupSelected,
  hideSelected,
  lockSelected,
  isGrouped,
  ungroupSelected,
  deleteSelected,
} from '../editor/selectionActs.ts';
import { align, mirror } from '../editor/tools/rest/acting.ts';
import type { Act } from '../editor/tools/chart.ts';
import { nameOfSelected } from '../editor/recordsOf.ts';
import { Button } from '../fittings/Button.tsx';
import type { Plan } from '../plan/plan.ts';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './sheet.module.css';

const SIDES: readonly (readonly [Act, string])[] = [
  ['align left', 'West sides'],
  ['align right', 'East sides'],
  ['align front', 'South sides'],
  ['align rear', 'North sides'],
];

interface SeveralSheetProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly selection: readonly Selected[];
}

/** The sheet of several things: what can be done with all of them at once. */
export function SeveralSheet({ editor, plan, selection }: SeveralSheetProps) {
  return (
    <>
      <SheetHead sign={<GroupIcon size={16} />} title={`${selection.length} things`} kind="Setting sheet" />
      <Group title="Selected">
        <ul className={styles.list}>
          {selection.map((thing) => {
            const name = nameOfSelected(plan, thing) ?? 'something';
            return (
              <li key={JSON.stringify(thing)}>
                <Button look="quiet" press={() => editor.select(thing)}>
                  {name}
                </Button>
              </li>
            );
          })}
        </ul>
      </Group>
      <Group title="Line up with the last">
        <div className={styles.acts}>
          {SIDES.map(([act, label]) => (
            <Button key={act} press={() => align(editor, selection, act)}>
              {label}
            </Button>
          ))}
        </div>
      </Group>
      <Group title="All of them">
        <div className={styles.acts}>
          <Button press={() => groupSelected(editor, selection)}>Group</Button>
          {isGrouped(plan, selection) && (
            <Button press={() => ungroupSelected(editor, selection)}>Ungroup</Button>
          )}
          <Button press={() => mirror(editor, selection)}>Mirror</Button>
          <Button press={() => hideSelected(editor, selection)}>Hide</Button>
          <Button press={() => lockSelected(editor, selection)}>Lock</Button>
          <Button press={() => deleteSelected(editor, selection)}>Delete</Button>
        </div>
        <p className={styles.note}>
          Shift and a press, in the Model or in the list, adds a thing or takes it out.
        </p>
      </Group>
    </>
  );
}
