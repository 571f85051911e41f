import { useEffect, useState } from 'react';
import styles from './field.module.css';

const QUIET = 500;

interface LiveRegionProps {
  readonly text: string;
  /** Rises with each sentence, so that the same one is spoken again. */
  readonly turn: number;
}

/** Speaks one sentence, half a second after the last change; emptied first. */
export function LiveRegion({ text, turn }: LiveRegionProps) {
  return (
    <div className={styles.spoken} role="status" aria-live="polite">
      <Sentence key={turn} text={text} />
    </div>
  );
}

function Sentence({ text }: { text: string }) {
  const [said, setSaid] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setSaid(text), QUIET);
    return () => clearTimeout(timer);
  }, [text]);
  return said;
}
