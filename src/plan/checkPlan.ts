import { accept, type Fault, type Outcome } from '../base/fault.ts';
import type { Plan } from './plan.ts';
import { referenceFindings } from './references.ts';
import { planSchema } from './schema.ts';
import { shapeFaults } from './shapeFaults.ts';

/** More faults than this say nothing new about one file. */
const GREATEST_FAULTS = 200;

/**
 * A value from outside (a file, the browser's storage, another thread) as a plan of the present version.
 * @returns the plan, with notes on what was left out or stands loose; or all that is wrong with it
 * Keys that a plan does not have are dropped with a note; anything else that is amiss refuses the whole. Whether what
 * it draws can be built is not asked: what the person has made always opens again, and the scene says what is amiss.
 */
export function checkPlan(value: unknown): Outcome<Plan> {
  const first = planSchema.safeParse(value);
  const parsed = first.success ? first : planSchema.safeParse(withoutExtras(value, first.error.issues));
  if (!parsed.success) return refusing(shapeFaults(parsed.error.issues, value));
  const extras = first.success ? [] : shapeFaults(first.error.issues, value);
  const plan: Plan = parsed.data;
  const { faults, notes } = referenceFindings(plan);
  return faults.length > 0 ? refusing(faults) : accept(plan, [...extras, ...notes]);
}

const refusing = (faults: readonly Fault[]): Outcome<Plan> => ({
  ok: false,
  faults: faults.slice(0, GREATEST_FAULTS),
});

type Issues = NonNullable<ReturnType<typeof planSchema.safeParse>['error']>['issues'];

/** A copy without the keys that the schema does not know. */
function withoutExtras(value: unknown, issues: Issues): unknown {
  const extras = new Set<string>();
  for (const issue of issues)
    if (issue.code === 'unrecognized_keys')
      for (const key of issue.keys) extras.add(JSON.stringify([...issue.path, key]));
  if (extras.size === 0) return value;
  const copy = (part: unknown, path: readonly (string | number)[]): unknown => {
    if (Array.isArray(part)) return part.map((item: unknown, index) => copy(item, [...path, index]));
    if (typeof part !== 'object' || part === null) return part;
    return Object.fromEntries(
      Object.entries(part).flatMap(([key, inner]: [string, unknown]) => {
        const at = [...path, key];
        return extras.has(JSON.stringify(at)) ? [] : [[key, copy(inner, at)]];
      }),
    );
  };
  return copy(value, []);
}
