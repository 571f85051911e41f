import { entryOf, setDevice } from '../../plan/commands/setDevice.ts';
import type { DeviceEntry } from '../../plan/devices/deviceEntry.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import type { Editor } from '../editor.ts';
import type { OwnDevices } from './ownDevices.ts';

/** Puts another kind of camera up in the place of one, with its aim. */
export function putUp(editor: Editor, { id, name }: PlanCamera, entry: DeviceEntry): void {
  editor.run(`${entry.name} for ${name}`, (plan) => setDevice(plan, id, entry));
  editor.say(`${name} is now “${entry.name}”. Undo takes it back.`);
}

/** Keeps a camera as one's own kind under a name; one that is called so already is replaced. */
export function keepAs(editor: Editor, own: OwnDevices, camera: PlanCamera, name: string): void {
  const known = own.store.getState().devices.find((entry) => entry.name === name);
  own.put(entryOf(camera, known?.id ?? own.freshId(), name));
  editor.say(known ? `“${name}” is as ${camera.name} is now.` : `Kept as “${name}” on this device.`);
}
