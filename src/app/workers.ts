import { createClient } from '../worker/client.ts';
import type { Client } from '../worker/client.ts';
import { portOf } from '../worker/port.ts';

interface Hired {
  readonly client: Client;
  /** Ends the worker at once, whatever it is doing. */
  dismiss(): void;
}

function hire(): Hired {
  const worker = new Worker(new URL('../worker/entry.ts', import.meta.url), { type: 'module' });
  const client = createClient(portOf(worker));
  worker.addEventListener('error', ({ message }) => client.lost(message || 'the worker stopped'));
  worker.addEventListener('messageerror', () => client.lost('a message could not be read'));
  return { client, dismiss: () => worker.terminate() };
}

/** The worker that assesses: it remembers what it worked out, so there is one. */
export const hireAssessor = (): Client => hire().client;

/** A worker for one file, which can be ended even while it parses. */
export const hireReader = (): Hired => hire();
