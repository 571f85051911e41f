import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { conditionsOf } from '../editor/settings/conditions.ts';
import { Select } from '../fittings/Select.tsx';

const DRAWN = 'drawn';

/** In which conditions the plan is judged: as drawn, or as one of its situations has it. */
export function ConditionsChoice({ editor }: { editor: Editor }) {
  const situation = useStore(editor.store, (state) => state.situation);
  const plan = useStore(editor.store, (state) => state.plan);
  return (
    <Select
      label="Conditions"
      look="small"
      viewing
      value={situation ?? DRAWN}
      choices={[
        { value: DRAWN, label: 'As drawn' },
        ...conditionsOf(plan).map(({ id, name }) => ({ value: id, label: name })),
      ]}
      set={(value) => editor.askIn(value === DRAWN ? null : value)}
    />
  );
}
