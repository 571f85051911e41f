import { Worker } from 'node:worker_threads';

/** @typedef {{ end: 'answer', result: unknown } | { end: 'failed' | 'time' | 'memory', words: string }} Reply */

const MOST_MEMORY = 1.5 * 2 ** 30;
const OFTEN = 100;
/** Modules of Node's `vm` are never all let go of. */
const RUNS_A_THREAD = 150;

/**
 * A thread that answers one order at a time and is put an end to where it loops for ever or takes all memory. Time is what
 * the process spent, not what the clock shows, so that a busy machine breaks nothing.
 * @param {unknown} workerData
 */
export const threadFor = (workerData) => {
  /** @type {Worker | null} */
  let worker = null;
  let runs = 0;

  const fresh = () => {
    runs = 0;
    return new Worker(new URL('./worker.mjs', import.meta.url), {
      workerData,
      execArgv: ['--experimental-vm-modules', '--no-warnings'],
      resourceLimits: { maxOldGenerationSizeMb: 1024 },
    });
  };
  const end = async () => {
    await worker?.terminate();
    worker = null;
  };

  /** @param {unknown} order @param {number} most  milliseconds of work @returns {Promise<Reply>} */
  const ask = async (order, most) => {
    if (runs >= RUNS_A_THREAD) await end();
    runs += 1;
    const asked = (worker ??= fresh());
    const before = process.cpuUsage();
    /** @type {Reply} */
    const reply = await new Promise((resolve) => {
      const watching = setInterval(() => {
        const { user, system } = process.cpuUsage(before);
        if ((user + system) / 1000 > most) done({ end: 'time', words: `more than ${most.toFixed(0)} ms` });
        else if (process.memoryUsage.rss() > MOST_MEMORY) done({ end: 'memory', words: 'too much memory' });
      }, OFTEN);
      /** @param {Reply} reply */
      const done = (reply) => {
        clearInterval(watching);
        // Not all at once: a thread has listeners of its own.
        for (const event of ['message', 'error', 'exit']) asked.removeAllListeners(event);
        resolve(reply);
      };
      asked.once('message', (/** @type {{ result: unknown } | { failed: string }} */ message) =>
        done(
          'failed' in message
            ? { end: 'failed', words: message.failed }
            : { end: 'answer', result: message.result },
        ),
      );
      asked.once('error', (error) => done({ end: 'memory', words: error.message }));
      asked.once('exit', () => done({ end: 'memory', words: 'the thread ended' }));
      asked.postMessage(order);
    });
    if (reply.end === 'time' || reply.end === 'memory') await end();
    return reply;
  };
  return { ask, end };
};
