import { useCallback, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { Tree } from '../fittings/Tree.tsx';
import {
  cameraRows,
  groundRows,
  lampRows,
  rowOf,
  situationRows,
  structureRows,
  thingOfRow,
} from './siteRows.tsx';
import styles from './siteTree.module.css';

interface SiteTreeProps {
  readonly editor: Editor;
  /** Puts the focus into the Model, where arrows go on with what was entered. */
  goToModel(): void;
}

/** Everything of the plan as a list; one selection with the Model. */
export function SiteTree({ editor, goToModel }: SiteTreeProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const selected = useStore(editor.store, (state) => state.selected);
  const hovered = useStore(editor.store, (state) => state.hovered);
  const { boundary, ground, structures, structureOrder } = plan;
  const things = useMemo(
    () => [...groundRows({ boundary, ground }), ...structureRows({ structures, structureOrder })],
    [boundary, ground, structures, structureOrder],
  );
  const rows = useMemo(
    () => [...things, ...cameraRows(plan), ...lampRows(plan), ...situationRows(plan)],
    [things, plan],
  );
  const hover = useCallback(
    (row: string | null) => editor.hover(row === null ? null : thingOfRow(row)),
    [editor],
  );
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
          selected={selected && rowOf(selected)}
          hovered={hovered && rowOf(hovered)}
          select={(row) => editor.select(thingOfRow(row))}
          hover={hover}
          enter={goToModel}
          setOpen={() => undefined}
        />
      </div>
    </>
  );
}
