import { useMemo } from 'react';
import { useStore } from 'zustand';
import { browserDrawer } from '../../editor/devices/browserDrawer.ts';
import { putUp } from '../../editor/devices/putUp.ts';
import { library } from '../../editor/devices/library.ts';
import { createOwnDevices } from '../../editor/devices/ownDevices.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import { anglesOf, settingOf } from '../../optics/setting.ts';
import type { DeviceEntry } from '../../plan/devices/deviceEntry.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { Group } from '../Group.tsx';
import { SheetHead } from '../SheetHead.tsx';
import { HOUSINGS } from './SheetGroup.tsx';
import { OwnActs } from './OwnActs.tsx';
import styles from '../sheet.module.css';

/** One for the window: two sheets would not know of each other's devices. */
const own = createOwnDevices(browserDrawer);

interface DevicePickerProps {
  readonly editor: Editor;
  readonly camera: PlanCamera;
  close(): void;
}

/** Kinds of cameras to choose from: the person's own, then ours by housing. */
export function DevicePicker({ editor, camera, close }: DevicePickerProps) {
  const mine = useStore(own.store, ({ devices }) => devices);
  const ours = useMemo(() => byHousing(library()), []);
  const take = (entry: DeviceEntry) => {
    putUp(editor, camera, entry);
    close();
  };
  return (
    <>
      <SheetHead
        sign={null}
        title={`Kind of camera for ${camera.name}`}
        kind={
          <Button look="quiet" press={close}>
            Close
          </Button>
        }
      />
      <Group title="Your own">
        {mine.length === 0 && <p className={styles.note}>None yet. Keep this camera, or read a file.</p>}
        <ul className={styles.list}>
          {mine.map((entry) => (
            <Row key={entry.id} entry={entry} take={take} forget={() => own.remove(entry.id)} />
          ))}
        </ul>
        <OwnActs editor={editor} own={own} camera={camera} />
      </Group>
      <p className={styles.empty}>
        The kinds below are invented ones of common make (common practice, no source). Check the sheet of what
        you buy and type over what differs.
      </p>
      {ours.map(([housing, entries]) => (
        <Group key={housing} title={housing}>
          <ul className={styles.list}>
            {entries.map((entry) => (
              <Row key={entry.id} entry={entry} take={take} />
            ))}
          </ul>
        </Group>
      ))}
    </>
  );
}

interface RowProps {
  readonly entry: DeviceEntry;
  take(entry: DeviceEntry): void;
  forget?(): void;
}

function Row({ entry, take, forget }: RowProps) {
  return (
    <li className={styles.withAct}>
      <span>
        <b>{entry.name}</b>
        <br />
        {detailWords(entry)}
      </span>
      <span>
        {forget && (
          <Button look="quiet" label={`Forget ${entry.name}`} press={forget}>
            Forget
          </Button>
        )}
        <Button label={`Take ${entry.name}`} press={() => take(entry)}>
          Take
        </Button>
      </span>
    </li>
  );
}

/** "2688 × 1520, 100° across, infrared 30 m". */
function detailWords({ name, device, infrared }: DeviceEntry): string {
  const { shortest, longest } = device.lens;
  const { setting } = settingOf(device, name);
  const at = (focalLength: number): string => {
    const { horizontal } = anglesOf(
      settingOf({ ...device, lens: { ...device.lens, focalLength } }, name).setting,
    );
    return horizontal === null ? '–' : `${Math.round(horizontal)}°`;
  };
  return [
    `${setting.frame.width} × ${setting.frame.height}`,
    longest > shortest ? `${at(shortest)} to ${at(longest)} across` : `${at(shortest)} across`,
    infrared ? `infrared ${infrared.range} m` : 'no infrared',
  ].join(', ');
}

const byHousing = (
  entries: readonly DeviceEntry[],
): readonly (readonly [string, readonly DeviceEntry[]])[] => {
  const groups = new Map<string, DeviceEntry[]>();
  for (const entry of entries) {
    const title = entry.housing === null ? 'Others' : HOUSINGS[entry.housing];
    groups.set(title, [...(groups.get(title) ?? []), entry]);
  }
  return [...groups];
};
