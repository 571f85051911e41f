import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { Area } from '../../coverage/area.ts';
import type { Edition } from '../../coverage/band.ts';
import type { Device } from '../../optics/device.ts';
import { liveBeside } from '../../optics/live.ts';
import { BandBars } from '../BandBars.tsx';
import { Figure } from '../Figure.tsx';
import { Group } from '../Group.tsx';
import { areaText } from '../areaText.ts';
import type { Plan } from '../../plan/plan.ts';
import { askedText } from '../targetText.ts';
import styles from '../sheet.module.css';

/** How many of the things that hide are named; the rest are summed. */
const NAMED = 3;

/** What one camera makes of the target asked for, from the assessment that is shown. */
export function SeesGroup({ answers, plan, id }: { answers: AnswersStore; plan: Plan; id: string }) {
  const assessment = useStore(answers, (state) => state.assessment);
  const coverage = assessment?.cameras.find(({ camera }) => camera.id === id);
  if (!assessment || !coverage)
    return (
      <Group title="Sees">
        <p className={styles.note}>Nothing is worked out for this camera yet.</p>
      </Group>
    );
  const { areas, reach } = coverage;
  const { surface } = assessment;
  // One more is named where it would be the only other.
  const count = areas.byHider.length === NAMED + 1 ? NAMED + 1 : NAMED;
  const named = areas.byHider.slice(0, count);
  const rest = areas.byHider.slice(count);
  return (
    <Group answered title={`Sees, at ${askedText(assessment, plan)}`}>
      {surface === null && (
        <Figure
          label="Nothing seen nearer than"
          value={reach.nearBlindDistance === null ? 'nothing seen' : reach.nearBlindDistance.toFixed(2)}
          unit={reach.nearBlindDistance === null ? '' : 'm'}
        />
      )}
      <BandBars
        label={surface === null ? 'Area and reach by band' : 'Area by band'}
        edition={assessment.edition}
        areas={areas.byBand}
        {...(surface === null ? { reach: reach.byBand } : {})}
      />
      <p className={styles.note}>
        {surface === null
          ? `Area within the ${assessment.within}; reach along the middle of the picture.`
          : 'Area of the face itself.'}
      </p>
      {plan.cameras[id] && <LiveBeside device={plan.cameras[id].device} edition={assessment.edition} />}
      <ul className={styles.list} aria-label="In the picture, but not covered">
        {named.map(({ solid, area }) => (
          <Lost
            key={solid}
            label={`Hidden by ${assessment.scene.solids[solid]?.name ?? 'something'}`}
            area={area}
          />
        ))}
        {rest.length > 0 && (
          <Lost label={`Hidden by ${rest.length} others`} area={summed(rest.map(({ area }) => area))} />
        )}
        <Lost label="Through leaves or mesh" area={areas.byState.screened} />
        <Lost label="Too dark" area={areas.byState['too dark']} />
        <Lost label="Too few pixels" area={areas.byState['too coarse']} />
        <Lost label="Face seen from too steep" area={areas.lost.tooSteep} />
        <Lost label="Face seen from the side" area={areas.lost.fromTheSide} />
      </ul>
    </Group>
  );
}

/** What the live picture has where the recorded one just reaches each band: fewer pixels a metre, everywhere alike. */
function LiveBeside({ device, edition }: { device: Device; edition: Edition }) {
  const beside = liveBeside(device);
  if (!beside) return null;
  const { mode, share, even } = beside;
  const bandAt = (density: number): string =>
    edition.bands.findLast((band) => density >= band.density)?.name ?? 'too few pixels';
  return (
    <details className={styles.beside}>
      <summary>
        Live in “{mode.name}”, {mode.frame.width} × {mode.frame.height}: {even ? '' : 'at least '}
        {percent(share)} of the pixels a metre
      </summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Where recorded has</th>
            <th scope="col">live has</th>
            <th scope="col">enough to</th>
          </tr>
        </thead>
        <tbody>
          {edition.bands.toReversed().map(({ key, name, density }) => (
            <tr key={key}>
              <th scope="row">
                {density} px/m, {name}
              </th>
              <td>{shown(density * share)} px/m</td>
              <td>{bandAt(density * share)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.note}>
        By {edition.name}. Only the recorded picture reaches what is counted above.
      </p>
    </details>
  );
}

const percent = (share: number): string => `${shown(share * 100)} %`;

const shown = (value: number): string => (value >= 9.95 ? value.toFixed(0) : value.toFixed(1));

function Lost({ label, area }: { label: string; area: Area }) {
  if (area.value < 0.05) return null;
  return (
    <li className={styles.figure}>
      <span>
        <i className={styles.lost} aria-hidden />
        {label}
      </span>
      <span>
        <b>{areaText(area)}</b>
      </span>
    </li>
  );
}

const WORST = ['cells', 'between', 'exact'] as const;

const summed = (areas: readonly Area[]): Area => ({
  value: areas.reduce((sum, { value }) => sum + value, 0),
  bound: areas.reduce((sum, { bound }) => sum + bound, 0),
  how: WORST.find((one) => areas.some(({ how }) => how === one)) ?? 'exact',
});
