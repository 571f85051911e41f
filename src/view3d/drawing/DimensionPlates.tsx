import { useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { add, scale, type Vec3 } from '../../base/vector.ts';
import type { Dimension } from '../../editor/dimensions/dimension.ts';
import { dimensionsOf } from '../../editor/dimensions/dimensionsOf.ts';
import { nameOfSelected } from '../../editor/recordsOf.ts';
import type { Model } from '../Model.ts';
import { middleOf } from '../modelBox.ts';
import { rectsOver } from '../parts/rectsOver.ts';
import { DimensionPlate } from './DimensionPlate.tsx';
import { dimensionPlaces, type DimensionPlace } from './dimensionPlaces.ts';
import styles from './dimensions.module.css';

interface DimensionPlatesProps {
  readonly model: Model;
}

/** From the site's own axes: said in the strip, but too long to draw. */
const UNDRAWN = ['east', 'north'];
const TICK = 4;

/** The numbers of what is selected, on the model, each typed where it stands. */
export function DimensionPlates({ model }: DimensionPlatesProps) {
  const { editor } = model;
  const plan = useStore(editor.store, (state) => state.plan);
  const selected = useStore(editor.store, ({ selection }) =>
    selection.length === 1 ? selection[0] : undefined,
  );
  const still = useStore(
    editor.store,
    ({ tool, gesturing, readOnly }) => tool === 'rest' && !gesturing && !readOnly,
  );
  const [swapped, setSwapped] = useState(false);
  const [editing, setEditing] = useState<{ readonly key: string; readonly of: typeof selected } | null>(null);
  const dimensions = useMemo(
    () => (selected && still ? dimensionsOf(plan, selected, swapped) : []),
    [plan, selected, still, swapped],
  );
  const edited = editing?.of === selected ? editing?.key : undefined;
  const shown = dimensions.filter(
    ({ key, between }) => key === edited || (between !== null && !UNDRAWN.includes(key)),
  );
  const root = useRef<HTMLDivElement>(null);
  const lines = useRef<SVGPathElement>(null);
  const ticks = useRef<SVGPathElement>(null);
  const dots = useRef<SVGPathElement>(null);

  useEffect(() => {
    const element = root.current;
    const frame = element?.parentElement;
    if (!element || !frame || shown.length === 0) return undefined;
    return model.follows((sheet) => {
      const box = model.boxOf(selected ?? null);
      const plates = [...element.querySelectorAll<HTMLElement>('[data-dimension]')];
      if (!box || plates.length !== shown.length) return;
      const middle = middleOf(box);
      const wanted = shown.map(({ between }, i) => ({
        between: between ?? ([middle, middle] satisfies readonly [Vec3, Vec3]),
        width: plates[i]?.offsetWidth ?? 0,
        height: plates[i]?.offsetHeight ?? 0,
      }));
      const taken = [...rectsOver(frame, false), ...model.drawing.rects];
      const seen = wanted.map(({ between: [a, b] }) => model.drawing.isSeen(sheet, scale(add(a, b), 0.5)));
      const places = dimensionPlaces(sheet, wanted, middle, taken, seen);
      const [said, ended, dotted]: [string[], string[], string[]] = [[], [], []];
      places.forEach((place, i) => {
        const [plate, dimension] = [plates[i], shown[i]];
        if (!plate || !dimension) return;
        // What is being typed stays, wherever there is room for it.
        const at = place?.at ?? (dimension.key === edited ? sheet.spotFromSite(middle) : null);
        plate.style.visibility = at ? '' : 'hidden';
        if (at)
          plate.style.transform = `translate(${Math.round(at.x)}px, ${Math.round(at.y)}px) translate(-50%, -50%)`;
        if (!place) return;
        said.push(lineOf(place));
        ended.push(ticksOf(place));
        if (dimension.key === edited) dotted.push(dotOf(place, dimension));
      });
      lines.current?.setAttribute('d', said.join(''));
      ticks.current?.setAttribute('d', ended.join(''));
      dots.current?.setAttribute('d', dotted.join(''));
    });
  });

  if (shown.length === 0) return null;
  const go = (from: Dimension, way: 'rest' | 'next' | 'previous' | 'left'): boolean => {
    const index = dimensions.findIndex(({ key }) => key === from.key);
    const next =
      way === 'next' ? dimensions[index + 1] : way === 'previous' ? dimensions[index - 1] : undefined;
    setEditing(next ? { key: next.key, of: selected } : null);
    if (way === 'rest') model.focus();
    return way === 'rest' || next !== undefined;
  };
  const set = (dimension: Dimension, value: number): string | null => {
    const result = dimension.set(plan, value);
    if (!result.ok) return result.words;
    editor.run(`${dimension.label} of ${nameOfSelected(plan, selected ?? null) ?? 'it'}`, () => result.plan);
    return null;
  };
  return (
    <div
      ref={root}
      className={styles.dimensions}
      role="group"
      aria-label={`Dimensions of ${nameOfSelected(plan, selected ?? null) ?? 'what is selected'}`}
    >
      <svg className={styles.lines} aria-hidden="true">
        <path ref={lines} className={styles.line} />
        <path ref={ticks} className={styles.tick} />
        <path ref={dots} className={styles.dot} />
      </svg>
      {shown.map((dimension, i) => (
        <span key={dimension.key} className={styles.place} data-dimension={dimension.key}>
          <DimensionPlate
            dimension={dimension}
            unit={plan.settings.units}
            editing={dimension.key === edited}
            first={i === 0}
            edit={() => setEditing({ key: dimension.key, of: selected })}
            set={(value) => set(dimension, value)}
            done={(next) => go(dimension, next)}
            say={(words) => editor.say(words)}
            swap={() => setSwapped(!swapped)}
          />
        </span>
      ))}
    </div>
  );
}

const at = (x: number, y: number): string => `${x.toFixed(1)},${y.toFixed(1)}`;

const lineOf = ({ ends: [a, b], from: [c, d] }: DimensionPlace): string =>
  `M${at(c.x, c.y)}L${at(a.x, a.y)}L${at(b.x, b.y)}L${at(d.x, d.y)}`;

/** Strokes at 45° across both ends. */
function ticksOf({ ends: [a, b] }: DimensionPlace): string {
  const run = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [x, y] = [((b.x - a.x) / run) * TICK, ((b.y - a.y) / run) * TICK];
  return [a, b]
    .map((end) => `M${at(end.x - x + y, end.y - y - x)}L${at(end.x + x - y, end.y + y + x)}`)
    .join('');
}

/** At the end that moves. */
function dotOf({ from }: DimensionPlace, { moves }: Dimension): string {
  const end = from[moves === 'first' ? 0 : 1];
  return moves === null ? '' : `M${at(end.x - 4, end.y)}a4,4 0 1,0 8,0a4,4 0 1,0 -8,0Z`;
}
