import { SquareDashed } from 'lucide-react';
import type { Editor } from '../editor/editor.ts';
import { deleteSelected } from '../editor/selectionActs.ts';
import { Button } from '../fittings/Button.tsx';
import type { Ring } from '../model/structure.ts';
import { Figure } from './Figure.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import { ringArea } from './structureWords.ts';
import styles from './sheet.module.css';

/** The sheet of the client's own ground. */
export function BoundarySheet({ editor, boundary }: { editor: Editor; boundary: Ring }) {
  return (
    <>
      <SheetHead sign={<SquareDashed size={16} />} title="Site boundary" kind="Setting sheet" />
      <Group title="Size">
        <Figure label="Area" value={ringArea(boundary).toFixed(1)} unit="m²" />
        <Figure label="Corners" value={String(boundary.length)} />
        <div className={styles.acts}>
          <Button press={() => deleteSelected(editor, [{ kind: 'boundary' }])}>Delete</Button>
        </div>
        <p className={styles.note}>Areas are counted within it. What lies beyond is someone else’s.</p>
      </Group>
    </>
  );
}
