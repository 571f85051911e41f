import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { sameSurface, surfaceChoices } from '../editor/settings/surfaceChoices.ts';
import { Button } from '../fittings/Button.tsx';
import type { Structure } from '../model/structure.ts';
import { Group } from './Group.tsx';
import styles from './sheet.module.css';

/** The walls and roof faces of a structure: what of each is seen can be asked for. */
export function FacesGroup({ editor, structure }: { editor: Editor; structure: Structure }) {
  const target = useStore(editor.store, (state) => state.target);
  const gesturing = useStore(editor.store, (state) => state.gesturing);
  // Finding them takes the solids: while it is moved or shaped, those of the press stay.
  const [atRest, setAtRest] = useState(structure);
  if (atRest !== structure && (!gesturing || atRest.id !== structure.id)) setAtRest(structure);
  const choices = useMemo(() => surfaceChoices(atRest), [atRest]);
  if (choices.length === 0) return null;
  return (
    <Group title="Coverage of its faces">
      <div className={styles.acts}>
        {choices.map(({ name, key }) => {
          const on = target.kind === 'surface' && sameSurface(target.surface, key);
          return (
            <Button
              key={name}
              pressed={on}
              press={() =>
                editor.ask(on ? { kind: 'ground', height: 0 } : { kind: 'surface', height: 0, surface: key })
              }
            >
              {name}
            </Button>
          );
        })}
      </div>
      <p className={styles.note}>
        Bands are judged by pixels across the line of sight; across the face itself there are fewer when it is
        seen from the side.
      </p>
    </Group>
  );
}
