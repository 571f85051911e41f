import type { TrialSetting } from '../../draw/trial/shownTrial.ts';
import type { TrialRow, TrialRows } from './trialRows.ts';
import styles from './trialSheet.module.css';

interface TrialTableProps {
  readonly label: string;
  readonly settings: readonly TrialSetting[];
  readonly parts: readonly TrialRows[];
}

/** Numbers of all settings side by side; where they differ they stand out. */
export function TrialTable({ label, settings, parts }: TrialTableProps) {
  return (
    <table className={styles.table} aria-label={label}>
      <thead>
        <tr>
          <th scope="col">Figure</th>
          {settings.map(({ id, letter }) => (
            <th key={id} scope="col">
              {letter}
            </th>
          ))}
        </tr>
      </thead>
      {parts.map(({ title, rows }) => (
        <tbody key={title}>
          <tr>
            <th colSpan={settings.length + 1} scope="colgroup" className={styles.part}>
              {title}
            </th>
          </tr>
          {rows.map((one) => (
            <Row key={one.label} row={one} settings={settings} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function Row({
  row: { label, cells, differs },
  settings,
}: {
  row: TrialRow;
  settings: readonly TrialSetting[];
}) {
  return (
    <tr data-differs={differs}>
      <th scope="row">{label}</th>
      {settings.map(({ id }, at) => (
        <td key={id}>{cells[at]}</td>
      ))}
    </tr>
  );
}
