import { useEffect, useId, useMemo, useRef } from 'react';
import type { CSSProperties } from 'react';
import type { Assessment } from '../../assess/assessment.ts';
import type { Picture, PictureAround, PicturePerson } from '../../assess/picture/picture.ts';
import type { Vec2 } from '../../base/vector.ts';
import { viewOf } from '../../draw/picture/pictureMarks.ts';
import { liveMarks, namedInPicture, restLabels, restMarks } from '../../draw/picture/shownPicture.ts';
import type { Plan } from '../../plan/plan.ts';
import { SectionMarks } from '../section/SectionMarks.tsx';
import type { AimHands } from './aimHands.ts';
import type { Painter } from './painter.ts';
import { usePictureHands } from './usePictureHands.ts';
import styles from './picture.module.css';

/** Turns by the arrow keys, with Shift, °; growth of the lens by plus and minus. */
const [STEP, STRIDE, GROWTH] = [0.5, 5, 1.05];

interface PictureStageProps {
  readonly assessment: Assessment;
  readonly plan: Plan;
  readonly around: PictureAround;
  /** Whole, once nothing moves. */
  readonly picture: Picture | null;
  readonly person: PicturePerson | null;
  readonly covered: boolean;
  readonly wash: number;
  /** Where the chosen spot is in the picture, px of the picture. */
  readonly spot: Vec2 | null;
  readonly width: number;
  readonly height: number;
  readonly hands: AimHands;
  readonly sentence: string;
  painter(canvas: HTMLCanvasElement): Painter;
  pick(at: Vec2): void;
  clear(): void;
}

/** The picture itself: painted, with what is drawn over it. Dragging aims the camera, a press picks a spot. */
export function PictureStage(props: PictureStageProps) {
  const { assessment, plan, around, picture, person, covered, wash, spot, width, height, hands } = props;
  const id = useId().replaceAll(':', '');
  const stage = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<Painter | null>(null);
  const { painter } = props;
  useEffect(() => {
    if (!canvas.current) return undefined;
    const made = painter(canvas.current);
    painted.current = made;
    return () => {
      painted.current = null;
      made.dispose();
    };
  }, [painter]);
  useEffect(() => painted.current?.show(around.camera.id, wash), [painter, around.camera.id, wash]);

  const scale = around.width / width;
  const key = (event: KeyboardEvent): boolean => {
    const by = event.shiftKey ? STRIDE : STEP;
    if (event.key === 'ArrowLeft') hands.turn(-by, 0);
    else if (event.key === 'ArrowRight') hands.turn(by, 0);
    else if (event.key === 'ArrowUp') hands.turn(0, -by);
    else if (event.key === 'ArrowDown') hands.turn(0, by);
    else if (event.key === '+' || event.key === '=') hands.zoom(GROWTH);
    else if (event.key === '-') hands.zoom(1 / GROWTH);
    else if (event.key === 'Enter' || event.key === ' ') props.pick([around.width / 2, around.height / 2]);
    else if (event.key === 'Escape') props.clear();
    else return false;
    return true;
  };
  usePictureHands(stage, scale, { ...hands, key, pick: props.pick });
  const view = useMemo(() => viewOf(around, width), [around, width]);
  const scene = { left: 0, right: width, foot: height };
  const levels = assessment.edition.bands.length;
  const live = useMemo(() => liveMarks(around, person, view), [around, person, view]);
  const rest = useMemo(() => (picture ? restMarks(picture, covered, view) : []), [picture, covered, view]);
  const labels = useMemo(
    () => (picture ? restLabels(picture, namedInPicture(assessment, plan), person, view) : []),
    [picture, assessment, plan, person, view],
  );
  const blind = around.lensInside === null ? null : (assessment.scene.solids[around.lensInside]?.name ?? '');

  const size: CSSProperties = { width, height };
  const mark: Vec2 | null = spot && [spot[0] / scale, spot[1] / scale];
  return (
    <div
      ref={stage}
      className={styles.stage}
      style={size}
      role="application"
      aria-label={`Picture of ${around.camera.name}`}
      aria-describedby={`${id}-about`}
      data-picture
    >
      <canvas ref={canvas} className={styles.canvas} style={size} aria-hidden="true" />
      <svg className={styles.over} width={width} height={height} aria-hidden="true">
        <SectionMarks drawing={{ marks: rest, scene, levels }} id={`${id}-rest`} />
        <SectionMarks drawing={{ marks: live, scene, levels }} id={`${id}-live`} />
        <SectionMarks drawing={{ marks: labels, scene, levels }} id={`${id}-labels`} />
        <path
          className={styles.middle}
          d={`M${width / 2 - 8} ${height / 2}h16M${width / 2} ${height / 2 - 8}v16`}
        />
        {mark && (
          <g transform={`translate(${mark[0]} ${mark[1]})`} data-spot>
            <circle className={styles.casing} r={7} />
            <circle className={styles.ring} r={7} />
            <circle className={styles.dot} r={2} />
          </g>
        )}
      </svg>
      {blind !== null && (
        <p className={styles.blind}>
          <span>The lens stands inside {blind}: nothing of the site is seen. Move the camera out of it.</span>
        </p>
      )}
      <p id={`${id}-about`} className={styles.about} data-said>
        {props.sentence} Arrows aim by half a degree, with Shift by five; plus and minus draw a varifocal lens
        out and in; Enter asks what is in the middle.
      </p>
    </div>
  );
}
