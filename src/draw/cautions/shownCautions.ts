import type { CautionReport } from '../../assess/cautions/caution.ts';
import { createCautioner } from '../../assess/cautions/cautioner.ts';
import { sameButCards, withTicks } from '../../assess/cautions/sameButCards.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';

/** The cautions about a camera of a plan in steps of a few milliseconds: run them while the window is at rest. */
export type SeekCautions = (
  plan: Plan,
  camera: string,
) => Generator<{ readonly share: number; readonly doing: string }, CautionReport | null, void>;

/** Remembers what it laid out of the last plan. */
export function createSeekCautions(): SeekCautions {
  const cautioner = createCautioner();
  return (plan, camera) => cautioner.steps(plan, camera);
}

/** A report on a plan that may have been ticked since, with the ticks of now; null where more has changed. */
export const stillHolds = (
  report: CautionReport,
  of: Plan,
  plan: Plan,
  camera: PlanCamera,
): CautionReport | null =>
  sameButCards(of, plan) ? { ...report, cautions: withTicks(report.cautions, camera) } : null;
