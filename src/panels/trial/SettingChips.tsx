import { useStore } from 'zustand';
import type { Editor } from '../../editor/editor.ts';
import { letterOf, MOST_VARIANTS, rightOf, variantsIn, type TrialStore } from '../../editor/trial/trial.ts';
import { addVariant, dropVariant, type Differs } from '../../editor/trial/trialActs.ts';
import { Button } from '../../fittings/Button.tsx';
import { Select } from '../../fittings/Select.tsx';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import styles from './trialSheet.module.css';

interface SettingChipsProps {
  readonly editor: Editor;
  readonly trial: TrialStore;
  readonly plan: Plan;
  readonly camera: PlanCamera;
}

const WAYS: readonly (readonly [Differs, string])[] = [
  ['lens', 'Another lens'],
  ['height', 'Another height'],
  ['tilt', 'Another tilt'],
  ['nothing', 'A copy to change'],
];

/** The settings by their letters: which is in hand, which stands right of the divider, and how to try one more. */
export function SettingChips({ editor, trial, camera }: SettingChipsProps) {
  const state = useStore(trial);
  const variants = variantsIn(state);
  const right = rightOf(state);
  const choose = (id: string | null) => trial.setState({ chosen: id, ...(id === null ? {} : { right: id }) });
  return (
    <div className={styles.chips}>
      {variants.length > 0 && (
        <div className={styles.letters} role="group" aria-label="Setting in hand">
          <Button pressed={state.chosen === null} press={() => choose(null)}>
            A <span className={styles.small}>as it stands</span>
          </Button>
          {variants.map(({ id }) => (
            <Button key={id} pressed={state.chosen === id} press={() => choose(id)}>
              {letterOf(id)}
            </Button>
          ))}
        </div>
      )}
      {variants.length > 1 && (
        <Select
          label="Right of the divider"
          viewing
          value={right ?? ''}
          choices={variants.map(({ id }) => ({ value: id, label: letterOf(id) }))}
          set={(id) => trial.setState({ right: id })}
        />
      )}
      {variants.length === 0 && (
        <p className={styles.hint}>
          A is how {camera.name} stands. Try something else beside it: nothing changes until you keep it.
        </p>
      )}
      <div className={styles.acts} role="group" aria-label="Try one more setting">
        {variants.length < MOST_VARIANTS &&
          WAYS.map(([differs, label]) => (
            <Button key={differs} press={() => addVariant(editor, trial, camera, differs)}>
              {label}
            </Button>
          ))}
        {state.chosen !== null && (
          <Button look="quiet" press={() => state.chosen !== null && dropVariant(trial, state.chosen)}>
            Put {letterOf(state.chosen)} away
          </Button>
        )}
      </div>
    </div>
  );
}
