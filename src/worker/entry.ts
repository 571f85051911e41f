import { createSession } from '../assess/session.ts';
import { openFile } from '../exchange/openFile.ts';
import type { Plan } from '../plan/plan.ts';
import { graft } from './graft.ts';
import { serve } from './host.ts';
import type { Steps } from './host.ts';
import type { Ask } from './messages.ts';
import { portOf } from './port.ts';

const session = createSession();
let former: Plan | null = null;

function* work(ask: Ask): Steps<unknown> {
  if (ask.job === 'assess') {
    const { plan, question, revision } = ask.question;
    // A plan comes across as a copy; what did not change is given its former identity, by which the session knows it.
    former = graft(former, plan);
    return yield* session.steps(former, question, revision);
  }
  const { name, bytes } = ask.question;
  return yield* openFile(name, bytes);
}

serve(portOf(self), work);
