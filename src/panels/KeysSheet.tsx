import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { Button } from '../fittings/Button.tsx';
import { Group } from './Group.tsx';
import { keysOfTool, type KeyRow } from './keysOfMoment.ts';
import { SheetHead } from './SheetHead.tsx';
import styles from './keysSheet.module.css';

const KEYS: readonly {
  readonly title: string;
  readonly rows: readonly KeyRow[];
}[] = [
  {
    title: 'In the Model',
    rows: [
      ['W F B O', 'draw: building, fence, block, opening'],
      ['T V G', 'tree, vehicle, site boundary'],
      ['C U M', 'camera, lamp, measure; a key again: the next kind'],
      ['Arrows', 'nudge the selected .01 m, Shift ten times; else slide the view'],
      ['Tab, Enter', 'through the numbers of the selected'],
      ['Space', 'press at the pointer or cursor'],
      [', .', 'turn the view'],
      ['PgUp PgDn', 'nearer, farther; Shift: higher, lower'],
      ['Q', 'what is here: at the pointer, else mid-view'],
      ['P', 'from above, and back'],
      ['E', 'square on to the wall pointed at or selected'],
      ['Shift E', 'coverage of the wall or roof pointed at; Esc: of the ground'],
      ['S', 'stand at the spot pointed at; arrows walk and turn'],
      ['I', 'look through the selected camera’s lens'],
      ['Z, Home', 'fit the selected, fit all'],
      ['N', 'snapping off, on'],
      ['Y', 'next target height'],
      ['H, Delete', 'leave out, delete the selected'],
      ['F2', 'its name'],
      ['Ctrl C X V', 'copy, cut, paste, also into another plan or tab'],
      ['Ctrl A', 'select everything'],
      ['Shift F10', 'what can be done here'],
      ['Esc', 'one step back, also to the view before'],
    ],
  },
  {
    title: 'In a field',
    rows: [
      ['Enter', 'take the number'],
      ['Up, Down', 'a step; Shift ten'],
      ['Esc', 'as it was'],
    ],
  },
  {
    title: 'Anywhere',
    rows: [
      ['Ctrl Z', 'undo'],
      ['Ctrl Y', 'do it again'],
      ['Ctrl Enter', 'find a command, a thing, a number'],
      ['Ctrl O', 'open'],
      ['Ctrl S', 'save to a file'],
      ['?', 'these keys'],
    ],
  },
];

interface KeysSheetProps {
  readonly editor: Editor;
  close(): void;
}

/** The keys that work now: those of the tool in hand first. */
export function KeysSheet({ editor, close }: KeysSheetProps) {
  const tool = useStore(editor.store, (state) => state.tool);
  const moment = keysOfTool(tool);
  return (
    <>
      <SheetHead
        sign={null}
        title="Keys"
        kind={
          <Button look="quiet" press={close}>
            Close
          </Button>
        }
      />
      {(moment ? [moment, ...KEYS] : KEYS).map(({ title, rows }) => (
        <Group key={title} title={title}>
          <dl className={styles.keys}>
            {rows.map(([keys, does]) => (
              <div key={keys}>
                <dt>{keys}</dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        </Group>
      ))}
      <Group title="With the pointer">
        <dl className={styles.keys}>
          <div>
            <dt>Drag</dt>
            <dd>turns the view; on what is selected: moves it</dd>
          </div>
          <div>
            <dt>Right button</dt>
            <dd>what can be done here; dragged, it turns the view</dd>
          </div>
          <div>
            <dt>Press again</dt>
            <dd>at the same spot: the thing behind</dd>
          </div>
          <div>
            <dt>Wheel</dt>
            <dd>nearer, farther</dd>
          </div>
          <div>
            <dt>Label</dt>
            <dd>drag it sideways to change its number</dd>
          </div>
        </dl>
      </Group>
    </>
  );
}
