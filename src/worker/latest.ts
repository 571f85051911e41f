import { CancelledError } from '../base/progress.ts';
import type { Progress } from '../base/progress.ts';

type AskOne<Q, A> = (question: Q, options: { progress: Progress; signal: AbortSignal }) => Promise<A>;

interface Waiting<Q, A> {
  readonly question: Q;
  readonly progress: Progress;
  resolve(answer: A): void;
  reject(error: unknown): void;
}

/**
 * Keeps one question under way and one waiting: a newer one takes the place of the one that waits, and calls off the one
 * under way unless that is past half, so that a long drag still shows something on its way.
 */
export function latestWins<Q, A>(ask: AskOne<Q, A>) {
  let waiting: Waiting<Q, A> | null = null;
  let running: { readonly calling: AbortController; share: number } | null = null;

  const start = async ({ question, progress, resolve, reject }: Waiting<Q, A>) => {
    const mine = { calling: new AbortController(), share: 0 };
    running = mine;
    try {
      resolve(
        await ask(question, {
          signal: mine.calling.signal,
          progress: (share, doing) => {
            mine.share = share;
            progress(share, doing);
          },
        }),
      );
    } catch (error) {
      reject(error);
    }
    running = null;
    const next = waiting;
    waiting = null;
    if (next) void start(next);
  };

  return {
    ask: (question: Q, progress: Progress): Promise<A> =>
      new Promise<A>((resolve, reject) => {
        const next = { question, progress, resolve, reject };
        if (!running) return void start(next);
        waiting?.reject(new CancelledError());
        waiting = next;
        if (running.share < 0.5) running.calling.abort();
      }),
    /** Calls off all, because the plan is another one or the main thread has answered. */
    callOff: () => {
      waiting?.reject(new CancelledError());
      waiting = null;
      running?.calling.abort();
    },
  };
}
