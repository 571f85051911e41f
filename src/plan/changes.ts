import type { Plan } from './plan.ts';

/**
 * One place that differs between two plans: a field of the plan, or one record of a field that holds records.
 * `before` and `after` are the very objects of the two plans; undefined where there is no such record.
 */
export interface Change {
  readonly field: keyof Plan;
  readonly record: string | null;
  readonly before: unknown;
  readonly after: unknown;
}

const RECORDS = [
  'structures',
  'cameras',
  'patches',
  'lamps',
  'requirements',
  'situations',
  'groups',
  'pictures',
] as const satisfies readonly (keyof Plan)[];

type Records = Readonly<Record<string, unknown>>;

/** What differs, found by identity: what two plans share costs one comparison. */
export function changesBetween(before: Plan, after: Plan): readonly Change[] {
  const changes: Change[] = [];
  for (const field of Object.keys(after) as (keyof Plan)[]) {
    if (before[field] === after[field]) continue;
    const held = RECORDS.find((records) => records === field);
    if (held) changes.push(...recordChanges(held, before[held], after[held]));
    else changes.push({ field, record: null, before: before[field], after: after[field] });
  }
  return changes;
}

function recordChanges(field: (typeof RECORDS)[number], before: Records, after: Records): readonly Change[] {
  const changes: Change[] = [];
  for (const record of Object.keys(after)) {
    const was = Object.hasOwn(before, record) ? before[record] : undefined;
    if (was !== after[record]) changes.push({ field, record, before: was, after: after[record] });
  }
  for (const record of Object.keys(before))
    if (!Object.hasOwn(after, record))
      changes.push({ field, record, before: before[record], after: undefined });
  return changes;
}

/** A plan with the changes made (`after`) or taken back (`before`). What they do not touch stays the same object. */
export function withChanges(plan: Plan, changes: readonly Change[], side: 'before' | 'after'): Plan {
  const fields: Record<string, unknown> = {};
  const copied = new Map<keyof Plan, Record<string, unknown>>();
  for (const change of changes) {
    if (change.record === null) {
      fields[change.field] = change[side];
      continue;
    }
    const records = copied.get(change.field) ?? { ...(plan[change.field] as Records) };
    copied.set(change.field, records);
    if (change[side] === undefined) delete records[change.record];
    else records[change.record] = change[side];
  }
  for (const [field, records] of copied) fields[field] = records;
  return { ...plan, ...fields };
}
