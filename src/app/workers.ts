import { createClient, type Client } from '../worker/client.ts';
import { portOf } from '../worker/port.ts';

interface Hired {
  readonly client: Client;
  /** Ends the worker at once, whatever it is doing. */
  dismiss(): void;
}

/** Hires a worker, for a file, which can be ended even while it parses, or for the pool that assesses. */
export function hireWorker(): Hired {
  const worker = new Worker(new URL('../worker/entry.ts', import.meta.url), { type: 'module' });
  const client = createClient(portOf(worker));
  worker.addEventListener('error', ({ message }) => client.lost(message || 'the worker stopped'));
  worker.addEventListener('messageerror', () => client.lost('a message could not be read'));
  return { client, dismiss: () => worker.terminate() };
}

/** More workers than this would hold the plan, its solids and their tree more often than they save time. */
const MOST = 4;

/** How many workers assess: one core is left to the window. @param cores undefined where the browser does not tell */
export const poolSize = (cores: number | undefined): number =>
  Math.max(1, Math.min(MOST, (cores ?? MOST) - 1));
