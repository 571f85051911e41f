import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { wallAsked, wallsOf } from '../editor/pictures/wallAsked.ts';
import { Button } from '../fittings/Button.tsx';
import { Select } from '../fittings/Select.tsx';
import type { Structure } from '../model/structure.ts';
import { Group } from './Group.tsx';
import type { PhotoActs } from './photoActs.ts';
import styles from './sheet.module.css';

interface WallPhotoGroupProps {
  readonly editor: Editor;
  readonly structure: Structure;
  readonly square: PhotoActs['square'];
}

/** Puts a photo onto one of the walls; the one whose coverage is asked for comes first. */
export function WallPhotoGroup({ editor, structure, square }: WallPhotoGroupProps) {
  const walls = useMemo(() => wallsOf(structure), [structure]);
  const asked = useStore(editor.store, (state) => wallAsked(state)?.face ?? null);
  const [chosen, setChosen] = useState<number | null>(null);
  const face = chosen ?? asked;
  const wall = walls.find((one) => one.face === face) ?? walls[0];
  if (!wall) return null;
  return (
    <Group title="Photo on a wall">
      <Select
        label="Wall"
        value={String(wall.face)}
        choices={walls.map((one) => ({ value: String(one.face), label: one.name }))}
        set={(next) => setChosen(Number(next))}
      />
      <div className={styles.acts}>
        <Button press={() => square(structure.id, wall.face)}>Square a photo onto this wall</Button>
      </div>
    </Group>
  );
}
