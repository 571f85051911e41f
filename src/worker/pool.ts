import type { Assessment, Question } from '../assess/assessment.ts';
import { runSteps, type Session } from '../assess/session.ts';
import type { Found, Wanted } from '../assess/shares.ts';
import { CancelledError, type Progress } from '../base/progress.ts';
import type { Plan } from '../plan/plan.ts';
import { LostError, type AskOptions, type Client } from './client.ts';
import { createSharing } from './sharing.ts';

/** A question about a plan, and the revision that its answer belongs to. */
interface PoolAsked {
  readonly plan: Plan;
  readonly question: Question;
  readonly revision: number;
}

/** Works questions out in several workers. */
export interface Pool {
  /** Settles as an assessment, as a CancelledError, or with what went wrong. */
  assess(asked: PoolAsked, options?: AskOptions): Promise<Assessment>;
}

/** A worker at work. */
export interface Hired {
  readonly client: Pick<Client, 'cover' | 'site' | 'isBusy'>;
  /** Ends it at once, whatever it is doing. */
  dismiss(): void;
}

/**
 * Up to so many ms a plan is laid out here as well: then cameras that a change does not touch are carried over here, which
 * takes less than their arrays would on the way from the workers.
 */
const LAID_HERE = 25;

/**
 * A pool around the session of the window: the session tells what is not known, workers find it, the session takes it over
 * and puts it together. Workers are hired when they are first needed; one that dies is replaced and asked once more.
 */
export function createPool(session: Session, hire: () => Hired, workers: number): Pool {
  const hired = new Map<number, Hired>();
  const sharing = createSharing(workers);
  let former: Plan | null = null;

  const workerAt = (at: number): Hired => {
    const known = hired.get(at);
    if (known) return known;
    const made = hire();
    hired.set(at, made);
    return made;
  };

  /** Asks a worker; where it dies, the one that takes its place is asked again, once. */
  const ask = async <T>(at: number, job: (client: Hired['client']) => Promise<T>): Promise<T> => {
    for (let again = false; ; again = true) {
      const worker = workerAt(at);
      try {
        return await job(worker.client);
      } catch (error) {
        if (!(error instanceof LostError)) throw error;
        if (hired.get(at) === worker) {
          hired.delete(at);
          worker.dismiss();
        }
        if (again)
          throw new Error(`The part of the program that works coverage out stopped twice: ${error.message}.`);
      }
    }
  };

  const assess = async (asked: PoolAsked, options: AskOptions = {}): Promise<Assessment> => {
    const { plan, question, revision } = asked;
    const known = session.wanted(plan, question, LAID_HERE);
    const wanted: Wanted = known ?? { whole: plan.cameraOrder, causes: [] };
    const moved = movedSince(former, plan);
    former = plan;
    const shares = [...sharing.share(wanted, moved, (at) => hired.get(at)?.client.isBusy() ?? false)];
    if (known === null && shares.length === 0) shares.push([0, wanted]);
    const found = await together(shares, options, ([at, share], index, { signal, progress }) =>
      ask(at, (client) =>
        client.cover(
          { plan, question, wanted: share, laid: known === null && index === 0 },
          { signal, progress },
        ),
      ),
    );
    session.adopt(plan, question, found);
    const site = session.site(plan, question);
    if (site !== null) {
      const { signal } = options;
      session.adoptSite(site, await ask(0, (client) => client.site(site, signal ? { signal } : {})));
    }
    if (options.signal?.aborted) throw new CancelledError();
    return runSteps(session.steps(plan, question, revision));
  };

  return { assess };
}

/** The cameras that are not what they were in the former plan; none of a plan that was not asked about before. */
function movedSince(former: Plan | null, plan: Plan): ReadonlySet<string> {
  if (former === null || former.id !== plan.id) return new Set();
  return new Set(plan.cameraOrder.filter((id) => former.cameras[id] !== plan.cameras[id]));
}

type Share = readonly [worker: number, wanted: Wanted];

/** Runs the shares of a question at once: their progress adds up, and what goes wrong with one calls off the others. */
async function together(
  shares: readonly Share[],
  { progress, signal }: AskOptions,
  run: (share: Share, index: number, options: { signal: AbortSignal; progress: Progress }) => Promise<Found>,
): Promise<readonly Found[]> {
  const calling = new AbortController();
  const callOff = () => calling.abort();
  if (signal?.aborted) throw new CancelledError();
  signal?.addEventListener('abort', callOff, { once: true });
  const sizes = shares.map(([, { whole, causes }]) => Math.max(1, whole.length + causes.length));
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const done = sizes.map(() => 0);
  let said = '';
  const at = (index: number, share: number, doing: string) => {
    said = doing;
    done[index] = Math.max(done[index] ?? 0, share * (sizes[index] ?? 0));
    progress?.(done.reduce((sum, one) => sum + one, 0) / total, doing);
  };
  try {
    return await Promise.all(
      shares.map(async (share, index) => {
        const found = await run(share, index, {
          signal: calling.signal,
          progress: (part, doing) => at(index, part, doing),
        });
        at(index, 1, said);
        return found;
      }),
    );
  } catch (error) {
    calling.abort();
    throw error;
  } finally {
    signal?.removeEventListener('abort', callOff);
  }
}
