import { faultText } from '../../../plan/faultText.ts';
import type { Selected } from '../../editor.ts';
import { nameOfSelected, thingOf } from '../../recordsOf.ts';
import { expanded } from '../../shaping/selection.ts';
import type { ToolState } from '../chart.ts';
import { resting } from '../rest/resting.ts';
import type { Drawing, Drawn } from './drawSpec.ts';
import { lastSize } from './lastSizes.ts';
import { raising } from './raising.ts';

/** Puts what was drawn into the plan, one step, selects it, and goes on to its height or to what is asked of it. */
export function finish(drawing: Drawing, drawn: Drawn, stay: (trouble: string) => ToolState): ToolState {
  const { editor, spec, kind } = drawing;
  const { plan } = editor.store.getState();
  const height = lastSize(editor, kind.key, kind.raise?.first ?? 0);
  const outcome = kind.make(plan, drawn, height);
  if (!outcome.ok) return stay(outcome.faults.map(faultText).join(' '));
  const made = outcome.value;
  editor.run(`Draw ${nameOfSelected(made.plan, made.thing) ?? kind.label}`, () => made.plan);
  // A plan that only reads takes nothing; the editor has said so.
  if (editor.store.getState().plan !== made.plan) return drawing.armed();
  if (made.thing.kind === 'group') editor.selectAll(expanded(made.plan, [made.thing]));
  else editor.select(made.thing);
  const ask = (): ToolState =>
    isThere(drawing, made.thing) ? spec.ask(editor, made.thing, drawn) : resting(editor);
  return spec.raises && kind.raise ? raising(drawing, made.thing, kind.raise, drawn, ask) : ask();
}

const isThere = ({ editor }: Drawing, thing: Selected): boolean =>
  thingOf(editor.store.getState().plan, thing) !== undefined;
