import { NAME_LENGTH } from '../limits.ts';
import type { Plan } from '../plan.ts';
import { UNPRINTABLE } from '../schemaParts.ts';
import { markThing } from './markThing.ts';
import type { Thing } from './thing.ts';

/**
 * A name as the plan can hold it: one line, no control characters, blanks around it gone, cut to the longest length.
 * Empty where nothing is left; then there is no name to give.
 */
export const cleanName = (typed: string): string => {
  const line = typed.replace(new RegExp(UNPRINTABLE.source, 'gu'), ' ').trim();
  // Whole characters, not halves of a pair.
  let name = '';
  for (const character of line) {
    if (name.length + character.length > NAME_LENGTH) break;
    name += character;
  }
  return name.trim();
};

/** Renames a structure or a camera; an empty name changes nothing. */
export function renameThing(plan: Plan, thing: Thing, typed: string): Plan {
  const name = cleanName(typed);
  return name === '' ? plan : markThing(plan, thing, { name });
}

/** Renames the plan itself; an empty name changes nothing. */
export function renamePlan(plan: Plan, typed: string): Plan {
  const name = cleanName(typed);
  return name === '' || name === plan.name ? plan : { ...plan, name };
}
