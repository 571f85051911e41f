import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { surveyRows } from '../editor/surveyRows.ts';
import { Button } from '../fittings/Button.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './sheet.module.css';
import surveyStyles from './surveySheet.module.css';

interface SurveySheetProps {
  readonly editor: Editor;
  close(): void;
}

/** What to measure on site, the most uncertain first, to be printed and ticked off. */
export function SurveySheet({ editor, close }: SurveySheetProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const rows = useMemo(() => surveyRows(plan), [plan]);
  return (
    <div className={surveyStyles.survey} data-print>
      <SheetHead
        sign={null}
        title="To measure on site"
        kind={
          <Button look="quiet" press={close}>
            Close
          </Button>
        }
      />
      <Group title={`${plan.name}: ${rows.length === 1 ? '1 size' : `${rows.length} sizes`}`}>
        {rows.length === 0 ? (
          <p className={styles.note}>Every size is marked as measured. Nothing is left to tape.</p>
        ) : (
          <>
            <div className={styles.acts} data-screen>
              <Button look="main" press={() => window.print()}>
                Print the list
              </Button>
            </div>
            <ol className={surveyStyles.rows}>
              {rows.map((row) => (
                <li key={`${row.name} ${row.what}`}>
                  <span className={surveyStyles.box} aria-hidden />
                  <span>
                    <b>{row.name}</b>, {row.what}
                    {row.value === '' ? '' : `: ${row.value}`}, {row.got}
                    {row.touches.length > 0 && <small> moves {row.touches.join(', ')}</small>}
                  </span>
                  <span className={surveyStyles.blank} aria-hidden />
                </li>
              ))}
            </ol>
            <p className={styles.note}>
              Work from the ground where you can; on a ladder, have someone hold it, and keep clear of
              overhead lines.
            </p>
          </>
        )}
      </Group>
    </div>
  );
}
