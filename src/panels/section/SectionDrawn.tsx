import { useId, useMemo, useRef, useState } from 'react';
import type { PointerEvent } from 'react';
import type { Assessment } from '../../assess/assessment.ts';
import type { Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';
import { drawSection } from '../../draw/section/sectionDrawing.ts';
import { firstView, frameOf } from '../../draw/section/sectionView.ts';
import { metres } from '../../draw/section/sectionWords.ts';
import { namedIn } from '../../draw/section/shownSection.ts';
import type { Editor } from '../../editor/editor.ts';
import { sectionHolds } from '../../editor/settings/sectionHolds.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { edgeDrag, heightHeld, personHeld, tiltHeld, type Grip } from './held.ts';
import { SectionHandle } from './SectionHandle.tsx';
import { SectionMarks } from './SectionMarks.tsx';
import { useSlideZoom, type Lie } from './useSlideZoom.ts';
import styles from './section.module.css';

interface SectionDrawnProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly camera: PlanCamera;
  readonly assessment: Assessment;
  readonly section: Section;
  readonly width: number;
  readonly height: number;
  readonly narrow: boolean;
  setPerson(distance: number): void;
}

/** The drawing with its handles: they move height, tilt, lens and person; empty paper slides it, the wheel zooms. */
export function SectionDrawn(props: SectionDrawnProps) {
  const { editor, plan, camera, assessment, section, width, height, narrow, setPerson } = props;
  const id = useId().replaceAll(':', '');
  const svg = useRef<SVGSVGElement>(null);
  const [moved, setMoved] = useState<Lie | null>(null);
  const first = firstView(section, width, height, narrow);
  // A height that is dragged does not rescale the drawing under the pointer.
  const [held, setHeld] = useState<Lie | null>(null);
  const view = { ...first, ...moved, ...(moved === null ? held : null) };
  const named = useMemo(() => namedIn(assessment, plan), [assessment, plan]);
  const drawing = drawSection(section, view, named);
  const frame = frameOf(section, view);
  const { units } = plan.settings;

  const place = (event: { readonly clientX: number; readonly clientY: number }): Vec2 => {
    const box = svg.current?.getBoundingClientRect();
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  };

  useSlideZoom(svg, view, setMoved);
  const grip: Grip = {
    editor,
    camera,
    section,
    scale: view.scale,
    place: (at) => [
      frame.view.left + at[0] / view.scale,
      section.lens - (at[1] - frame.y(section.lens)) / view.scale,
    ],
    hold: (on) => setHeld(on ? { scale: view.scale, left: view.left } : null),
  };
  const holds = sectionHolds(plan, camera);
  const heightText = metres(section.mountingHeight, units);
  return (
    <svg
      ref={svg}
      className={styles.drawing}
      width={width}
      height={height}
      role="group"
      aria-label={`Section through ${camera.name}`}
    >
      <g role="img" aria-label={drawing.sentence}>
        <SectionMarks drawing={drawing} id={id} />
      </g>
      {(['top', 'bottom'] as const).map((side) => (
        <Edge
          key={side}
          line={drawing.edges[side]}
          begin={(at) => edgeDrag(grip, holds.lens, at)}
          place={place}
        />
      ))}
      {holds.height && (
        <SectionHandle
          at={drawing.handles.height}
          label="Mounting height"
          value={section.mountingHeight}
          least={0}
          most={Math.max(section.mountingHeight, holds.height.setting.bounds.most)}
          text={heightText}
          rising={['ArrowUp', 'ArrowRight']}
          held={heightHeld(grip, holds.height)}
          place={place}
        />
      )}
      <SectionHandle
        at={drawing.handles.tilt}
        label="Tilt"
        value={camera.tilt}
        least={holds.tilt.setting.bounds.least}
        most={holds.tilt.setting.bounds.most}
        text={`${camera.tilt.toFixed(1)}° down`}
        rising={['ArrowDown', 'ArrowRight']}
        held={tiltHeld(grip, holds.tilt)}
        place={place}
      />
      <SectionHandle
        at={drawing.handles.person}
        label="Standing person"
        value={section.person.distance}
        least={section.from}
        most={section.to}
        text={`${metres(section.person.distance, units)} away. ${drawing.sentence.split('. ').at(-1) ?? ''}`}
        rising={['ArrowUp', 'ArrowRight']}
        held={personHeld(grip, setPerson)}
        place={place}
      />
    </svg>
  );
}

interface EdgeProps {
  readonly line: readonly [Vec2, Vec2];
  begin(at: Vec2): ReturnType<typeof edgeDrag>;
  place(event: PointerEvent): Vec2;
}

/** A side of the frame: of a varifocal lens it is dragged, of a fixed one a press says so. By keys the Setting sheet does it. */
function Edge({ line: [[x0, y0], [x1, y1]], begin, place }: EdgeProps) {
  const drag = useRef<ReturnType<typeof edgeDrag>>(null);
  const end = (keep: boolean) => {
    const now = drag.current;
    drag.current = null;
    if (keep) now?.commit();
    else now?.cancel();
  };
  return (
    <line
      className={styles.edge}
      data-held
      x1={x0}
      y1={y0}
      x2={x1}
      y2={y1}
      aria-hidden="true"
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        drag.current = begin(place(event));
      }}
      onPointerMove={(event) => drag.current?.to(place(event))}
      onPointerUp={() => end(true)}
      onPointerCancel={() => end(false)}
      onLostPointerCapture={() => end(true)}
    />
  );
}
