import { CircleX, Info, OctagonAlert, TriangleAlert, type LucideIcon } from 'lucide-react';
import type { Severity } from '../../assess/cautions/caution.ts';
import { severityWord } from '../../draw/cautions/cautionWords.ts';
import styles from './cautions.module.css';

const SIGN: Readonly<Record<Severity, LucideIcon>> = {
  stop: OctagonAlert,
  fails: CircleX,
  tight: TriangleAlert,
  tell: Info,
};

/** How grave a caution is, by a sign of its own shape and a word. */
export function SeverityMark({ severity }: { severity: Severity }) {
  const Sign = SIGN[severity];
  return (
    <span className={styles.severity} data-severity={severity}>
      <Sign size={15} strokeWidth={2} aria-hidden="true" />
      {severityWord(severity)}
    </span>
  );
}
