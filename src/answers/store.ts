import { createStore } from 'zustand/vanilla';
import type { Assessment, PointAnswer } from '../assess/assessment.ts';
import type { FigureAnswer } from '../assess/figureAt.ts';
import type { Scene } from '../assess/scene.ts';
import type { Vec3 } from '../base/vector.ts';

/** What was asked at one point and what each camera answers, best first. */
interface Probe {
  readonly point: Vec3;
  readonly answers: readonly PointAnswer[];
  /** What the best camera makes of a person who stands there; null where none can, or it sees none of them. */
  readonly figure: FigureAnswer | null;
}

/** What the engine replied. */
export interface AnswersState {
  readonly assessment: Assessment | null;
  /** Null while nothing is being worked out; else share in [0, 1] and what, in words. */
  readonly computing: { readonly share: number; readonly doing: string } | null;
  readonly probe: Probe | null;
  /** What stands in the plan on the way, while coverage waits for the end of shaping; null where the assessment's scene does. */
  readonly ahead: Scene | null;
}

export type AnswersStore = ReturnType<typeof createAnswers>;

/** A store with nothing answered yet. */
export const createAnswers = () =>
  createStore<AnswersState>(() => ({ assessment: null, computing: null, probe: null, ahead: null }));

/** Takes an assessment unless something newer is shown. */
export function take(store: AnswersStore, assessment: Assessment): boolean {
  const shown = store.getState().assessment;
  if (shown && shown.revision > assessment.revision) return false;
  store.setState({ assessment });
  return true;
}
