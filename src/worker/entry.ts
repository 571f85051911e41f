import { createSession } from '../assess/session.ts';
import { exactSite } from '../assess/together.ts';
import type { Plan } from '../plan/plan.ts';
import { graft } from './graft.ts';
import { serve } from './host.ts';
import type { Steps } from './host.ts';
import type { Ask, Jobs } from './messages.ts';
import { portOf } from './port.ts';
import { copied, sendableFound, type Sendable } from './sendable.ts';

const session = createSession();
let former: Plan | null = null;

function* site(question: Jobs['site']['question']): Steps<Sendable> {
  yield { share: 0, doing: 'Putting cameras together' };
  return copied(exactSite(question));
}

function* cover({ plan, question, wanted, laid }: Jobs['cover']['question']): Steps<Sendable> {
  // A plan comes across as a copy; what did not change is given its former identity, by which the session knows it.
  former = graft(former, plan);
  return sendableFound(yield* session.cover(former, question, wanted, laid));
}

/** What compares settings is not fetched before some are compared. */
async function trial(question: Jobs['trial']['question']): Promise<Steps<Sendable>> {
  const { changeOf } = await import('../assess/trial/change.ts');
  return (function* (): Steps<Sendable> {
    yield { share: 0, doing: 'Comparing settings' };
    return copied(changeOf(question));
  })();
}

/** Importers and the schema of plans are not fetched before a file is opened. */
async function opened({ name, bytes }: Jobs['openFile']['question']): Promise<Steps<Sendable>> {
  const { openFile } = await import('../exchange/openFile.ts');
  return (function* (): Steps<Sendable> {
    return copied(yield* openFile(name, bytes));
  })();
}

function work(ask: Ask): Steps<Sendable> | Promise<Steps<Sendable>> {
  if (ask.job === 'site') return site(ask.question);
  if (ask.job === 'trial') return trial(ask.question);
  return ask.job === 'cover' ? cover(ask.question) : opened(ask.question);
}

serve(portOf(self), work);
