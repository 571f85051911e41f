import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Looks, Target } from '../coverage/target.ts';
import type { Editor } from '../editor/editor.ts';
import { sameSurface, surfaceChoices } from '../editor/settings/surfaceChoices.ts';
import type { Plan } from '../plan/plan.ts';
import { firstLooks, lookTo } from '../editor/settings/looks.ts';
import { Button } from '../fittings/Button.tsx';
import { NumberField } from '../fittings/NumberField.tsx';
import { Select } from '../fittings/Select.tsx';
import { Segmented } from '../fittings/Segmented.tsx';
import { bearings, lengths } from '../fittings/measure.ts';
import styles from './targetChoice.module.css';

/** A height that is neither of the named ones: a bonnet, a till, a waist. */
const FIRST_OTHER = 1;
const BOUNDS = { least: 0, most: 100 };
const TURN = { least: 0, most: 360 };
const PLACE = { least: -1e6, most: 1e6 };

type Level = Exclude<Target['kind'], 'surface'>;

/** What coverage is asked for: the ground, a surface at some height above it, or the face of a structure. */
export function TargetChoice({ editor }: { editor: Editor }) {
  const target = useStore(editor.store, (state) => state.target);
  const settings = useStore(editor.store, ({ plan }) => plan.settings);
  const structures = useStore(editor.store, ({ plan }) => plan.structures);
  const faceName = useMemo(() => nameOfFace(structures, target), [structures, target]);
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
        choices={target.kind === 'surface' ? [...level, { value: 'surface', label: faceName }] : level}
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

/** "South wall"; of a slope, its own name is in the title block. */
function nameOfFace(structures: Plan['structures'], target: Target): string {
  if (target.kind !== 'surface') return '';
  const key = target.surface;
  const structure = key.of === 'patch' ? undefined : structures[key.structure];
  const found = structure && surfaceChoices(structure).find((one) => sameSurface(one.key, key));
  return found?.name ?? 'Slope';
}

type Way = 'anywhere' | Looks['kind'];

/** Which way a face looks: anywhere, along a bearing, or to a place that is typed or pointed at in the Model. */
function LooksChoice({ editor, target }: { editor: Editor; target: Extract<Target, { kind: 'face' }> }) {
  const units = useStore(editor.store, ({ plan }) => plan.settings.units);
  const pointing = useStore(editor.store, ({ tool }) => tool === 'place');
  const { looks } = target;
  const way: Way = looks?.kind ?? 'anywhere';
  return (
    <div className={styles.looks}>
      <div className={styles.other}>
        <Select<Way>
          label="Faces look"
          viewing
          value={way}
          choices={[
            { value: 'anywhere', label: 'anywhere' },
            { value: 'bearing', label: 'towards a bearing' },
            { value: 'place', label: 'towards a place' },
          ]}
          set={(next) => lookTo(editor, next === 'anywhere' ? null : firstLooks(editor, next))}
        />
      </div>
      {looks?.kind === 'bearing' && (
        <Typed
          label="Bearing"
          value={looks.bearing}
          measure={bearings}
          bounds={TURN}
          set={(bearing) => lookTo(editor, { kind: 'bearing', bearing })}
        />
      )}
      {looks?.kind === 'place' && (
        <>
          <Typed
            label="East"
            value={looks.at[0]}
            measure={lengths(units)}
            bounds={PLACE}
            set={(x) => lookTo(editor, { kind: 'place', at: [x, looks.at[1]] })}
          />
          <Typed
            label="North"
            value={looks.at[1]}
            measure={lengths(units)}
            bounds={PLACE}
            set={(y) => lookTo(editor, { kind: 'place', at: [looks.at[0], y] })}
          />
          <Button
            pressed={pointing}
            press={() => {
              editor.hold(pointing ? 'rest' : 'place');
              document.querySelector<HTMLElement>('[role="application"]')?.focus();
            }}
          >
            Point in the Model
          </Button>
        </>
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
