import { CloudSun, Moon } from 'lucide-react';
import { useStore } from 'zustand';
import { remove, rename } from '../editor/acts.ts';
import type { Editor } from '../editor/editor.ts';
import { changeConditions, leavesOf } from '../editor/settings/conditions.ts';
import { Button } from '../fittings/Button.tsx';
import { Check } from '../fittings/Check.tsx';
import { Select } from '../fittings/Select.tsx';
import { TextField } from '../fittings/TextField.tsx';
import type { Leaf } from '../model/structure.ts';
import type { Plan, Situation } from '../plan/plan.ts';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './sheet.module.css';

interface SituationSheetProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly situation: Situation;
}

const TREES = { drawn: null, leaf: true, bare: false } as const;
type Trees = keyof typeof TREES;

/** The setting sheet of conditions: what of the site is another way than it is drawn. */
export function SituationSheet({ editor, plan, situation }: SituationSheetProps) {
  const { id, name, night, treesInLeaf } = situation;
  const judged = useStore(editor.store, (state) => state.situation === id);
  const thing = { kind: 'situation', id } as const;
  const sign = night ? <Moon size={16} /> : <CloudSun size={16} />;
  return (
    <>
      <SheetHead sign={sign} title={name} kind="Setting sheet" />
      <Group title="Conditions">
        <TextField label="Name" value={name} most={120} set={(next) => rename(editor, thing, next)} />
        <Select
          label="Light"
          value={night ? 'night' : 'day'}
          choices={[
            { value: 'day', label: 'day' },
            { value: 'night', label: 'night' },
          ]}
          set={(light) => changeConditions(editor, situation, { night: light === 'night' })}
        />
        <Select<Trees>
          label="Trees and hedges"
          value={treesInLeaf === null ? 'drawn' : treesInLeaf ? 'leaf' : 'bare'}
          choices={[
            { value: 'drawn', label: 'as drawn' },
            { value: 'leaf', label: 'in leaf' },
            { value: 'bare', label: 'bare' },
          ]}
          set={(trees) => changeConditions(editor, situation, { treesInLeaf: TREES[trees] })}
        />
        <div className={styles.acts}>
          <Button pressed={judged} press={() => editor.askIn(judged ? null : id)}>
            Judge in these
          </Button>
          <Button press={() => remove(editor, thing, {})}>Delete</Button>
        </div>
        {night && (
          <p className={styles.note}>
            At night a place counts only where the camera’s own infrared or a lamp lights it.
          </p>
        )}
      </Group>
      <Away editor={editor} plan={plan} situation={situation} />
      <Leaves editor={editor} plan={plan} situation={situation} />
    </>
  );
}

/** A town has more structures than a list of boxes can hold; the rest are sent away in their own sheets. */
const MOST = 60;

function Away({ editor, plan, situation }: SituationSheetProps) {
  const all = plan.structureOrder.flatMap((id) => plan.structures[id] ?? []);
  const first = (id: string, kind: string) => situation.away.includes(id) || kind === 'vehicle';
  const listed = [
    ...all.filter(({ id, kind }) => first(id, kind)),
    ...all.filter(({ id, kind }) => !first(id, kind)),
  ];
  // Ticking a box must not move it from under the finger.
  const shown = all.length > MOST ? listed.slice(0, MOST) : all;
  if (all.length === 0) return null;
  return (
    <Group title="Away">
      {shown.map(({ id, name }) => (
        <Check
          key={id}
          label={name}
          checked={situation.away.includes(id)}
          set={(gone) => changeConditions(editor, situation, { away: { structure: id, gone } })}
        />
      ))}
      {shown.length < all.length && (
        <p className={styles.note}>
          {all.length - shown.length} more: select one, then press “Away in {situation.name}” in its sheet.
        </p>
      )}
    </Group>
  );
}

function Leaves({ editor, plan, situation }: SituationSheetProps) {
  const choices = leavesOf(plan);
  if (choices.length === 0) return null;
  return (
    <Group title="Doors, windows and gates">
      {choices.map(({ opening, label, drawn }) => {
        const stands = situation.leaves[opening] ?? null;
        return (
          <Select<Leaf | 'drawn'>
            key={opening}
            label={label}
            value={stands ?? 'drawn'}
            choices={[
              { value: 'drawn', label: `as drawn, ${drawn}` },
              { value: 'closed', label: 'closed' },
              { value: 'open', label: 'open' },
              { value: 'glazed', label: 'glazed' },
            ]}
            set={(leaf) =>
              changeConditions(editor, situation, {
                leaf: { opening, stands: leaf === 'drawn' ? null : leaf },
              })
            }
          />
        );
      })}
    </Group>
  );
}
