import { useStore } from 'zustand';
import type { Target } from '../coverage/target.ts';
import type { Editor } from '../editor/editor.ts';
import { NumberField } from '../fittings/NumberField.tsx';
import { Segmented } from '../fittings/Segmented.tsx';
import { lengths } from '../fittings/measure.ts';
import styles from './targetChoice.module.css';

/** A height that is neither of the named ones: a bonnet, a till, a waist. */
const FIRST_OTHER = 1;
const BOUNDS = { least: 0, most: 100 };

type Level = Exclude<Target['kind'], 'surface'>;

/** What coverage is asked for: the ground, or a surface at some height above it. */
export function TargetChoice({ editor }: { editor: Editor }) {
  const target = useStore(editor.store, (state) => state.target);
  const settings = useStore(editor.store, ({ plan }) => plan.settings);
  const heights: Readonly<Record<Level, number>> = {
    ground: 0,
    plate: settings.plateHeight,
    face: settings.faceHeight,
    height: target.kind === 'height' ? target.height : FIRST_OTHER,
  };
  const other = (height: number) => editor.ask({ kind: 'height', height });
  return (
    <div className={styles.choice}>
      <Segmented
        label="What coverage is asked for"
        viewing
        value={target.kind === 'surface' ? 'height' : target.kind}
        choices={[
          { value: 'ground', label: 'Ground' },
          { value: 'plate', label: `Plate ${heights.plate.toFixed(1)} m` },
          { value: 'face', label: `Face ${heights.face.toFixed(1)} m` },
          { value: 'height', label: 'Other' },
        ]}
        set={(kind) => editor.ask({ kind, height: heights[kind] })}
      />
      {target.kind === 'height' && (
        <div className={styles.other}>
          <NumberField
            label="Above ground"
            value={target.height}
            measure={lengths(settings.units)}
            bounds={BOUNDS}
            edit={{
              set: other,
              step: other,
              drag: () => ({ to: other, commit: () => undefined, cancel: () => other(target.height) }),
            }}
          />
        </div>
      )}
    </div>
  );
}
