import { toWorker } from './messages.ts';
import type { Ask, FromWorker } from './messages.ts';
import type { Port } from './port.ts';
import type { Sendable } from './sendable.ts';

/** A job in steps, so that a cancel can come between them. */
export type Steps<T> = Generator<{ readonly share: number; readonly doing: string }, T, void>;

/** How long steps run before whatever waits at the door is heard, ms. */
const TURN = 8;

/**
 * Answers what is asked over a port, one question after another; a cancel overtakes the questions that wait.
 * @param work gives the steps of a job, at once or when what it takes is loaded
 */
export function serve(port: Port, work: (ask: Ask) => Steps<Sendable> | Promise<Steps<Sendable>>): void {
  const queue: { readonly id: number; readonly ask: Ask }[] = [];
  const calledOff = new Set<number>();
  let busy = false;
  let current = 0;

  const send = (message: FromWorker, transfer?: readonly Transferable[]) => port.send(message, transfer);

  const answer = async (id: number, ask: Ask) => {
    try {
      const steps = await work(ask);
      let since = performance.now();
      for (let step = steps.next(); ; step = steps.next()) {
        if (step.done) return send({ kind: 'done', id, answer: step.value.answer }, step.value.transfer);
        if (performance.now() - since < TURN) continue;
        send({ kind: 'progress', id, share: step.value.share, doing: step.value.doing });
        await turn();
        if (calledOff.has(id)) return send({ kind: 'cancelled', id });
        since = performance.now();
      }
    } catch (error) {
      send({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error) });
    }
  };

  const run = async () => {
    if (busy) return;
    busy = true;
    for (let next = queue.shift(); next; next = queue.shift()) {
      current = next.id;
      if (calledOff.has(next.id)) send({ kind: 'cancelled', id: next.id });
      else await answer(next.id, next.ask);
      calledOff.delete(next.id);
      current = 0;
      await turn();
    }
    busy = false;
  };

  port.hear((raw) => {
    const message = toWorker(raw);
    if (message.kind === 'cancel') {
      // A cancel that comes after its answer means nothing.
      if (message.id === current || queue.some(({ id }) => id === message.id)) calledOff.add(message.id);
      return;
    }
    queue.push(message);
    void run();
  });
}

/** Lets the messages that wait be heard. A timer would be held back to 4 ms. */
const turn = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
