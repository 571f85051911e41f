import type { Assessment } from '../../assess/assessment.ts';
import { createShowSection } from '../../draw/section/shownSection.ts';
import type { Unknown } from '../../draw/sum/solved.ts';
import type { EditorState } from '../../editor/editor.ts';
import { angleOfView } from '../../optics/lens.ts';
import type { SumAsked } from '../../optics/quickSum.ts';
import type { PlanSettings } from '../../plan/plan.ts';

/** What a person has put into the sum. */
export interface SumChoice {
  readonly asked: SumAsked;
  readonly unknown: Unknown;
  /** px/m that lens or distance are to give. */
  readonly wanted: number;
  /** Name of the camera that it was begun from; null: of none. */
  readonly from: string | null;
}

/** Bounds that keep a sum a sum: m, mm, °, px and px/m. */
export const SUM_BOUNDS = {
  height: { least: 0.1, most: 100 },
  targetHeight: { least: 0, most: 100 },
  distance: { least: 0.2, most: 1000 },
  focalLength: { least: 0.5, most: 300 },
  hfov: { least: 1, most: 360 },
  tilt: { least: -90, most: 90 },
  sensor: { least: 0.5, most: 60 },
  pixels: { least: 16, most: 20_000 },
  density: { least: 1, most: 20_000 },
} as const;

/** A common kind of camera, invented: four megapixels on a 1/2.7 sensor behind 2.8 mm. */
export const firstSum = ({ faceHeight }: PlanSettings): SumChoice => ({
  asked: {
    height: 2.7,
    targetHeight: faceHeight,
    distance: 6,
    sensor: { width: 5.37, height: 3.04 },
    frame: { width: 2688, height: 1520 },
    lens: { focalLength: 2.8, hfov: null },
    tilt: null,
    roll: 0,
  },
  unknown: 'density',
  wanted: 125,
  from: null,
});

/** The sum of the selected camera and whoever stands ahead of it; null without one that stands. */
export function sumOfSelected(
  { plan, selected, standing, target }: EditorState,
  assessment: Assessment | null,
): SumChoice | null {
  if (selected?.kind !== 'camera' || assessment === null) return null;
  const section = createShowSection()(assessment, plan, selected.id, standing.ahead);
  if (section === null) return null;
  const { camera, mountingHeight } = section;
  const first = firstSum(plan.settings);
  const { sensor, frame, focalLength, k, tilt, roll } = camera;
  const hfov = k === 1 ? null : angleOfView(focalLength, k, sensor.width);
  return {
    ...first,
    from: camera.name,
    asked: {
      height: within(mountingHeight, SUM_BOUNDS.height),
      targetHeight: target.kind === 'surface' ? plan.settings.faceHeight : target.height,
      distance: within(standing.ahead, SUM_BOUNDS.distance),
      sensor,
      frame,
      lens: { focalLength, hfov, law: k },
      tilt,
      roll,
    },
  };
}

const within = (value: number, { least, most }: { least: number; most: number }): number =>
  Math.min(most, Math.max(least, value));
