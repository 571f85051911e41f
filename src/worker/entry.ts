import { createSession } from '../assess/session.ts';
import { exactSite } from '../assess/together.ts';
import { openFile } from '../exchange/openFile.ts';
import type { Plan } from '../plan/plan.ts';
import { graft } from './graft.ts';
import { serve } from './host.ts';
import type { Steps } from './host.ts';
import type { Ask } from './messages.ts';
import { portOf } from './port.ts';
import { copied, sendableFound, type Sendable } from './sendable.ts';

const session = createSession();
let former: Plan | null = null;

function* work(ask: Ask): Steps<Sendable> {
  if (ask.job === 'site') {
    yield { share: 0, doing: 'Putting cameras together' };
    return copied(exactSite(ask.question));
  }
  if (ask.job === 'cover') {
    const { plan, question, wanted, laid } = ask.question;
    // A plan comes across as a copy; what did not change is given its former identity, by which the session knows it.
    former = graft(former, plan);
    return sendableFound(yield* session.cover(former, question, wanted, laid));
  }
  const { name, bytes } = ask.question;
  return copied(yield* openFile(name, bytes));
}

serve(portOf(self), work);
