import { bowEdge } from '../../../plan/commands/bowEdge.ts';
import type { Editor, Selected } from '../../editor.ts';
import { attempt } from '../../shaping/attempt.ts';
import type { Strip, ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { typedLength } from '../typing/typedNumber.ts';
import { edgeAt } from './acting.ts';

/** An edge is to be bent: its rise is typed, outwards positive. Null where no edge is pointed at. */
export function bowing(
  editor: Editor,
  thing: Selected,
  at: Pointed | null,
  rest: () => ToolState,
): ToolState | null {
  const edge = edgeAt(editor, thing, at);
  if (!edge) {
    editor.say('Point at an edge of what is selected.');
    return null;
  }
  const { plan } = editor.store.getState();
  const strip: Strip = {
    text: `Bow of edge ${edge.index + 1} of ${edge.name}: how far its middle stands out`,
    fields: [{ key: 'rise', label: 'Rise', value: 0, measure: 'length' }],
    trouble: false,
  };
  return {
    ...rest(),
    name: 'rest bowing',
    strip,
    takesDigits: true,
    typed: (_, text) => {
      const read = typedLength(text, plan.settings.units);
      if (!read.ok) return read;
      const tried = attempt(plan, (now) => bowEdge(now, edge.id, edge.index, read.value));
      if (!tried.ok) return { ok: false, trouble: tried.words };
      editor.run(`Bow edge ${edge.index + 1} of ${edge.name}`, () => tried.plan);
      return { ok: true, state: rest() };
    },
    enter: rest,
    escape: rest,
  };
}
