import type { Plan } from '../plan/plan.ts';
import type { Selected } from './editor.ts';

type Kind = Exclude<Selected['kind'], 'boundary'>;

/** The records of the plan that hold things of a kind. */
export const recordsOf = (
  { structures, cameras, lamps, situations }: Plan,
  kind: Kind,
): Readonly<Record<string, { readonly name: string }>> =>
  ({ structure: structures, camera: cameras, lamp: lamps, situation: situations })[kind];

/** What a person calls the thing that is selected; undefined where the plan has no such thing. */
export const nameOfSelected = (plan: Plan, selected: Selected | null): string | undefined => {
  if (selected === null) return undefined;
  if (selected.kind === 'boundary') return 'Site boundary';
  const records = recordsOf(plan, selected.kind);
  return Object.hasOwn(records, selected.id) ? records[selected.id]?.name : undefined;
};
