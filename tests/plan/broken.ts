import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { wholePlan } from './wholePlan.ts';

export const good = planText(wholePlan());

/** The plan's JSON with one place set anew; a key set to undefined goes. */
export const withAt = (path: readonly (string | number)[], value: unknown): string => {
  const root: unknown = JSON.parse(good);
  let holder = root;
  for (const key of path.slice(0, -1)) holder = Reflect.get(holder as object, key);
  const last = path.at(-1) ?? '';
  if (value === undefined) Reflect.deleteProperty(holder as object, last);
  else Reflect.set(holder as object, last, value);
  return JSON.stringify(root);
};

export const faultsOf = (text: string) => {
  const read = readPlan(text);
  if (read.ok) throw new Error('the plan was accepted');
  return read.faults;
};
