import { useEffect, useState } from 'react';
import styles from './field.module.css';

/** Speaks one sentence, half a second after the last change; emptied first, so that the same sentence is said again. */
export function LiveRegion({ text, turn }: { text: string; turn: number }) {
  const [said, setSaid] = useState('');
  useEffect(() => {
    setSaid('');
    const timer = setTimeout(() => setSaid(text), 500);
    return () => clearTimeout(timer);
  }, [text, turn]);
  return (
    <div className={styles.spoken} role="status" aria-live="polite">
      {said}
    </div>
  );
}
