import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import { judgeBy } from '../editor/acts.ts';
import type { Editor } from '../editor/editor.ts';
import { editionChoices } from '../editor/settings/editionChoices.ts';
import { Button } from '../fittings/Button.tsx';
import { Select } from '../fittings/Select.tsx';
import { BandBars } from './BandBars.tsx';
import { ConditionsGroup } from './ConditionsGroup.tsx';
import { FaultList } from './FaultList.tsx';
import { Figure } from './Figure.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import { areaText } from './areaText.ts';
import { BeforeDrilling } from './cautions/BeforeDrilling.tsx';
import { askedText } from './targetText.ts';
import styles from './sheet.module.css';

/** The sheet of the whole site, while nothing is selected: what all cameras together make of it. */
export function SiteSheet({ editor, answers }: { editor: Editor; answers: AnswersStore }) {
  const plan = useStore(editor.store, (state) => state.plan);
  const { settings } = plan;
  return (
    <>
      <SheetHead sign={null} title="Whole site" kind="Setting sheet" />
      <Seen editor={editor} answers={answers} />
      <FaultList editor={editor} answers={answers} />
      <ConditionsGroup editor={editor} />
      <Group title="Judged by">
        <Select
          label="Bands"
          value={settings.edition}
          choices={editionChoices}
          set={(edition) => judgeBy(editor, { edition })}
        />
        <Select
          label="Lengths in"
          value={settings.units}
          choices={[
            { value: 'metres', label: 'metres' },
            { value: 'millimetres', label: 'millimetres' },
            { value: 'feet', label: 'feet and inches' },
          ]}
          set={(units) => judgeBy(editor, { units })}
        />
      </Group>
      <BeforeDrilling credits={plan.credits} />
    </>
  );
}

function Seen({ editor, answers }: { editor: Editor; answers: AnswersStore }) {
  const assessment = useStore(answers, (state) => state.assessment);
  const plan = useStore(editor.store, (state) => state.plan);
  const cameras = plan.cameraOrder.length;
  if (!assessment) return null;
  const { site, edition, question, within, scene, surface } = assessment;
  const alone = question.alone === null ? null : scene.cameras.find(({ id }) => id === question.alone);
  return (
    <Group
      answered
      title={
        alone
          ? `${alone.name} alone, at ${askedText(assessment, plan)}`
          : `Seen, at ${askedText(assessment, plan)}`
      }
    >
      {cameras === 0 ? (
        <p className={styles.note}>
          No camera yet. Take the camera from the tools, or press C, then point at a wall or the ground.
        </p>
      ) : (
        <>
          <BandBars label="Area by best band" edition={edition} areas={site.byBand} />
          <Figure label="Seen by no camera" value={areaText(site.unseen)} />
          <Figure label={surface === null ? 'Open ground' : 'The whole face'} value={areaText(site.open)} />
          <Figure
            label="Cameras counted"
            value={String(counted(assessment, editor))}
            unit={`of ${cameras}`}
          />
          {question.alone !== null && (
            <div className={styles.acts}>
              <Button press={() => editor.showAlone(null)}>Count all cameras</Button>
            </div>
          )}
          <p className={styles.note}>
            {surface === null ? `Within the ${within}` : 'On the face'}, by the best camera: area with enough
            pixels for each task. Enough is not a promise.
          </p>
        </>
      )}
    </Group>
  );
}

function counted(
  { question, scene }: { question: { alone: string | null }; scene: { cameras: readonly { id: string }[] } },
  editor: Editor,
): number {
  const { plan } = editor.store.getState();
  return scene.cameras.filter(({ id }) =>
    question.alone === null ? plan.cameras[id]?.hidden === false : id === question.alone,
  ).length;
}
