import { Suspense, lazy, useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import { hide, remove, rename } from '../../editor/acts.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import { TextField } from '../../fittings/TextField.tsx';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { Group } from '../Group.tsx';
import { Pinned } from '../Pinned.tsx';
import { SheetHead } from '../SheetHead.tsx';
import { placeText } from './placeText.ts';
import { AimGroup } from './AimGroup.tsx';
import { LensGroup } from './LensGroup.tsx';
import { NightGroup } from './NightGroup.tsx';
import { BracketGroup, MountGroup } from './MountGroup.tsx';
import { PicturesGroup } from './PicturesGroup.tsx';
import { SeesGroup } from './SeesGroup.tsx';
import { KindGroup, SheetGroup } from './SheetGroup.tsx';
import styles from '../sheet.module.css';

const DevicePicker = lazy(() =>
  import('./DevicePicker.tsx').then((loaded) => ({ default: loaded.DevicePicker })),
);

const CautionList = lazy(() =>
  import('../cautions/CautionList.tsx').then((loaded) => ({ default: loaded.CautionList })),
);

interface CameraSheetProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly plan: Plan;
  readonly camera: PlanCamera;
}

/** The setting sheet of a camera. */
export function CameraSheet({ editor, answers, plan, camera }: CameraSheetProps) {
  const alone = useStore(editor.store, (state) => state.alone === camera.id);
  const thing = { kind: 'camera', id: camera.id } as const;
  const [choosing, setChoosing] = useState(false);
  if (choosing)
    return (
      <Suspense fallback={null}>
        <DevicePicker editor={editor} camera={camera} close={() => setChoosing(false)} />
      </Suspense>
    );
  return (
    <Pinned
      head={
        <SheetHead
          sign={<span className={styles.badge}>{camera.name.slice(0, 2)}</span>}
          title={placeText(plan, camera)}
          kind="Setting sheet"
        />
      }
      foot={<SeesGroup answers={answers} plan={plan} id={camera.id} />}
    >
      <MountGroup editor={editor} answers={answers} plan={plan} camera={camera} />
      <BracketGroup editor={editor} camera={camera} />
      <AimGroup editor={editor} plan={plan} camera={camera} />
      <Suspense fallback={null}>
        <CautionList editor={editor} answers={answers} camera={camera} />
      </Suspense>
      <KindGroup editor={editor} camera={camera} choose={() => setChoosing(true)} />
      <LensGroup editor={editor} camera={camera} />
      <PicturesGroup editor={editor} camera={camera} />
      <NightGroup editor={editor} camera={camera} settings={plan.settings} />
      <SheetGroup editor={editor} camera={camera} />
      <Group title="Camera">
        <TextField label="Name" value={camera.name} most={120} set={(name) => rename(editor, thing, name)} />
        <div className={styles.acts}>
          <Button pressed={alone} press={() => editor.showAlone(alone ? null : camera.id)}>
            Show alone
          </Button>
          <Button pressed={camera.hidden} press={() => hide(editor, thing, !camera.hidden)}>
            Leave out
          </Button>
          <Button press={() => remove(editor, thing, {})}>Delete</Button>
        </div>
        {camera.hidden && <p className={styles.note}>Left out: it is not counted with the others.</p>}
      </Group>
    </Pinned>
  );
}
