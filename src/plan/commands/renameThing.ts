import { NAME_LENGTH } from '../limits.ts';
import type { Plan } from '../plan.ts';
import { UNPRINTABLE } from '../schemaParts.ts';
import { changed } from './changed.ts';
import { markThing } from './markThing.ts';
import { setLamp } from './setLamp.ts';
import { setPatch } from './setPatch.ts';
import { setSituation } from './setSituation.ts';
import type { Thing } from './thing.ts';
import { withRecord } from './withRecord.ts';

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

/**
 * Renames a thing of any kind; an empty name changes nothing.
 * @throws RangeError where the plan has no such thing
 */
export function renameThing(plan: Plan, { kind, id }: Thing, typed: string): Plan {
  const name = cleanName(typed);
  if (name === '') return plan;
  switch (kind) {
    case 'situation':
      return setSituation(plan, id, { name });
    case 'lamp':
      return setLamp(plan, id, { name });
    case 'patch':
      return setPatch(plan, id, { name });
    case 'group': {
      const groups = withRecord(plan.groups, id, 'group', (group) => changed(group, { name }));
      return groups === plan.groups ? plan : { ...plan, groups };
    }
    default:
      return markThing(plan, { kind, id }, { name });
  }
}

/** Renames the plan itself; an empty name changes nothing. */
export function renamePlan(plan: Plan, typed: string): Plan {
  const name = cleanName(typed);
  return name === '' || name === plan.name ? plan : { ...plan, name };
}
