import { readFileSync } from 'node:fs';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import { NO_LIMITS } from '../../src/optics/mount.ts';

/** An empty yard with one camera on a post. */
export function yard(id = 'yard'): Plan {
  const plan = emptyPlan(id, 'Yard');
  const mount = {
    kind: 'pole',
    at: [0, 0],
    height: 3,
    reach: 0.2,
    facing: 180,
    diameter: 0.1,
    limits: NO_LIMITS,
  } as const;
  return addCamera(plan, newCamera(plan, mount, { pan: 180, tilt: 20 }));
}

/** The sample that the app opens with. */
export function demo(): Plan {
  const read = readPlan(readFileSync(new URL('../../shared/plans/demo.plan.json', import.meta.url), 'utf8'));
  if (!read.ok) throw new Error('the sample cannot be read');
  return read.value;
}
