import type { Editor } from '../editor/editor.ts';
import { tryDrag, tryStep } from '../editor/settings/changeSetting.ts';
import type { Setting } from '../editor/settings/setting.ts';
import type { NumberEdit } from '../fittings/edit.ts';

/** What a field does with a setting of a thing called `subject`: steps of history named after both. */
export function editOf(editor: Editor, subject: string, { key, label, change }: Setting): NumberEdit {
  const name = `${label} of ${subject}`;
  return {
    set: (value) => tryStep(editor, name, (plan) => change(plan, value)),
    step: (value) => tryStep(editor, name, (plan) => change(plan, value), `${subject} ${key}`),
    drag: () => {
      const gesture = editor.begin(name);
      return {
        to: (value) => tryDrag(gesture, (plan) => change(plan, value)),
        commit: () => gesture.commit(),
        cancel: () => gesture.cancel(),
      };
    },
  };
}
