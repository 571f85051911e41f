import { createAnswers, type AnswersStore } from '../../answers/store.ts';
import { createTrialAnswers, type TrialAnswers } from '../../answers/trial.ts';
import type { Assessment } from '../../assess/assessment.ts';
import { createSession } from '../../assess/session.ts';
import { changeOfCells } from '../../assess/trial/cellChange.ts';
import type { TrialChange } from '../../assess/trial/change.ts';
import { trialAsked } from '../../assess/trial/trialAsked.ts';
import { CancelledError } from '../../base/progress.ts';
import type { Editor } from '../../editor/editor.ts';
import { variantsIn, type TrialStore } from '../../editor/trial/trial.ts';
import { followTrial } from '../../editor/trial/trialActs.ts';
import { createTrialEditor, type TrialEditor } from '../../editor/trial/trialEditor.ts';
import type { Client } from '../../worker/client.ts';
import { createPool } from '../../worker/pool.ts';
import { poolSize } from '../poolSize.ts';
import { wire } from '../wire.ts';

/** What the page of a trial works with. */
export interface TrialWork {
  /** Of the plan with variants in it. */
  readonly editor: TrialEditor;
  /** The assessment of that plan. */
  readonly answers: AnswersStore;
  readonly changes: TrialAnswers;
  /** Goes to work. Returns how to end it. */
  begin(): () => void;
}

interface TrialParts {
  readonly editor: Editor;
  readonly trial: TrialStore;
  /** Of the window; what it shows stands in until the trial has an assessment of its own. */
  readonly shown: AnswersStore;
  hire(): { readonly client: Client; dismiss(): void };
  frame(callback: () => void): void;
  failed(error: unknown): void;
}

/**
 * Assesses the plan with the variants in it, by a session and workers of its own, so that the window's own session forgets
 * nothing meanwhile; and has what is gained and lost worked out beside it.
 */
export function createTrialWork({ editor, trial, shown, hire, frame, failed }: TrialParts): TrialWork {
  const inTrial = createTrialEditor(editor, trial);
  const answers = createAnswers();
  const changes = createTrialAnswers();

  const begin = () => {
    const dismissals: (() => void)[] = [];
    const hired = () => {
      const one = hire();
      dismissals.push(() => one.dismiss());
      return one;
    };
    const stops = [followTrial(editor, trial), inTrial.follow()];
    answers.setState({ assessment: shown.getState().assessment });
    const session = createSession();
    const pool = createPool(session, hired, poolSize(navigator.hardwareConcurrency));
    wire({ editor: inTrial, answers, session, pool, frame, failed });
    stops.push(followChanges(answers, trial, changes, () => hired().client, failed));
    return () => {
      for (const stop of [...stops, ...dismissals]) stop();
    };
  };

  return { editor: inTrial, answers, changes, begin };
}

/** Has the changes worked out for each assessment, the newest alone; what was found last stays until then. */
function followChanges(
  answers: AnswersStore,
  trial: TrialStore,
  changes: TrialAnswers,
  hire: () => Client,
  failed: (error: unknown) => void,
): () => void {
  let client: Client | null = null;
  let calling = new AbortController();

  const changeIn = (assessment: Assessment, of: string, id: string): Promise<TrialChange | null> => {
    const asked = trialAsked(assessment, of, id);
    if (asked !== null) {
      client ??= hire();
      return client.trial(asked, { signal: calling.signal });
    }
    const [one, two] = [of, id].map((name) => assessment.cameras.find(({ camera }) => camera.id === name));
    return Promise.resolve(one && two ? changeOfCells(assessment, one.cells, two.cells) : null);
  };

  const work = async () => {
    calling.abort();
    calling = new AbortController();
    const { assessment } = answers.getState();
    const { of } = trial.getState();
    if (assessment === null || of === null) return;
    const ids = variantsIn(trial.getState()).map(({ id }) => id);
    const mine = calling;
    changes.setState({ computing: ids.length > 0 });
    try {
      const found = await Promise.all(
        ids.map(async (id) => [id, await changeIn(assessment, of, id)] as const),
      );
      if (mine !== calling) return;
      const told = found.flatMap(([id, change]) => (change === null ? [] : [[id, change] as const]));
      changes.setState({
        of: assessment,
        standing: of,
        changes: Object.fromEntries(told),
        computing: false,
      });
    } catch (error) {
      if (error instanceof CancelledError) return;
      changes.setState({ computing: false });
      failed(error);
    }
  };

  const stop = answers.subscribe((state, before) => {
    if (state.assessment !== before.assessment) void work();
  });
  void work();
  return () => {
    calling.abort();
    stop();
  };
}
