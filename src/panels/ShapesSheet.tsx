import { useState } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { addShape, shapes } from '../editor/shapeActs.ts';
import { Button } from '../fittings/Button.tsx';
import { NumberField } from '../fittings/NumberField.tsx';
import { Select } from '../fittings/Select.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import { measureOf } from '../fittings/measureOf.ts';
import styles from './sheet.module.css';

interface ShapesSheetProps {
  readonly editor: Editor;
  close(): void;
}

/** Sites to begin with: a shape, its sizes, and it stands. */
export function ShapesSheet({ editor, close }: ShapesSheetProps) {
  const units = useStore(editor.store, ({ plan }) => plan.settings.units);
  const [key, setKey] = useState(shapes[0]?.key ?? '');
  const [given, setGiven] = useState<Readonly<Record<string, number>>>({});
  const shape = shapes.find((one) => one.key === key);
  if (!shape) return null;
  const set = (size: string) => (value: number) => setGiven((before) => ({ ...before, [size]: value }));
  return (
    <>
      <SheetHead
        sign={null}
        title="Begin with a shape"
        kind={
          <Button look="quiet" press={close}>
            Close
          </Button>
        }
      />
      <Group title="Shape">
        <Select
          label="Site"
          value={key}
          choices={shapes.map(({ key: value, name }) => ({ value, label: name }))}
          set={(next) => {
            setKey(next);
            setGiven({});
          }}
        />
        <p className={styles.note}>{shape.says}.</p>
      </Group>
      <Group title="Sizes">
        {shape.sizes.map((size) => (
          <NumberField
            key={`${key} ${size.key}`}
            label={size.label}
            value={given[size.key] ?? size.first}
            measure={measureOf(size.unit, units)}
            bounds={{ least: size.least, most: size.most }}
            edit={{
              set: set(size.key),
              step: set(size.key),
              drag: () => ({ to: set(size.key), commit: () => undefined, cancel: () => undefined }),
            }}
          />
        ))}
        <div className={styles.acts}>
          <Button
            look="main"
            press={() => {
              addShape(editor, shape, given);
              close();
            }}
          >
            Put it on the board
          </Button>
        </div>
        <p className={styles.note}>Every size counts as guessed until you say that it was measured.</p>
      </Group>
    </>
  );
}
