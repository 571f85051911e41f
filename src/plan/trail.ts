import type { Change } from './changes.ts';
import type { StepMade } from './history.ts';
import { planSchema } from './schema.ts';
import { z } from './zod.ts';

const change = z.strictObject({
  field: z.keyof(planSchema),
  record: z.string().nullable(),
  // Written as text, a side that was nothing is not there.
  before: z.unknown().optional(),
  after: z.unknown().optional(),
});

const step = z.strictObject({ name: z.string(), changes: z.array(change) });

/**
 * A step of history out of whatever a device kept: each side of each change must be what the plan's schema takes there.
 * @returns null where it is none; whoever asked then goes on without the steps up to it
 */
export function stepFrom(held: unknown): StepMade | null {
  const read = step.safeParse(held);
  if (!read.success) return null;
  const changes: Change[] = [];
  for (const { field, record, before, after } of read.data.changes) {
    const schema = schemaOf(field, record);
    const sides = [before, after].map((side) =>
      side === undefined && record !== null ? undefined : (schema?.safeParse(side) ?? null),
    );
    const [was, is] = sides;
    if (was === null || is === null || was?.success === false || is?.success === false) return null;
    changes.push({ field, record, before: was?.data, after: is?.data });
  }
  return { name: read.data.name, changes };
}

/** What the plan's schema takes in a field, or in one record of a field that holds records. */
function schemaOf(field: keyof typeof planSchema.shape, record: string | null): z.ZodType | null {
  const whole = planSchema.shape[field];
  if (record === null) return whole;
  return whole instanceof z.ZodRecord && whole.valueType instanceof z.ZodType ? whole.valueType : null;
}
