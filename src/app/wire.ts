import { take } from '../answers/store.ts';
import type { AnswersStore } from '../answers/store.ts';
import type { Assessment, Question } from '../assess/assessment.ts';
import { figureAt } from '../assess/figureAt.ts';
import { runSteps } from '../assess/session.ts';
import type { Session } from '../assess/session.ts';
import { CancelledError } from '../base/progress.ts';
import type { Plan } from '../plan/plan.ts';
import type { Editor } from '../editor/editor.ts';
import { latestWins } from '../worker/latest.ts';
import type { Pool } from '../worker/pool.ts';
import { lentSight } from './lentSight.ts';

/** What is worked out on the spot, so that a drag repaints in its own frame, ms. */
const ON_THE_SPOT = 12;

interface WireParts {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly session: Session;
  /** Around the same session. */
  readonly pool: Pool;
  /** Calls back once before the next frame is drawn. */
  frame(callback: () => void): void;
  /** A bug of the engine: it is shown, and the last result stays. */
  failed(error: unknown): void;
}

/**
 * Joins what the person says to what the engine answers: small questions here and now, large ones in the pool of workers. A drag
 * asks for quick causes, its end for exact ones. While structures are shaped, coverage waits for the end, unless it is wanted
 * on the way: what stands is shown at once, and the last coverage stays, marked as not worked out.
 */
export function wire({ editor, answers, session, pool, frame, failed }: WireParts): void {
  const { store } = editor;
  editor.lendSight(lentSight(answers));
  const queue = latestWins(pool.assess);

  const show = (assessment: Assessment) => {
    if (take(answers, assessment) && assessment.revision === store.getState().revision)
      answers.setState({ computing: null, ahead: null });
  };

  /** What stands now, without what is seen of it. */
  const standing = () => {
    const { plan, target, alone, situation } = store.getState();
    return session.ahead(plan, { target, alone, situation, causes: 'quick' });
  };

  const waitForTheEnd = () => {
    queue.callOff();
    answers.setState({
      ahead: standing(),
      computing: { share: 0, doing: 'Coverage follows when you let go' },
    });
  };

  const here = (causes: Question['causes']) => {
    const { plan, target, alone, situation, revision } = store.getState();
    queue.callOff();
    show(runSteps(session.steps(plan, { target, alone, situation, causes }, revision)));
  };

  const elsewhere = async (causes: Question['causes']) => {
    const { plan, target, alone, situation, revision } = store.getState();
    answers.setState({
      computing: { share: 0, doing: 'Working out coverage' },
      // What was shown ahead of its coverage does not fall behind what is on the way now.
      ...(answers.getState().ahead ? { ahead: standing() } : {}),
    });
    const asked = { plan, question: { target, alone, situation, causes }, revision };
    const assessment = await queue.ask(asked, (share, doing) =>
      answers.setState({ computing: { share, doing } }),
    );
    // Another plan may have been opened meanwhile.
    if (store.getState().plan.id !== plan.id) return;
    show(assessment);
  };

  const troubled = (error: unknown) => {
    if (error instanceof CancelledError) return;
    answers.setState({ computing: null });
    failed(error);
  };

  let atPress: Plan['structures'] | null = null;
  /** The gesture under way has moved or shaped what stands. */
  let shaped = false;
  /** And coverage is not wanted on the way. */
  const shaping = (): boolean => {
    const { gesturing, coverShaping, plan } = store.getState();
    shaped = gesturing && (shaped || plan.structures !== atPress);
    return shaped && !coverShaping && answers.getState().assessment !== null;
  };

  const work = async () => {
    const { plan, target, alone, situation, gesturing, revision } = store.getState();
    const fits = (causes: Question['causes']) =>
      session.estimate(plan, { target, alone, situation, causes }) <= ON_THE_SPOT;
    try {
      if (!gesturing && fits('exact')) {
        here('exact');
        return;
      }
      // What hides how much may lag; picture, bands and states may not.
      if (fits('quick')) here('quick');
      else await elsewhere('quick');
      const now = store.getState();
      if (!now.gesturing && now.revision === revision) await elsewhere('exact');
    } catch (error) {
      troubled(error);
    }
  };

  let waiting = false;
  const probe = () => {
    if (waiting) return;
    waiting = true;
    frame(() => {
      waiting = false;
      const { pointed, plan } = store.getState();
      const { assessment } = answers.getState();
      if (!pointed || !assessment) {
        answers.setState({ probe: null });
        return;
      }
      const found = session.probe(assessment, pointed);
      const figure = figureAt(session, assessment, pointed, found[0], plan.settings);
      answers.setState({ probe: { point: pointed, answers: found, figure } });
    });
  };

  store.subscribe((state, before) => {
    if (state.plan.id !== before.plan.id) {
      queue.callOff();
      answers.setState({ assessment: null, probe: null, ahead: null });
    }
    if (state.gesturing && !before.gesturing) atPress = state.plan.structures;
    const ended = before.gesturing && !state.gesturing;
    const unveiled = state.gesturing && state.coverShaping && !before.coverShaping;
    if (state.revision !== before.revision && shaping()) waitForTheEnd();
    else if (state.revision !== before.revision || ended || unveiled) void work();
    if (state.pointed !== before.pointed) probe();
  });
  answers.subscribe((state, before) => {
    if (state.assessment !== before.assessment && store.getState().pointed) probe();
  });
  void work();
}
