import { Button } from '../fittings/Button.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './keysSheet.module.css';

const KEYS: readonly {
  readonly title: string;
  readonly rows: readonly (readonly [keys: string, does: string])[];
}[] = [
  {
    title: 'In the Model',
    rows: [
      ['C', 'place a camera; again: the next mount'],
      ['U', 'place a lamp'],
      ['Arrows', 'move the selected camera .01 m, lamp .1; Shift ten times'],
      [', .', 'turn the view'],
      ['PgUp PgDn', 'nearer, farther'],
      ['Q', 'what is here: at the pointer, else mid-view'],
      ['P', 'from above, and back'],
      ['W', 'coverage of the wall or roof pointed at; Esc: of the ground'],
      ['E', 'square on to the wall pointed at or selected'],
      ['S', 'stand at the spot pointed at; arrows walk and turn'],
      ['I', 'look through the selected camera’s lens'],
      ['Z, Home', 'fit the selected, fit all'],
      ['Y', 'next target height'],
      ['H, Delete', 'leave out, delete the selected'],
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
      ['Ctrl O', 'open'],
      ['Ctrl S', 'save to a file'],
      ['?', 'these keys'],
    ],
  },
];

/** The keys that work now. */
export function KeysSheet({ close }: { close(): void }) {
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
      {KEYS.map(({ title, rows }) => (
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
            <dd>turns the view; on the selected camera: slides it</dd>
          </div>
          <div>
            <dt>Click again</dt>
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
