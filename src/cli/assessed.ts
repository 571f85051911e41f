import type { Assessment } from '../assess/assessment.ts';
import { createSession, runSteps } from '../assess/session.ts';
import type { Target } from '../coverage/target.ts';
import type { Plan } from '../plan/plan.ts';
import { tell } from './planFile.ts';
import { BadInput, type Terminal } from './terminal.ts';

/**
 * The assessment of a plan as the app works it out; what could not be made goes to the terminal.
 * @param alone     id of the one camera to count; undefined counts all that are not hidden
 * @param situation id of the situation of the plan; null: as drawn
 * @throws BadInput on a camera that the plan does not have or that is fixed to nothing
 */
export function assessed(
  plan: Plan,
  target: Target,
  alone: string | undefined,
  terminal: Terminal,
  situation: string | null = null,
): Assessment {
  if (alone !== undefined) checkCamera(plan, alone);
  const assessment = runSteps(
    createSession().steps(plan, { target, alone: alone ?? null, situation, causes: 'exact' }, 1),
  );
  tell(assessment.scene.faults, terminal);
  if (alone !== undefined && !assessment.scene.cameras.some(({ id }) => id === alone))
    throw new BadInput(`The camera “${alone}” is fixed to nothing and sees nothing. Fix it to a wall first.`);
  return assessment;
}

/** @throws BadInput on a camera that the plan does not have */
export function checkCamera(plan: Plan, id: string): void {
  if (!Object.hasOwn(plan.cameras, id))
    throw new BadInput(`The plan has no camera “${id}”. It has: ${plan.cameraOrder.join(', ') || 'none'}.`);
}
