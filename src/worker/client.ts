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

/** Asks a worker; every question settles: answered, cancelled, or failed with what the worker threw. */
export interface Client {
  assess(question: Jobs['assess']['question'], options?: AskOptions): Promise<Jobs['assess']['answer']>;
  openFile(question: Jobs['openFile']['question'], options?: AskOptions): Promise<Jobs['openFile']['answer']>;
  /** The worker is gone: whatever still waits fails with these words. */
  lost(why: string): void;
}

interface Waiting {
  readonly progress: Progress | undefined;
  done(answer: unknown): void;
  fail(error: Error): void;
}

export function createClient(port: Port): Client {
  const waiting = new Map<number, Waiting>();
  let last = 0;

  port.hear((raw) => {
    const message = fromWorker.parse(raw);
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
      send({ kind: 'ask', id, ask }, transfer);
    });

  return {
    assess: (question, options = {}) =>
      put({ job: 'assess', question }, (answer) => answers.assess.parse(answer), options),
    openFile: (question, options = {}) =>
      put({ job: 'openFile', question }, (answer) => answers.openFile.parse(answer), options),
    lost: (why) => {
      for (const asked of waiting.values()) asked.fail(new Error(why));
      waiting.clear();
    },
  };
}
