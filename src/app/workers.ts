import address from 'virtual:worker';
import { createClient, type Client } from '../worker/client.ts';
import { portOf } from '../worker/port.ts';

interface Hired {
  readonly client: Client;
  /** Ends the worker at once, whatever it is doing. */
  dismiss(): void;
}

/** Hires a worker, for a file, which can be ended even while it parses, or for the pool that assesses. */
export function hireWorker(): Hired {
  const worker = new Worker(address, { type: 'module' });
  const client = createClient(portOf(worker));
  worker.addEventListener('error', ({ message }) => client.lost(message || 'the worker stopped'));
  worker.addEventListener('messageerror', () => client.lost('a message could not be read'));
  return { client, dismiss: () => worker.terminate() };
}
