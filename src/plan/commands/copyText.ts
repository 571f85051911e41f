import { accept, refuse, type Outcome } from '../../base/fault.ts';
import type { Vec2 } from '../../base/vector.ts';
import { bundleOf } from '../bundle/bundle.ts';
import { putIn } from '../bundle/putIn.ts';
import type { Plan } from '../plan.ts';
import { planFrom } from '../read.ts';
import { id, vec3 } from '../schemaParts.ts';
import { shapeFaults } from '../shapeFaults.ts';
import { z } from '../zod.ts';
import { sound } from './admitted.ts';
import type { Copied } from './copyThings.ts';
import type { Movable } from './thing.ts';

/** By this a text on the clipboard is known as ours. */
const MARK = 'soffit things';

/** The plan within is read like any plan file, so that a tab with an older version can be copied from. */
const clip = z.strictObject({ mark: z.literal(MARK), eyes: z.record(id, vec3), plan: z.unknown() });

/**
 * Things as text for the clipboard, to be pasted into this plan or another, in this tab or another.
 * @throws RangeError where the plan has no such thing
 */
export function copyText(plan: Plan, things: readonly Movable[]): string {
  const { plan: only, eyes } = bundleOf(plan, things);
  return JSON.stringify({ mark: MARK, eyes, plan: only });
}

/** Whether a text on the clipboard may be ours; `pasteText` tells for certain. */
export const isCopyText = (text: string): boolean => text.startsWith(`{"mark":"${MARK}"`);

/**
 * Pastes what `copyText` wrote, moved so far, m. Everything gets free ids and names; a camera whose structure was not copied
 * is loose where it was.
 * @returns refused where the text is something else, or was cut or changed; notes on what was left out
 */
export function pasteText(plan: Plan, text: string, by: Vec2 = [0, 0]): Outcome<Copied> {
  const parsed = isCopyText(text) ? fromJson(text) : undefined;
  if (parsed === undefined) return refuse({ code: 'clip.other', path: [] });
  const shape = clip.safeParse(parsed);
  if (!shape.success) return refuse(...shapeFaults(shape.error.issues, parsed));
  const read = planFrom(shape.data.plan);
  if (!read.ok) return read;
  const put = putIn(plan, { plan: read.value, eyes: shape.data.eyes }, by);
  const checked = sound(plan, put.plan);
  return checked.ok ? accept({ plan: checked.value, things: put.things }, put.notes) : checked;
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
