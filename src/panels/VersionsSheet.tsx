import { useEffect, useState } from 'react';
import type { Editor } from '../editor/editor.ts';
import type { KeptVersion } from '../editor/shelf.ts';
import type { Versions } from '../editor/versions.ts';
import { Button } from '../fittings/Button.tsx';
import { TextField } from '../fittings/TextField.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import { whenText } from './whenText.ts';
import styles from './sheet.module.css';

interface VersionsSheetProps {
  readonly editor: Editor;
  readonly versions: Versions;
  close(): void;
}

/** Versions of the plan: going back to one is a step like any other, so undo takes it back. */
export function VersionsSheet({ editor, versions, close }: VersionsSheetProps) {
  const [held, setHeld] = useState<readonly KeptVersion[] | null>(null);
  const [name, setName] = useState('As agreed');

  const look = () =>
    versions.list().then(setHeld, () => {
      setHeld([]);
      editor.say('The versions on this device could not be read. The plan itself is untouched.');
    });
  useEffect(() => {
    let there = true;
    versions.list().then(
      (found) => there && setHeld(found),
      () => there && setHeld([]),
    );
    return () => {
      there = false;
    };
  }, [versions]);

  return (
    <>
      <SheetHead
        sign={null}
        title="Versions"
        kind={
          <Button look="quiet" press={close}>
            Close
          </Button>
        }
      />
      <Group title="Keep one now">
        <TextField label="Call it" value={name} most={120} set={setName} />
        <div className={styles.acts}>
          <Button
            look="main"
            press={() => {
              versions
                .keep(name)
                .then(look, () =>
                  editor.say('The version could not be kept on this device. Save the plan to a file.'),
                );
            }}
          >
            Keep this version
          </Button>
        </div>
        <p className={styles.note}>
          One is kept by itself before the first change of a sitting and every ten minutes of work.
        </p>
      </Group>
      <Group title="Kept on this device">
        {held?.length === 0 && (
          <p className={styles.note}>None yet. The first comes with your next change.</p>
        )}
        <ul className={styles.list}>
          {held?.map((version) => (
            <li key={version.key}>
              <b>{version.name}</b>, {whenText(version.at)}
              <div className={styles.acts}>
                <Button
                  label={`Go back to ${version.name}, ${whenText(version.at)}`}
                  press={() => versions.goBack(version)}
                >
                  Go back to it
                </Button>
                <Button
                  look="quiet"
                  label={`Forget ${version.name}, ${whenText(version.at)}`}
                  press={() => void versions.remove(version).then(look, look)}
                >
                  Forget
                </Button>
              </div>
            </li>
          ))}
        </ul>
      </Group>
    </>
  );
}
