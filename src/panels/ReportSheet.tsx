import type { ReportSentence } from '../exchange/reportText.ts';
import { Button } from '../fittings/Button.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './sheet.module.css';

interface ReportSheetProps {
  readonly file: string;
  readonly sentences: readonly ReportSentence[];
  readonly credits: readonly string[];
  close(): void;
}

/** What an import took, what it left out, and what it had to assume. */
export function ReportSheet({ file, sentences, credits, close }: ReportSheetProps) {
  const part = (name: ReportSentence['part']) =>
    sentences.flatMap((sentence) => (sentence.part === name ? [sentence.text] : []));
  return (
    <>
      <SheetHead
        sign={null}
        title="What was read"
        kind={
          <Button look="quiet" press={close}>
            Close
          </Button>
        }
      />
      <Group title={file}>
        <p className={styles.note}>
          Sizes from a map are not measured. Before you rely on one, tape it on site and say so in its setting
          sheet.
        </p>
      </Group>
      <Lines title="Taken" lines={part('taken')} none="Nothing." />
      <Lines title="Left out" lines={part('left')} none="Nothing." />
      <Lines title="Assumed" lines={part('assumed')} none="Nothing." />
      {credits.length > 0 && <Lines title="Map data" lines={credits} none="" />}
    </>
  );
}

function Lines({ title, lines, none }: { title: string; lines: readonly string[]; none: string }) {
  return (
    <Group title={title}>
      {lines.length === 0 ? (
        <p className={styles.note}>{none}</p>
      ) : (
        <ul className={styles.list}>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </Group>
  );
}
