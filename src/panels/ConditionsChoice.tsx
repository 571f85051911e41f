import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { addNight } from '../editor/settings/conditions.ts';
import { Select } from '../fittings/Select.tsx';

/** Stands for conditions that the plan has not got yet. */
const NEW_NIGHT = '+night';
const DRAWN = 'drawn';

/** In which conditions the plan is judged: as drawn, or as one of its situations has it. */
export function ConditionsChoice({ editor }: { editor: Editor }) {
  const situation = useStore(editor.store, (state) => state.situation);
  const plan = useStore(editor.store, (state) => state.plan);
  const readOnly = useStore(editor.store, (state) => state.readOnly);
  const others = plan.situationOrder.flatMap((id) => {
    const one = plan.situations[id];
    const differs = one && (one.night || one.away.length > 0 || Object.keys(one.leaves).length > 0);
    return one && (differs || one.treesInLeaf !== null) ? [{ value: id, label: one.name }] : [];
  });
  const night = Object.values(plan.situations).some((one) => one.night);
  return (
    <Select
      label="Conditions"
      look="small"
      viewing
      value={situation ?? DRAWN}
      choices={[
        { value: DRAWN, label: 'As drawn' },
        ...others,
        ...(night || readOnly ? [] : [{ value: NEW_NIGHT, label: 'Night' }]),
      ]}
      set={(value) => {
        if (value === NEW_NIGHT) editor.askIn(addNight(editor));
        else editor.askIn(value === DRAWN ? null : value);
      }}
    />
  );
}
