import { createStore } from 'zustand/vanilla';
import type { Assessment } from '../assess/assessment.ts';
import type { TrialChange } from '../assess/trial/change.ts';

/** What the settings tried gain and lose beside the standing one, and of which assessment that is told. */
export interface TrialAnswersState {
  readonly of: Assessment | null;
  readonly standing: string | null;
  /** By the id of the variant. */
  readonly changes: Readonly<Record<string, TrialChange>>;
  readonly computing: boolean;
}

export type TrialAnswers = ReturnType<typeof createTrialAnswers>;

export const createTrialAnswers = () =>
  createStore<TrialAnswersState>(() => ({ of: null, standing: null, changes: {}, computing: false }));
