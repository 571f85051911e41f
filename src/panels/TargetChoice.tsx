import { useStore } from 'zustand';
import type { Looks, Target } from '../coverage/target.ts';
import type { Editor } from '../editor/editor.ts';
import { Button } from '../fittings/Button.tsx';
import { NumberField } from '../fittings/NumberField.tsx';
import { Segmented } from '../fittings/Segmented.tsx';
import { bearings, lengths } from '../fittings/measure.ts';
import styles from './targetChoice.module.css';

/** A height that is neither of the named ones: a bonnet, a till, a waist. */
const FIRST_OTHER = 1;
const BOUNDS = { least: 0, most: 100 };
/** Towards the street, on most plans: the way that who comes to a door faces is the other one. */
const FIRST_BEARING = 180;
const TURN = { least: 0, most: 360 };

type Level = Exclude<Target['kind'], 'surface'>;

/** What coverage is asked for: the ground, a surface at some height above it, or the face of a structure. */
export function TargetChoice({ editor }: { editor: Editor }) {
  const target = useStore(editor.store, (state) => state.target);
  const settings = useStore(editor.store, ({ plan }) => plan.settings);
  const heights: Readonly<Record<Level, number>> = {
    ground: 0,
    plate: settings.plateHeight,
    face: settings.faceHeight,
    height: target.kind === 'height' ? target.height : FIRST_OTHER,
  };
  const level = [
    { value: 'ground', label: 'Ground' },
    { value: 'plate', label: `Plate ${heights.plate.toFixed(1)} m` },
    { value: 'face', label: `Face ${heights.face.toFixed(1)} m` },
    { value: 'height', label: 'Other' },
  ] as const;
  const ask = (kind: Target['kind']) => {
    if (kind !== 'surface') editor.ask({ kind, height: heights[kind] });
  };
  return (
    <div className={styles.choice}>
      <Segmented<Target['kind']>
        label="What coverage is asked for"
        viewing
        value={target.kind}
        choices={target.kind === 'surface' ? [...level, { value: 'surface', label: 'Chosen face' }] : level}
        set={ask}
      />
      {target.kind === 'height' && (
        <Typed
          label="Above ground"
          value={target.height}
          measure={lengths(settings.units)}
          bounds={BOUNDS}
          set={(height) => editor.ask({ kind: 'height', height })}
        />
      )}
      {target.kind === 'face' && <LooksChoice editor={editor} target={target} />}
    </div>
  );
}

/** Which way a face looks: anywhere, or along a bearing. */
function LooksChoice({ editor, target }: { editor: Editor; target: Extract<Target, { kind: 'face' }> }) {
  const ask = (looks: Looks | null) =>
    editor.ask(
      looks === null
        ? { kind: 'face', height: target.height }
        : { kind: 'face', height: target.height, looks },
    );
  const bearing = target.looks?.kind === 'bearing' ? target.looks.bearing : null;
  return (
    <div className={styles.looks}>
      <Button
        pressed={target.looks !== undefined}
        press={() => ask(target.looks ? null : { kind: 'bearing', bearing: FIRST_BEARING })}
      >
        {target.looks ? 'Looks one way' : 'Looks anywhere'}
      </Button>
      {bearing !== null && (
        <Typed
          label="Face looks to"
          value={bearing}
          measure={bearings}
          bounds={TURN}
          set={(next) => ask({ kind: 'bearing', bearing: next })}
        />
      )}
    </div>
  );
}

interface TypedProps {
  readonly label: string;
  readonly value: number;
  readonly measure: Parameters<typeof NumberField>[0]['measure'];
  readonly bounds: Parameters<typeof NumberField>[0]['bounds'];
  set(value: number): void;
}

/** A number of what is shown: no step of the plan. */
function Typed({ label, value, measure, bounds, set }: TypedProps) {
  return (
    <div className={styles.other}>
      <NumberField
        label={label}
        value={value}
        measure={measure}
        bounds={bounds}
        edit={{
          set,
          step: set,
          drag: () => ({ to: set, commit: () => undefined, cancel: () => set(value) }),
        }}
      />
    </div>
  );
}
