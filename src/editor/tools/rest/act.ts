import type { Editor } from '../../editor.ts';
import {
  deleteSelected,
  groupSelected,
  hideSelected,
  lockSelected,
  reorderSelected,
  showAll,
  ungroupSelected,
} from '../../selectionActs.ts';
import type { Act, ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { align, join, mirror, split, turnBySteps } from './acting.ts';
import { bowing } from './bowing.ts';
import { copying } from './copying.ts';
import { unlocked } from './thingAt.ts';

/** Does what a key or a menu asks with what is selected. */
export function act(editor: Editor, asked: Act, at: Pointed | null, rest: () => ToolState): ToolState {
  const { selection, selected, readOnly } = editor.store.getState();
  if (asked === 'show all') {
    showAll(editor);
    return rest();
  }
  if (!selected || readOnly) return rest();
  switch (asked) {
    case 'hide':
      hideSelected(editor, selection);
      return rest();
    case 'lock':
      lockSelected(editor, selection);
      return rest();
    case 'delete':
      deleteSelected(editor, selection);
      return rest();
    case 'copy':
      return copying(editor, selection, rest);
    case 'group':
      groupSelected(editor, selection);
      return rest();
    case 'ungroup':
      ungroupSelected(editor, selection);
      return rest();
    case 'forward':
    case 'back':
      reorderSelected(editor, selected, asked === 'back' ? 1 : -1);
      return rest();
    default:
      break;
  }
  const free = unlocked(editor, selection);
  if (free.length === 0) return rest();
  switch (asked) {
    case 'turn right':
      turnBySteps(editor, free, 1);
      break;
    case 'turn left':
      turnBySteps(editor, free, -1);
      break;
    case 'mirror':
      mirror(editor, free);
      break;
    case 'split':
      split(editor, selected, at);
      break;
    case 'join':
      join(editor, selected, at);
      break;
    case 'bow':
      return bowing(editor, selected, at, rest) ?? rest();
    default:
      align(editor, free, asked);
  }
  return rest();
}
