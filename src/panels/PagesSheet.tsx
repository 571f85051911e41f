import { useEffect, useState } from 'react';
import { Button } from '../fittings/Button.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './pagesSheet.module.css';
import sheetStyles from './sheet.module.css';

interface PagesSheetProps {
  readonly name: string;
  readonly count: number;
  thumbnail(page: number): Promise<Blob>;
  choose(page: number): void;
  close(): void;
}

/** So many pages are shown; a longer document is split by its owner. */
const MOST = 24;

/** Asks which page of a document is to be traced. */
export function PagesSheet({ name, count, thumbnail, choose, close }: PagesSheetProps) {
  const pages = Array.from({ length: Math.min(count, MOST) }, (_, k) => k + 1);
  return (
    <>
      <SheetHead
        sign={null}
        title="Which page?"
        kind={
          <Button look="quiet" press={close}>
            Cancel
          </Button>
        }
      />
      <Group title={`${name}, ${count} pages`}>
        <ul className={styles.pages}>
          {pages.map((page) => (
            <li key={page}>
              <PageButton page={page} thumbnail={thumbnail} choose={choose} />
            </li>
          ))}
        </ul>
        {count > MOST && (
          <p className={sheetStyles.note}>
            The first {MOST} are shown. Save the page that you need as a file of its own to trace a later one.
          </p>
        )}
      </Group>
    </>
  );
}

function PageButton({
  page,
  thumbnail,
  choose,
}: Pick<PagesSheetProps, 'thumbnail' | 'choose'> & { page: number }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let there = true;
    thumbnail(page).then(
      (blob) => {
        if (!there) return;
        made = URL.createObjectURL(blob);
        setAddress(made);
      },
      // Without its small picture a page can still be chosen by number.
      () => undefined,
    );
    return () => {
      there = false;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [page, thumbnail]);
  return (
    <button type="button" className={styles.page} onClick={() => choose(page)}>
      {address === null ? <span className={styles.blank} /> : <img src={address} alt="" />}
      <span>Page {page}</span>
    </button>
  );
}
