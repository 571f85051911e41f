import { X } from 'lucide-react';
import { useStore } from 'zustand';
import type { Stepping } from '../../editor/stepping.ts';
import styles from './firstSteps.module.css';

interface FirstStepsProps {
  readonly steps: Stepping;
  /** Gives the focus back to the work. */
  done(): void;
}

/** One sentence for whoever begins; it takes no presses but those that put it away. */
export function FirstSteps({ steps, done }: FirstStepsProps) {
  const sentence = useStore(steps.store, (state) => state.sentence);
  const putAway = () => {
    steps.putAway();
    done();
  };
  return (
    <div className={styles['steps']} data-over>
      {sentence !== null && (
        <div className={styles['plate']}>
          <span role="status">{sentence}</span>
          <button
            type="button"
            aria-label="Put the first steps away"
            title="Put the first steps away"
            onClick={putAway}
          >
            <X size={14} aria-hidden="true" />
          </button>
        </div>
      )}
    </div>
  );
}
