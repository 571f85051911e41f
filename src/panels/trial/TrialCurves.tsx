import { useId, useMemo, useRef } from 'react';
import type { KeyboardEvent, PointerEvent } from 'react';
import type { Edition } from '../../coverage/band.ts';
import { settingAt, type TrialSetting } from '../../draw/trial/shownTrial.ts';
import { trialCurves } from '../../draw/trial/trialCurves.ts';
import { metres } from '../../draw/section/sectionWords.ts';
import type { Plan } from '../../plan/plan.ts';
import { SectionMarks } from '../section/SectionMarks.tsx';
import { useBox } from '../section/useBox.ts';
import { stateWords } from './stateWords.ts';
import styles from './curves.module.css';

interface TrialCurvesProps {
  readonly settings: readonly TrialSetting[];
  readonly edition: Edition;
  readonly plan: Plan;
  readonly distance: number;
  /** "ground", "face, 1.60 m": at what height it is told. */
  readonly asked: string;
  setDistance(distance: number): void;
}

/** Density against distance for all settings, and what each makes of the distance that is pointed at. */
export function TrialCurves({ settings, edition, plan, distance, asked, setDistance }: TrialCurvesProps) {
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBox(box);
  const id = useId().replaceAll(':', '');
  const drawing = useMemo(
    () => (width > 0 && height > 0 ? trialCurves(settings, edition, width, height) : null),
    [settings, edition, width, height],
  );
  const { units } = plan.settings;
  const told = settings.map((setting) => {
    const at = settingAt(setting, distance, plan);
    const density = at.density === null ? 'no picture' : `${at.density.toFixed(0)} px/m`;
    return { setting, at, words: `${setting.letter} ${density}, ${stateWords(at, edition)}` };
  });
  const far = drawing?.far ?? 0;
  const put = (next: number) => setDistance(Math.min(far, Math.max(0.1, Math.round(next * 100) / 100)));

  const follow = (event: PointerEvent<HTMLElement>) => {
    if (drawing) put(drawing.distance(event.clientX - event.currentTarget.getBoundingClientRect().left));
  };
  const keyed = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 1 : 0.1;
    const next = new Map([
      ['ArrowLeft', distance - step],
      ['ArrowDown', distance - step],
      ['ArrowRight', distance + step],
      ['ArrowUp', distance + step],
      ['PageDown', distance - 5],
      ['PageUp', distance + 5],
      ['Home', 0.1],
      ['End', far],
    ]).get(event.key);
    if (next === undefined) return;
    event.preventDefault();
    put(next);
  };

  return (
    <section className={styles.curves} aria-label="Density against distance">
      <div className={styles.curvesHead}>
        <h2 className={styles.title}>Pixels a metre, straight ahead</h2>
        <span className={styles.about}>at {asked}, each along its own axis; pale where it is not seen</span>
      </div>
      <div
        ref={box}
        className={styles.plot}
        role="slider"
        tabIndex={0}
        aria-label="Distance from the camera"
        aria-valuemin={0}
        aria-valuemax={far}
        aria-valuenow={distance}
        aria-valuetext={`${metres(distance, units)}: ${told.map(({ words }) => words).join('; ')}`}
        onKeyDown={keyed}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          follow(event);
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) follow(event);
        }}
      >
        {drawing && (
          <svg width={drawing.width} height={drawing.height} aria-hidden="true">
            <SectionMarks
              id={id}
              drawing={{
                marks: drawing.marks,
                levels: drawing.levels,
                scene: { left: drawing.plot.left, right: drawing.plot.right, foot: drawing.plot.bottom },
              }}
            />
            <line
              className={styles.crosshair}
              x1={drawing.x(distance)}
              x2={drawing.x(distance)}
              y1={drawing.plot.top}
              y2={drawing.plot.bottom}
            />
            {told.map(({ setting, at }) =>
              at.density === null ? null : (
                <circle
                  key={setting.id}
                  className={styles.spot}
                  cx={drawing.x(distance)}
                  cy={drawing.y(at.density)}
                  r="4.5"
                />
              ),
            )}
          </svg>
        )}
      </div>
      <p className={styles.told}>
        <b>{metres(distance, units)}</b> {told.map(({ words }) => words).join(' · ')}
      </p>
    </section>
  );
}
