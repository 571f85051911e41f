import { useCallback, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Editor, Selected } from '../../editor/editor.ts';
import { Tree } from '../../fittings/Tree.tsx';
import type { Plan } from '../../plan/plan.ts';
import { groupOfRow, rowOf, thingOfRow } from './rowIds.ts';
import { siteRows } from './siteRows.tsx';
import styles from './siteTree.module.css';

interface SiteTreeProps {
  readonly editor: Editor;
  /** Puts the focus into the Model, where arrows go on with what was entered. */
  goToModel(): void;
  /** The acts of what is selected, at a place of the window; absent where there is no menu. */
  menu?(x: number, y: number): void;
}

/** Everything of the plan as a list; one selection with the Model. */
export function SiteTree({ editor, goToModel, menu }: SiteTreeProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const selection = useStore(editor.store, (state) => state.selection);
  const hovered = useStore(editor.store, (state) => state.hovered);
  const [opened, setOpened] = useState<ReadonlySet<string>>(new Set());
  // What is selected in the Model is shown in the list, within whatever holds it.
  const open = useMemo(
    () => new Set([...opened, ...selection.flatMap((thing) => holdersOf(plan, thing))]),
    [opened, selection, plan],
  );
  const rows = useMemo(() => siteRows(plan, open), [plan, open]);
  const selected = useMemo(() => selection.map(rowOf), [selection]);
  const hover = useCallback(
    (row: string | null) => editor.hover(row === null ? null : thingOfRow(row)),
    [editor],
  );
  const select = (row: string, more: boolean) => {
    const thing = thingOfRow(row);
    const group = groupOfRow(row);
    if (group !== null) editor.selectAll(membersOf(plan, group));
    else if (thing && more) editor.toggle(thing);
    else editor.select(thing);
  };
  const count = plan.structureOrder.length;
  return (
    <>
      <header className={styles.head}>
        <h2 className={styles.title}>Site</h2>
        <span className={styles.count}>{count === 1 ? '1 structure' : `${count} structures`}</span>
      </header>
      <div className={styles.rows}>
        <Tree
          label="Site"
          items={rows}
          selected={selected}
          hovered={hovered && rowOf(hovered)}
          select={select}
          hover={hover}
          enter={goToModel}
          {...(menu ? { menu: (_: string, x: number, y: number) => menu(x, y) } : {})}
          setOpen={(row, isOpen) =>
            setOpened((before) => {
              const after = new Set(before);
              if (isOpen) after.add(row);
              else after.delete(row);
              return after;
            })
          }
        />
      </div>
    </>
  );
}

/** The rows that must be open for a thing to be seen. */
function holdersOf(plan: Plan, thing: Selected): readonly string[] {
  const id = 'on' in thing ? thing.on : 'id' in thing ? thing.id : null;
  const group = Object.values(plan.groups).find(({ members }) => id !== null && members.includes(id));
  return [
    ...(group ? [`group ${group.id}`] : []),
    ...('on' in thing ? [rowOf({ kind: 'structure', id: thing.on })] : []),
  ];
}

/** The things of a group, as they are selected. */
function membersOf(plan: Plan, id: string): readonly Selected[] {
  return (plan.groups[id]?.members ?? []).map((member) => {
    if (Object.hasOwn(plan.cameras, member)) return { kind: 'camera', id: member };
    return { kind: Object.hasOwn(plan.lamps, member) ? 'lamp' : 'structure', id: member };
  });
}
