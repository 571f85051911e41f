import { Button } from '../fittings/Button.tsx';
import styles from './firstRun.module.css';

interface FirstRunProps {
  draw(): void;
  trace(): void;
  shapes(): void;
  choose(): void;
  sample(): void;
  pin(): void;
}

/** What an empty plan says: one sentence and the ways in. */
export function FirstRun({ draw, trace, shapes, choose, sample, pin }: FirstRunProps) {
  return (
    <section className={styles.first} aria-labelledby="first-run">
      <h2 id="first-run" className={styles.title}>
        Start with the outline of the house
      </h2>
      <p className={styles.lead}>
        Pick its corners on the board, then pull it up to its height. Cameras and coverage come after.
      </p>
      <div className={styles.ways}>
        <Button look="main" press={draw}>
          <span>Draw an outline</span> <small>W</small>
        </Button>
        <Button press={trace}>
          <span>Trace a drawing or a photo</span> <small>or drop a file</small>
        </Button>
        <Button press={shapes}>
          <span>Begin with a shape</span> <small>by its sizes</small>
        </Button>
        <Button press={choose}>
          <span>Open a street or a plan</span> <small>footprints, file</small>
        </Button>
        <Button press={pin}>
          <span>Pin a photo</span> <small>of the site</small>
        </Button>
        <Button press={sample}>Open the sample, Kiln Cottage</Button>
      </div>
    </section>
  );
}
