import { accept, refuse, type Fault, type Outcome } from '../../base/fault.ts';
import { changesBetween, type Change } from '../changes.ts';
import { boundaryFaults, patchFaults, structureFaults } from '../drawing.ts';
import type { Plan } from '../plan.ts';
import { fieldSchemas, recordSchemas } from '../schema.ts';
import { shapeFaults } from '../shapeFaults.ts';
import { groundFaults } from '../siteFaults.ts';
import type { z } from '../zod.ts';
import { drawnFault } from './editFault.ts';
import { misfits } from './misfits.ts';

/**
 * A changed plan, if a file could hold it: every record that differs has the shape of its schema, and every outline that
 * differs can be built. What could not be built before need not now. Where nothing differs, the very plan before. Cost: by what differs, not by the plan.
 */
export function sound(before: Plan, after: Plan): Outcome<Plan> {
  if (after === before) return accept(before);
  const changes = changesBetween(before, after);
  if (changes.length === 0) return accept(before);
  const shapes = changes.flatMap(schemaFaults);
  if (shapes.length > 0) return refuse(...shapes);
  const drawn = changes.flatMap(({ field, record }) => newDrawingFaults(before, after, field, record));
  return drawn.length > 0 ? refuse(...drawn.map(drawnFault)) : accept(after);
}

/**
 * A changed plan, if it is sound and everything fixed to what changed fits as it did: openings, points on walls and
 * cameras. What did not fit before need not now.
 */
export function admitted(before: Plan, after: Plan): Outcome<Plan> {
  const checked = sound(before, after);
  if (!checked.ok || after.structures === before.structures) return checked;
  const faults = misfits(before, after);
  return faults.length > 0 ? refuse(...faults) : checked;
}

function schemaFaults({ field, record, after }: Change): readonly Fault[] {
  if (after === undefined) return [];
  const path = record === null ? [field] : [field, record];
  const schema = (record === null ? ofFields : ofRecords)[field];
  const parsed = schema?.safeParse(after);
  const shape = !parsed || parsed.success ? [] : shapeFaults(parsed.error.issues, after);
  const subject = nameOf(after);
  return shape.map((fault) => ({ subject, ...fault, path: [...path, ...fault.path] }));
}

const nameOf = (record: unknown): string | undefined => {
  const name: unknown = typeof record === 'object' && record ? Reflect.get(record, 'name') : undefined;
  return typeof name === 'string' ? name : undefined;
};

type Schemas = Readonly<Partial<Record<keyof Plan, z.ZodType>>>;
const ofRecords: Schemas = recordSchemas;
const ofFields: Schemas = fieldSchemas;

function newDrawingFaults(
  before: Plan,
  after: Plan,
  field: keyof Plan,
  record: string | null,
): readonly Fault[] {
  const faultsIn = (plan: Plan): readonly Fault[] => {
    if (field === 'boundary') return plan.boundary ? boundaryFaults(plan.boundary) : [];
    if (field === 'ground') return groundFaults(plan.ground);
    if (record === null || (field !== 'structures' && field !== 'patches')) return [];
    if (!Object.hasOwn(plan[field], record)) return [];
    const structure = field === 'structures' ? plan.structures[record] : undefined;
    if (structure) return structureFaults(structure);
    const patch = field === 'patches' ? plan.patches[record] : undefined;
    return patch ? patchFaults(patch) : [];
  };
  const faults = faultsIn(after);
  return faults.length > 0 && faultsIn(before).length > 0 ? [] : faults;
}
