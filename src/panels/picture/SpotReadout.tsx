import type { Assessment, PointAnswer } from '../../assess/assessment.ts';
import { distance, type Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { metres } from '../../draw/section/sectionWords.ts';
import { Button } from '../../fittings/Button.tsx';
import { LiveRegion } from '../../fittings/LiveRegion.tsx';
import type { LengthUnit } from '../../base/length.ts';
import { stateText } from '../probeWords.ts';
import styles from './picture.module.css';

interface SpotReadoutProps {
  readonly assessment: Assessment;
  readonly camera: Camera;
  readonly units: LengthUnit;
  readonly point: Vec3;
  /** Null until the judge has answered. */
  readonly answer: PointAnswer | null;
  /** Index of the solid whose face was picked; null on what is asked for. */
  readonly solid: number | null;
  readonly placing: boolean;
  place(on: boolean): void;
  /** Aims so that the spot stands so far up the picture, as a share; null: in its middle. */
  put(up: number | null): void;
  find: (() => void) | null;
  clear(): void;
}

/** What the camera makes of the spot that was picked, and where it shall be in the picture. */
export function SpotReadout(props: SpotReadoutProps) {
  const { assessment, camera, units, point, answer, solid, placing } = props;
  const away = metres(distance(camera.eye, point), units);
  const on = solid === null ? '' : `On ${assessment.scene.solids[solid]?.name ?? 'something'}: `;
  const told = answer ? `${on}${stateText(assessment, answer, point)}, ${away} from the lens` : 'Asking.';
  const sentence = told.charAt(0).toUpperCase() + told.slice(1);
  return (
    <div className={styles.readout} data-readout>
      <p className={styles.told}>{sentence}</p>
      <LiveRegion text={answer ? sentence : ''} turn={0} />
      <div className={styles.acts} role="group" aria-label="Aim by this place">
        <span className={styles.ask}>Put this place</span>
        <Button press={() => props.put(1 / 3)}>A third up</Button>
        <Button press={() => props.put(null)}>In the middle</Button>
        <Button press={() => props.put(2 / 3)}>Two thirds up</Button>
        <Button pressed={placing} press={() => props.place(!placing)}>
          {placing ? 'Now pick where' : 'Elsewhere'}
        </Button>
        {props.find && <Button press={props.find}>Show in the Model</Button>}
        <Button look="quiet" press={props.clear}>
          Let go
        </Button>
      </div>
    </div>
  );
}
