import type { Editor, Selected } from '../../editor.ts';
import { groupOf } from '../../../plan/commands/addGroup.ts';
import { expanded, isLocked } from '../../shaping/selection.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Pointed } from '../pointed.ts';

/** What a click here would select. */
export function thingAt(editor: Editor, { camera, lamp, picture, struck }: Pointed): Selected | null {
  const { plan } = editor.store.getState();
  if (picture && Object.hasOwn(plan.pictures, picture)) return { kind: 'picture', id: picture };
  if (lamp !== null && Object.hasOwn(plan.lamps, lamp)) return { kind: 'lamp', id: lamp };
  const id = camera ?? struck?.structure ?? null;
  if (id === null) return null;
  if (Object.hasOwn(plan.cameras, id)) return { kind: 'camera', id };
  return Object.hasOwn(plan.structures, id) ? { kind: 'structure', id } : null;
}

/** Whether two say the same thing. */
export const isSameThing = (a: Selected | null, b: Selected | null): boolean =>
  a?.kind === b?.kind && (a && 'id' in a ? a.id : null) === (b && 'id' in b ? b.id : null);

/** A thing with the others of its group, itself last; alone where its group is selected already, or it has none. */
export function withItsGroup(
  plan: Plan,
  thing: Selected,
  selection: readonly Selected[],
): readonly Selected[] {
  const group = 'id' in thing ? groupOf(plan, thing.id) : null;
  if (group === null) return [thing];
  const members = expanded(plan, [{ kind: 'group', id: group.id }]);
  const isHeld = members.every((member) => selection.some((other) => isSameThing(other, member)));
  return isHeld ? [thing] : [...members.filter((member) => !isSameThing(member, thing)), thing];
}

/** The locked things of a selection say so; what is left may be changed. */
export function unlocked(editor: Editor, selection: readonly Selected[]): readonly Selected[] {
  const { plan } = editor.store.getState();
  const all = expanded(plan, selection);
  const locked = all.filter((thing) => isLocked(plan, thing));
  const [first] = locked;
  if (first) {
    const one =
      'id' in first
        ? (plan.structures[first.id] ?? plan.cameras[first.id] ?? plan.pictures[first.id])?.name
        : undefined;
    editor.say(
      locked.length === 1
        ? `${one ?? 'It'} is locked. L frees it.`
        : `${locked.length} things are locked. L frees them.`,
    );
  }
  return all.filter((thing) => !locked.includes(thing));
}
