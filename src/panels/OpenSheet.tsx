import type { Kept } from '../editor/shelf.ts';
import { Button } from '../fittings/Button.tsx';
import { Group } from './Group.tsx';
import { SheetHead } from './SheetHead.tsx';
import { whenText } from './whenText.ts';
import styles from './sheet.module.css';

interface OpenSheetProps {
  /** What this device keeps, newest first. */
  readonly kept: readonly Kept[];
  choose(): void;
  sample(): void;
  empty(): void;
  openKept(kept: Kept): void;
  forget(kept: Kept): void;
  close(): void;
}

/** The ways in: a file, the sample, an empty plan, and what the device keeps. */
export function OpenSheet({ kept, choose, sample, empty, openKept, forget, close }: OpenSheetProps) {
  return (
    <>
      <SheetHead
        sign={null}
        title="Open"
        kind={
          <Button look="quiet" press={close}>
            Close
          </Button>
        }
      />
      <Group title="From a file">
        <p className={styles.note}>
          A plan, or a street as GeoJSON building footprints. You can also drop the file anywhere. The open
          plan stays kept on this device.
        </p>
        <div className={styles.acts}>
          <Button look="main" press={choose}>
            Open a street or a plan
          </Button>
          <Button press={sample}>Open the sample</Button>
          <Button press={empty}>New, empty plan</Button>
        </div>
      </Group>
      <Group title="Kept on this device">
        {kept.length === 0 ? (
          <p className={styles.note}>Nothing yet. Plans are kept here as you work.</p>
        ) : (
          <ul className={styles.list}>
            {kept.map((one) => (
              <li key={one.key}>
                <b>{one.name}</b>, {whenText(one.at)}
                <div className={styles.acts}>
                  <Button label={`Open ${one.name} of ${whenText(one.at)}`} press={() => openKept(one)}>
                    Open
                  </Button>
                  <Button
                    look="quiet"
                    label={`Forget ${one.name} of ${whenText(one.at)}`}
                    press={() => forget(one)}
                  >
                    Forget
                  </Button>
                </div>
              </li>
            ))}
          </ul>
        )}
      </Group>
    </>
  );
}
