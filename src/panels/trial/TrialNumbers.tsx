import { useStore } from 'zustand';
import type { TrialAnswers } from '../../answers/trial.ts';
import type { Assessment } from '../../assess/assessment.ts';
import { settingAt, type TrialSetting } from '../../draw/trial/shownTrial.ts';
import { letterOf, type TrialStore } from '../../editor/trial/trial.ts';
import { Button } from '../../fittings/Button.tsx';
import { lengths } from '../../fittings/measure.ts';
import { NumberField } from '../../fittings/NumberField.tsx';
import { Select } from '../../fittings/Select.tsx';
import type { Plan } from '../../plan/plan.ts';
import { areaFigures } from '../areaText.ts';
import { askedText } from '../targetText.ts';
import { changeRows, coverRows, distanceRows, pointRows, settingRows } from './trialRows.ts';
import { remarks } from './remarks.ts';
import { TrialTable } from './TrialTable.tsx';
import styles from './trialSheet.module.css';

interface TrialNumbersProps {
  readonly trial: TrialStore;
  readonly changes: TrialAnswers;
  readonly plan: Plan;
  readonly settings: readonly TrialSetting[];
  readonly assessment: Assessment | null;
  readonly right: string | null;
}

const DISTANCE = { least: 0.1, most: 1000 };

/** Ground gained and lost, then the table of numbers. */
export function TrialNumbers({ trial, changes, plan, settings, assessment, right }: TrialNumbersProps) {
  const distance = useStore(trial, (state) => state.distance);
  const { units } = plan.settings;
  if (assessment === null || settings.length === 0)
    return <p className={styles.hint}>Working out coverage.</p>;
  const { edition } = assessment;
  const set = (next: number) => trial.setState({ distance: next });
  return (
    <>
      {remarks(settings, assessment).map((words) => (
        <p key={words} className={styles.hint}>
          {words}
        </p>
      ))}
      {right !== null && <Changes {...{ trial, changes, assessment, right }} />}
      <section className={styles.group} aria-label="Numbers">
        <TrialTable
          label="Settings compared"
          settings={settings}
          parts={[
            settingRows(settings, units),
            ...coverRows(settings, edition, units),
            ...pointRows(settings, edition),
          ]}
        />
      </section>
      <section className={styles.group} aria-label="At one distance">
        <NumberField
          label="At a distance of"
          value={distance}
          measure={lengths(units)}
          bounds={DISTANCE}
          edit={{ set, step: set, drag: () => ({ to: set, commit: nothing, cancel: () => set(distance) }) }}
        />
        <TrialTable
          label="At that distance"
          settings={settings}
          parts={[
            {
              title: `Along each axis, at ${askedText(assessment, plan)}`,
              rows: distanceRows(
                settings.map((setting) => settingAt(setting, distance, plan)),
                units,
              ),
            },
          ]}
        />
      </section>
      <p className={styles.hint}>
        Bands: {edition.name}. Pixels are by geometry alone: light, movement and focus are not in them. Areas
        within the {assessment.within === 'boundary' ? 'site boundary' : 'board'}.
      </p>
    </>
  );
}

const nothing = () => undefined;

interface ChangesProps {
  readonly trial: TrialStore;
  readonly changes: TrialAnswers;
  readonly assessment: Assessment;
  readonly right: string;
}

/** What the setting right of the divider gains and loses beside A. */
function Changes({ trial, changes, assessment, right }: ChangesProps) {
  const { of, changes: all, computing } = useStore(changes);
  const band = useStore(trial, (state) => state.band);
  const marked = useStore(trial, (state) => state.marked);
  const { edition } = assessment;
  const change = all[right];
  const isStale = of !== assessment || computing;
  return (
    <section className={styles.group} aria-label={`From A to ${letterOf(right)}`}>
      <h3 className={styles.part}>From A to {letterOf(right)}</h3>
      <Select
        label="Asked for"
        viewing
        value={String(band)}
        choices={edition.bands.map(({ name, density }, index) => ({
          value: String(index),
          label: `${name}, ${density} px/m`,
        }))}
        set={(next) => trial.setState({ band: Number(next) })}
      />
      {change === undefined ? (
        <p className={styles.hint}>Working out what is gained and lost.</p>
      ) : (
        <dl className={styles.changes} data-stale={isStale} aria-busy={isStale}>
          {changeRows(change, edition, band).map(({ sign, label, area }) => {
            const { value, bound } = areaFigures(area);
            return (
              <div key={label}>
                <dt>
                  <b aria-hidden="true">{sign}</b> {label}
                </dt>
                <dd>
                  <b>{value}</b> {bound} m²
                </dd>
              </div>
            );
          })}
        </dl>
      )}
      <Button pressed={marked} press={() => trial.setState({ marked: !marked })}>
        Mark gained and lost
      </Button>
    </section>
  );
}
