import type { Plan } from '../plan/plan.ts';
import type { Selected } from './editor.ts';

type Named = { readonly id: string; readonly name: string };

/** The thing of the plan that is selected; undefined where the plan has no such thing. */
export function thingOf(plan: Plan, selected: Selected): Named | undefined {
  switch (selected.kind) {
    case 'structure':
      return own(plan.structures, selected.id);
    case 'camera':
      return own(plan.cameras, selected.id);
    case 'lamp':
      return own(plan.lamps, selected.id);
    case 'situation':
      return own(plan.situations, selected.id);
    case 'patch':
      return own(plan.patches, selected.id);
    case 'picture':
      return own(plan.pictures, selected.id);
    case 'group':
      return own(plan.groups, selected.id);
    case 'service': {
      const host = own(plan.structures, selected.on);
      return host?.kind === 'building' ? host.services.find(({ id }) => id === selected.id) : undefined;
    }
    case 'opening': {
      const host = own(plan.structures, selected.on);
      return host && 'openings' in host ? host.openings.find(({ id }) => id === selected.id) : undefined;
    }
    case 'boundary':
      return plan.boundary ? { id: 'boundary', name: 'Site boundary' } : undefined;
    case 'ground':
      return { id: 'ground', name: 'Ground' };
  }
}

const own = <T>(records: Readonly<Record<string, T>>, id: string): T | undefined =>
  Object.hasOwn(records, id) ? records[id] : undefined;

/** What a person calls the thing that is selected; undefined where the plan has no such thing. */
export const nameOfSelected = (plan: Plan, selected: Selected | null): string | undefined =>
  selected === null ? undefined : thingOf(plan, selected)?.name;
