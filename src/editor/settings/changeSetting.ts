import type { Editor, Gesture } from '../editor.ts';
import { attempt, type Change } from '../shaping/attempt.ts';

/** One step of history, unless the change is refused: then the plan stays and the person is told why. */
export function tryStep(editor: Editor, name: string, change: Change, merge?: string): void {
  const tried = attempt(editor.store.getState().plan, change);
  if (tried.ok) editor.run(name, () => tried.plan, merge);
  else editor.say(tried.words);
}

/** A change within a drag: the last that fits stays. */
export const tryDrag = (gesture: Gesture, change: Change): void =>
  gesture.change((plan) => {
    const tried = attempt(plan, change);
    return tried.ok ? tried.plan : plan;
  });
