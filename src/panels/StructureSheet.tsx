import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import { hide, remove, rename } from '../editor/acts.ts';
import { lockSelected } from '../editor/selectionActs.ts';
import type { Editor } from '../editor/editor.ts';
import { changeConditions } from '../editor/settings/conditions.ts';
import { setInLeaf, setPassage, setRoofKind } from '../editor/settings/structureChoices.ts';
import { setGot, structureSettings } from '../editor/settings/structureSettings.ts';
import { Button } from '../fittings/Button.tsx';
import { Select } from '../fittings/Select.tsx';
import type { Choice } from '../fittings/Select.tsx';
import { TextField } from '../fittings/TextField.tsx';
import type { Passage } from '../model/passage.ts';
import type { Got, RoofKind, Structure } from '../model/structure.ts';
import { FacesGroup } from './FacesGroup.tsx';
import { Figure } from './Figure.tsx';
import { FloorsGroup } from './FloorsGroup.tsx';
import { GotSelect } from './GotSelect.tsx';
import { Group } from './Group.tsx';
import { SettingField } from './SettingField.tsx';
import { SheetHead } from './SheetHead.tsx';
import { StructureIcon } from './StructureIcon.tsx';
import { footprintText, kindWord } from './structureWords.ts';
import { WallPhotoGroup } from './WallPhotoGroup.tsx';
import type { PhotoActs } from './photoActs.ts';
import styles from './sheet.module.css';

const ROOFS: readonly Choice<RoofKind>[] = [
  { value: 'flat', label: 'Flat' },
  { value: 'parapet', label: 'Flat, parapet' },
  { value: 'monopitch', label: 'Mono-pitch' },
  { value: 'gable', label: 'Gable' },
  { value: 'hip', label: 'Hip' },
];

const PASSAGES: readonly Choice<Passage>[] = [
  { value: 'solid', label: 'Blocks the view' },
  { value: 'screen', label: 'Mesh or leaves' },
  { value: 'clear', label: 'Clear, as glass' },
];

interface StructureSheetProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly structure: Structure;
  readonly square: PhotoActs['square'];
}

/** The setting sheet of a structure: its sizes, each with how it was got. */
export function StructureSheet({ editor, answers, structure, square }: StructureSheetProps) {
  const { id, name } = structure;
  const thing = { kind: 'structure', id } as const;
  const outline = outlineGot(structure);
  return (
    <>
      <SheetHead sign={<StructureIcon structure={structure} />} title={name} kind="Setting sheet" />
      <Group title={kindWord(structure)}>
        <TextField label="Name" value={name} most={120} set={(next) => rename(editor, thing, next)} />
        <div className={styles.acts}>
          <Button pressed={structure.hidden} press={() => hide(editor, thing, !structure.hidden)}>
            Hide
          </Button>
          <Button pressed={structure.locked} press={() => lockSelected(editor, [thing])}>
            Locked
          </Button>
          <AwayButton editor={editor} id={id} />
          <Button
            press={() => {
              const cameras = answers.getState().assessment?.scene.cameras ?? [];
              remove(editor, thing, Object.fromEntries(cameras.map((camera) => [camera.id, camera.eye])));
            }}
          >
            Delete
          </Button>
        </div>
        {structure.hidden && <p className={styles.note}>Not drawn in the Model. It still blocks the view.</p>}
      </Group>
      <Group title="Size">
        <Figure
          label={structure.kind === 'barrier' ? 'Length and thickness' : 'Footprint'}
          value={footprintText(structure)}
          unit="m"
          beside={
            outline && (
              <GotChoice
                editor={editor}
                structure={structure}
                mark={outline.mark}
                what="outline"
                got={outline.got}
              />
            )
          }
        />
        {structure.kind === 'building' && (
          <Select
            label="Roof"
            value={structure.roof.kind}
            choices={ROOFS}
            set={(kind) => editor.run(`Roof of ${name}`, (plan) => setRoofKind(plan, id, kind))}
          />
        )}
        {structureSettings(structure).map((setting) => (
          <SettingField
            key={setting.key}
            editor={editor}
            subject={name}
            setting={setting}
            beside={
              setting.got && (
                <GotChoice
                  editor={editor}
                  structure={structure}
                  mark={setting.key}
                  what={setting.label.toLowerCase()}
                  got={setting.got}
                />
              )
            }
          />
        ))}
        {structure.kind === 'tree' && (
          <Select<'leaf' | 'bare'>
            label="Drawn"
            value={structure.inLeaf ? 'leaf' : 'bare'}
            choices={[
              { value: 'leaf', label: 'in leaf' },
              { value: 'bare', label: 'bare' },
            ]}
            set={(drawn) => setInLeaf(editor, structure, drawn === 'leaf')}
          />
        )}
        {'passage' in structure && (
          <Select
            label="View through it"
            value={structure.passage}
            choices={PASSAGES}
            set={(passage) => editor.run(`View through ${name}`, (plan) => setPassage(plan, id, passage))}
          />
        )}
        <p className={styles.note}>
          Measured is good to 0.05 m. Mapped: 0.5 m on the ground, 1.0 m in height. Guessed: a fifth.
        </p>
      </Group>
      {structure.kind === 'building' && <FloorsGroup editor={editor} building={structure} />}
      <FacesGroup editor={editor} structure={structure} />
      <WallPhotoGroup editor={editor} structure={structure} square={square} />
    </>
  );
}

/** Sends a structure away in the conditions that are judged. */
function AwayButton({ editor, id }: { editor: Editor; id: string }) {
  const situation = useStore(editor.store, (state) =>
    state.situation === null ? null : (state.plan.situations[state.situation] ?? null),
  );
  if (!situation) return null;
  const isAway = situation.away.includes(id);
  return (
    <Button
      pressed={isAway}
      press={() => changeConditions(editor, situation, { away: { structure: id, gone: !isAway } })}
    >
      Away in {situation.name}
    </Button>
  );
}

interface GotChoiceProps {
  readonly editor: Editor;
  readonly structure: Structure;
  readonly mark: string;
  readonly what: string;
  readonly got: Got;
}

/** How a size was got. */
function GotChoice({ editor, structure: { id, name }, mark, what, got }: GotChoiceProps) {
  return (
    <GotSelect
      look="small"
      what={what}
      got={got}
      set={(how) => editor.run(`How ${what} of ${name} was got`, (plan) => setGot(plan, id, mark, how))}
    />
  );
}

function outlineGot({ got }: Structure): { readonly mark: string; readonly got: Got } | null {
  if ('outline' in got) return { mark: 'outline', got: got.outline };
  if ('line' in got) return { mark: 'line', got: got.line };
  return 'at' in got ? { mark: 'at', got: got.at } : null;
}
