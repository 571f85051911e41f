import { useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import { fixed } from '../../base/length.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Editor } from '../../editor/editor.ts';
import { limitSettings, plateSettings } from '../../editor/settings/bracketSettings.ts';
import { facesOf, hostsNear } from '../../editor/settings/hostChoices.ts';
import { cornersOf, moveToCorner } from '../../editor/settings/cornerChoices.ts';
import { mountChange } from '../../editor/settings/mountChange.ts';
import { setMountFace, setMountKind } from '../../editor/settings/mountKind.ts';
import type { MountKind } from '../../editor/settings/mountKind.ts';
import { mountSettings, switchCorner } from '../../editor/settings/mountSettings.ts';
import { cornerNames } from '../../editor/tools/mount/cornerNames.ts';
import { faceOf } from '../../editor/tools/mount/faceOf.ts';
import { Button } from '../../fittings/Button.tsx';
import { Select } from '../../fittings/Select.tsx';
import type { Choice } from '../../fittings/Select.tsx';
import type { Mount } from '../../optics/mount.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { Figure } from '../Figure.tsx';
import { Folded } from '../Folded.tsx';
import { Group } from '../Group.tsx';
import { OptionalField } from '../OptionalField.tsx';
import { SettingField } from '../SettingField.tsx';
import { useFaultWords } from '../faultWords.ts';
import styles from '../sheet.module.css';

interface MountGroupProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly plan: Plan;
  readonly camera: PlanCamera;
}

const KINDS: readonly Choice<MountKind>[] = [
  { value: 'flush', label: 'Flat on a wall' },
  { value: 'arm', label: 'On an arm' },
  { value: 'soffit', label: 'Under eaves or ceiling' },
  { value: 'corner', label: 'Around a corner' },
  { value: 'pole', label: 'On a pole' },
];

/** A file may bring it and this sheet keeps it, but does not offer it. */
const LOOSE: Choice<Mount['kind']> = { value: 'loose', label: 'Fixed to nothing' };

/** How and where the camera is fixed. */
export function MountGroup({ editor, answers, plan, camera }: MountGroupProps) {
  const scene = useStore(answers, ({ assessment }) => assessment?.scene ?? null);
  const { mount, name } = camera;
  const eye = scene?.cameras.find(({ id }) => id === camera.id)?.eye ?? null;
  const hole = scene?.fixings.find((fixing) => fixing.camera === camera.id)?.hole ?? null;
  const [turned, setTurned] = useState<Turned | null>(null);
  const kinds = mount.kind === 'loose' ? [...KINDS, LOOSE] : KINDS;
  return (
    <Group title="Mount">
      <Select<Mount['kind']>
        label="Fixed"
        value={mount.kind}
        choices={kinds}
        set={(kind) => {
          if (kind === 'loose') return;
          const next = setMountKind(plan, camera, kind, eye);
          const after = next.cameras[camera.id]?.mount;
          if (next === plan || !after)
            return editor.say(
              kind === 'corner' ? 'No outer corner is here.' : 'No structure has a place for that.',
            );
          editor.run(`Fix ${name} another way`, () => next);
          setTurned({ mount: after, told: mountChange(plan, mount, after) });
        }}
      />
      {turned?.mount === mount && turned.told.length > 0 && (
        <p className={styles.note} role="status">
          {turned.told.join(' ')}
        </p>
      )}
      {'host' in mount && <HostFields editor={editor} plan={plan} camera={camera} eye={eye} />}
      {mountSettings(plan, camera).map((setting) => (
        <SettingField key={setting.key} editor={editor} subject={name} setting={setting} />
      ))}
      {mount.kind === 'soffit' && scene && eye && (
        <Figure label="Mounting height" value={fixed(eye[2] - scene.ground, 2)} unit="m" />
      )}
      {scene && hole && mount.kind !== 'pole' && (
        <Figure label="Hole above ground" value={fixed(hole[2] - scene.ground, 2)} unit="m" />
      )}
      <CameraFaults answers={answers} id={camera.id} />
      <CornerSwitch editor={editor} plan={plan} camera={camera} />
    </Group>
  );
}

/** Another mount that was chosen here, and what that changed. */
interface Turned {
  readonly mount: Mount;
  readonly told: readonly string[];
}

/** Size of the plate, and how far the mount lets the camera turn. */
export function BracketGroup({ editor, camera }: Pick<MountGroupProps, 'editor' | 'camera'>) {
  const plates = plateSettings(camera);
  const limits = limitSettings(camera);
  const [across, up] = plates;
  const known = limits.filter(({ value }) => value !== null).length;
  if (limits.length === 0) return null;
  const size = across && up ? `${fixed(across.value * 100, 0)} × ${fixed(up.value * 100, 0)} cm, ` : '';
  return (
    <Folded
      title="Plate and turning"
      told={`${size}${known === 0 ? 'turning not known' : known < limits.length ? 'turning partly known' : 'turning known'}`}
    >
      {plates.map((setting) => (
        <SettingField key={setting.key} editor={editor} subject={camera.name} setting={setting} />
      ))}
      {limits.map((setting) => (
        <OptionalField key={setting.key} editor={editor} subject={camera.name} setting={setting} />
      ))}
      <p className={styles.note}>
        Pan and tilt are counted from straight out and level. A drag stops where the mount does.
      </p>
    </Folded>
  );
}

/** Why this camera is not as it was set, so that it sees less or nothing. */
function CameraFaults({ answers, id }: { answers: AnswersStore; id: string }) {
  const faults = useStore(answers, ({ assessment }) => assessment?.scene.faults ?? null);
  const words = useFaultWords();
  return faults
    ?.filter(({ path }) => path[0] === 'cameras' && path[1] === id && path[2] !== 'statedHfov')
    .map((fault) => (
      <p key={fault.code} className={styles.trouble}>
        {words(fault)}
      </p>
    ));
}

function CornerSwitch({ editor, plan, camera }: Omit<MountGroupProps, 'answers'>) {
  const { mount, name } = camera;
  const face = faceOf(plan, mount);
  if (!face || !('corner' in mount)) return null;
  const other = cornerNames(face)[mount.corner === 'start' ? 'end' : 'start'];
  return (
    <div className={styles.acts}>
      <Button press={() => editor.run(`Corner of ${name}`, (now) => switchCorner(now, camera))}>
        Measure from the {other} corner
      </Button>
    </div>
  );
}

function HostFields({
  editor,
  plan,
  camera,
  eye,
}: Omit<MountGroupProps, 'answers'> & { readonly eye: Vec3 | null }) {
  const { mount, name } = camera;
  if (!('host' in mount)) return null;
  const sort = mount.kind === 'soffit' ? 'soffit' : 'wall';
  const hosts = hostsNear(plan, eye ?? [0, 0], mount.host);
  const faces = facesOf(plan, mount.host, sort);
  const lost = { value: '', label: 'none' };
  const host = hosts.some(({ id }) => id === mount.host) ? mount.host : '';
  const face = faces.some((one) => one.face === mount.face) ? String(mount.face) : '';
  return (
    <>
      <Select
        label="On"
        value={host}
        choices={[
          ...(host === '' ? [lost] : []),
          ...hosts.map(({ id, name: label }) => ({ value: id, label })),
        ]}
        set={(id) => {
          const first = facesOf(plan, id, sort)[0] ?? facesOf(plan, id, 'wall')[0];
          if (first) editor.run(`Move ${name}`, () => setMountFace(plan, camera, first));
          else editor.say('That structure has no wall to fix a camera to.');
        }}
      />
      {mount.kind === 'corner' ? (
        <CornerChoice editor={editor} plan={plan} camera={camera} />
      ) : (
        <Select
          label="Wall"
          value={face}
          choices={[
            ...(face === '' ? [lost] : []),
            ...faces.map((one) => ({ value: String(one.face), label: wallName(one) })),
          ]}
          set={(chosen) => {
            const next = faces.find((one) => String(one.face) === chosen);
            if (next) editor.run(`Move ${name}`, () => setMountFace(plan, camera, next));
          }}
        />
      )}
    </>
  );
}

/** Which corner of its host a corner bracket is around. */
function CornerChoice({ editor, plan, camera }: Omit<MountGroupProps, 'answers'>) {
  const { mount, name } = camera;
  if (mount.kind !== 'corner') return null;
  const corners = cornersOf(plan, mount);
  return (
    <Select
      label="Corner of"
      value={String(mount.face)}
      choices={corners.map((one) => ({ value: String(one.face), label: one.walls }))}
      set={(chosen) => editor.run(`Move ${name}`, (now) => moveToCorner(now, camera, Number(chosen)))}
    />
  );
}

// "Soffit over the south wall" is the south wall: how it is fixed there stands above.
const wallName = ({ name }: { name: string }): string =>
  name.replace(/^Soffit over the (.)/, (_, first: string) => first.toUpperCase());
