import { vec2 } from '../plan/schemaParts.ts';
import { z } from '../plan/zod.ts';
import type { Editor } from './editor.ts';
import type { Shelf } from './shelf.ts';
import type { OpenChain } from './tools/drawing/openChain.ts';

/** More corners than anybody draws by hand. */
const MOST = 2000;

const chain = z.strictObject({
  tool: z.enum(['outline', 'line', 'posts', 'boundary']),
  kind: z.string().max(40),
  corners: z.array(vec2).min(1).max(MOST),
  axes: z.strictObject({ up: z.number().min(-45).max(45), of: z.string().max(200).nullable() }),
  typed: z.boolean(),
});

/** A draft out of whatever the shelf held; null where it is none. */
export function draftFrom(held: unknown): OpenChain | null {
  if (typeof held !== 'string') return null;
  try {
    return chain.safeParse(JSON.parse(held)).data ?? null;
  } catch {
    return null;
  }
}

/**
 * Keeps the corners that are drawn as each is put, so that neither a reload nor a killed tab loses them; where they are
 * finished or dropped the draft goes. That of a plan which makes way for another stays until that plan is opened again.
 */
export function keepDraft({ store, hold }: Editor, shelf: Shelf): () => void {
  return store.subscribe((state, before) => {
    if (state.readOnly) {
      // The tab that edits the plan has the draft in hand.
      if (!before.readOnly && state.chain) hold('rest');
      return;
    }
    if (state.chain === before.chain || state.plan.id !== before.plan.id) return;
    const text = state.chain === null ? null : JSON.stringify(state.chain);
    // What cannot be kept is in hand all the same; that nothing is kept here the bar says with the next step.
    shelf.putDraft(state.plan.id, text).catch(() => undefined);
  });
}

/** Brings what was being drawn in the open plan back to hand, where the device has kept it. */
export async function takeUpDraft(editor: Editor, shelf: Shelf): Promise<void> {
  const { id } = editor.store.getState().plan;
  const draft = draftFrom(await shelf.draft(id).catch(() => null));
  const { plan, tool, readOnly } = editor.store.getState();
  // Meanwhile another plan may have been opened, or something else been begun.
  if (draft === null || plan.id !== id || tool !== 'rest' || readOnly) return;
  editor.takeUp(draft);
  const count = draft.corners.length;
  editor.say(`Your ${nameOf(draft)} of ${count === 1 ? 'one corner' : `${count} corners`} is back in hand.`);
}

function nameOf({ tool, kind }: OpenChain): string {
  if (tool === 'line') return kind;
  if (tool === 'posts') return 'row of posts';
  return tool === 'boundary' ? 'site boundary' : 'outline';
}
