import type { Structure } from '../../model/structure.ts';
import type { Geographic, Plan } from '../plan.ts';
import { freshId, takenIds } from './freshId.ts';
import { mappedList } from './mapped.ts';

/** What an importer found: structures in the site frame about `origin`, and whom to credit. */
export interface Found {
  readonly structures: readonly Structure[];
  readonly origin: Geographic | null;
  readonly credits: readonly string[];
}

/**
 * Puts structures into a plan, last in order. An id that is taken is replaced by a free one. A plan that lies nowhere
 * yet takes their origin; one that has an origin keeps it, and they must have been made about that.
 */
export function addStructures(plan: Plan, found: Found): Plan {
  if (found.structures.length === 0) return plan;
  const taken = takenIds(plan);
  const claim = (id: string): string => {
    const free = taken.has(id) ? freshId(taken, `${id}-`) : id;
    taken.add(free);
    return free;
  };
  const renewed = <T extends { readonly id: string }>(parts: readonly T[]): readonly T[] =>
    mappedList(parts, (part) => {
      const id = claim(part.id);
      return id === part.id ? part : { ...part, id };
    });
  const added = found.structures.map((structure): Structure => {
    const id = claim(structure.id);
    const next = id === structure.id ? structure : { ...structure, id };
    if (next.kind !== 'building' && next.kind !== 'barrier') return next;
    const openings = renewed(next.openings);
    if (next.kind === 'barrier') return openings === next.openings ? next : { ...next, openings };
    const services = renewed(next.services);
    return openings === next.openings && services === next.services ? next : { ...next, openings, services };
  });
  const news = found.credits.filter((credit) => !plan.credits.includes(credit));
  return {
    ...plan,
    origin: plan.origin ?? found.origin,
    structures: {
      ...plan.structures,
      ...Object.fromEntries(added.map((structure) => [structure.id, structure])),
    },
    structureOrder: [...plan.structureOrder, ...added.map(({ id }) => id)],
    credits: news.length === 0 ? plan.credits : [...plan.credits, ...news],
  };
}
