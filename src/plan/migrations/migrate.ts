import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { PLAN_VERSION } from '../plan.ts';
import { shown } from '../shapeFaults.ts';
import { isRecord, type Draft } from './draft.ts';
import { from0 } from './from0.ts';
import { from1 } from './from1.ts';
import { from2 } from './from2.ts';
import { from3 } from './from3.ts';

/** Entry n brings a file of version n to version n + 1. They take what they find: the schema judges the result. */
const steps: readonly ((draft: Draft) => Draft)[] = [from0, from1, from2, from3];

/** Brings a plan file of any past version to the present one. */
export function migrate(file: unknown): Outcome<Draft> {
  if (!isRecord(file))
    return refuse({
      code: 'value.type',
      path: [],
      given: shown(file),
      allowed: 'a record in curly brackets',
    });
  const { version } = file;
  if (version === undefined)
    return refuse({ code: 'plan.noVersion', path: ['version'], allowed: String(PLAN_VERSION) });
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0)
    return refuse({
      code: 'plan.version',
      path: ['version'],
      given: shown(version),
      allowed: String(PLAN_VERSION),
    });
  if (version > PLAN_VERSION)
    return refuse({ code: 'plan.newer', path: ['version'], given: version, allowed: String(PLAN_VERSION) });
  return accept(steps.slice(version).reduce((draft, step) => step(draft), file));
}
