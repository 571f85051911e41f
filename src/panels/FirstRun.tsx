import { Button } from '../fittings/Button.tsx';
import styles from './firstRun.module.css';

interface FirstRunProps {
  choose(): void;
  sample(): void;
}

/** What an empty plan says: one sentence and the ways in. */
export function FirstRun({ choose, sample }: FirstRunProps) {
  return (
    <section className={styles.first} aria-labelledby="first-run">
      <h2 id="first-run" className={styles.title}>
        Start with your street
      </h2>
      <p className={styles.lead}>
        Open building footprints of the place, or a plan. Then mount a camera on a wall and see what it sees.
      </p>
      <div className={styles.ways}>
        <Button look="main" press={choose}>
          <span>Open a street or a plan</span> <small>or drop a file</small>
        </Button>
        <Button press={sample}>Open the sample, Kiln Cottage</Button>
      </div>
    </section>
  );
}
