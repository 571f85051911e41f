import { CancelledError } from '../base/progress.ts';
import type { Progress } from '../base/progress.ts';
import { answers, fromWorker } from './messages.ts';
import type { Ask, FromWorker, Jobs, ToWorker } from './messages.ts';
import type { Port } from './port.ts';

export interface AskOptions {
  readonly progress?: Progress;
  /** Aborting it calls the question off; it settles as a CancelledError at once. */
  readonly signal?: AbortSignal;
  readonly transfer?: readonly Transferable[];
}

/** The worker stopped while it worked, or before it could begin. */
export class LostError extends Error {
  override readonly name = 'LostError';
}

/** Asks a worker; every question settles: answered, cancelled, or failed with what the worker threw. */
export interface Client {
  cover(question: Jobs['cover']['question'], options?: AskOptions): Promise<Jobs['cover']['answer']>;
  site(question: Jobs['site']['question'], options?: AskOptions): Promise<Jobs['site']['answer']>;
  trial(question: Jobs['trial']['question'], options?: AskOptions): Promise<Jobs['trial']['answer']>;
  openFile(question: Jobs['openFile']['question'], options?: AskOptions): Promise<Jobs['openFile']['answer']>;
  /** The worker is gone: whatever still waits, and whatever is asked from now on, fails as a LostError with these words. */
  lost(why: string): void;
  /** Whether the worker still has something to do, be it only to leave off what was called off. */
  isBusy(): boolean;
}

interface Waiting {
  readonly progress: Progress | undefined;
  done(answer: unknown): void;
  fail(error: Error): void;
}

export function createClient(port: Port): Client {
  const waiting = new Map<number, Waiting>();
  const underWay = new Set<number>();
  let last = 0;
  let gone: string | null = null;

  port.hear((raw) => {
    const message = fromWorker(raw);
    if (message.kind !== 'progress') underWay.delete(message.id);
    const asked = waiting.get(message.id);
    // A reply to what was called off comes too late.
    if (asked) settle(message, asked);
  });

  const settle = (message: FromWorker, asked: Waiting) => {
    if (message.kind === 'progress') return asked.progress?.(message.share, message.doing);
    waiting.delete(message.id);
    if (message.kind === 'done') asked.done(message.answer);
    else asked.fail(message.kind === 'cancelled' ? new CancelledError() : new Error(message.message));
  };

  const send = (message: ToWorker, transfer?: readonly Transferable[]) => port.send(message, transfer);

  const put = <T>(ask: Ask, read: (answer: unknown) => T, options: AskOptions): Promise<T> =>
    new Promise<T>((resolve, reject) => {
      const { progress, signal, transfer } = options;
      if (signal?.aborted) return reject(new CancelledError());
      if (gone !== null) return reject(new LostError(gone));
      const id = (last += 1);
      const callOff = () => {
        if (!waiting.delete(id)) return;
        send({ kind: 'cancel', id });
        reject(new CancelledError());
      };
      signal?.addEventListener('abort', callOff, { once: true });
      const forget = () => signal?.removeEventListener('abort', callOff);
      waiting.set(id, {
        progress,
        done: (answer) => {
          forget();
          try {
            resolve(read(answer));
          } catch (error) {
            reject(error instanceof Error ? error : new Error(String(error)));
          }
        },
        fail: (error) => {
          forget();
          reject(error);
        },
      });
      underWay.add(id);
      send({ kind: 'ask', id, ask }, transfer);
    });

  return {
    cover: (question, options = {}) => put({ job: 'cover', question }, answers.cover, options),
    site: (question, options = {}) => put({ job: 'site', question }, answers.site, options),
    trial: (question, options = {}) => put({ job: 'trial', question }, answers.trial, options),
    openFile: (question, options = {}) => put({ job: 'openFile', question }, answers.openFile, options),
    lost: (why) => {
      gone = why;
      for (const asked of waiting.values()) asked.fail(new LostError(why));
      waiting.clear();
      underWay.clear();
    },
    isBusy: () => underWay.size > 0,
  };
}
