import { describe, expect, test } from 'vitest';
import { library } from '../../../src/editor/devices/library.ts';
import { createOwnDevices, type Drawer } from '../../../src/editor/devices/ownDevices.ts';
import { entryOf } from '../../../src/plan/commands/setDevice.ts';
import { devicesText } from '../../../src/plan/devices/devicesFile.ts';
import { wholePlan } from '../../plan/wholePlan.ts';

function drawerWith(text: string | null = null, room = true): Drawer & { text: string | null } {
  const drawer = {
    text,
    read: () => drawer.text,
    write: (next: string) => {
      if (room) drawer.text = next;
      return room;
    },
  };
  return drawer;
}

const C1 = wholePlan().cameras['C1'];
if (!C1) throw new Error('no C1');
const names = (own: ReturnType<typeof createOwnDevices>) =>
  own.store.getState().devices.map(({ name }) => name);

describe('own devices', () => {
  test('one that is put is there again after a reload, and gone once it is removed', () => {
    const drawer = drawerWith();
    const own = createOwnDevices(drawer);
    own.put(entryOf(C1, own.freshId(), 'Yard turret'));
    own.put(entryOf(C1, own.freshId(), 'Gate bullet'));
    const again = createOwnDevices(drawer);
    expect(names(again)).toEqual(['Yard turret', 'Gate bullet']);
    expect(again.store.getState().devices[0]?.device).toEqual(C1.device);
    again.remove('own-1');
    expect(names(createOwnDevices(drawer))).toEqual(['Gate bullet']);
    expect(again.freshId()).toBe('own-1');
  });

  test('they go to another device as a file, where the same id is replaced', () => {
    const [first, second] = [createOwnDevices(drawerWith()), createOwnDevices(drawerWith())];
    first.put(entryOf(C1, 'own-1', 'Yard turret'));
    second.put(entryOf(C1, 'own-1', 'Old name'));
    expect(second.take(first.text())).toEqual({ taken: 1, faults: [] });
    expect(names(second)).toEqual(['Yard turret']);
  });

  test('a file that cannot be read changes nothing and says why', () => {
    const own = createOwnDevices(drawerWith());
    own.put(entryOf(C1, 'own-1', 'Yard turret'));
    const [device] = library();
    if (!device) throw new Error('no device');
    const { lens } = device.device;
    const reversed = {
      ...device,
      device: { ...device.device, lens: { ...lens, shortest: 12, longest: 2.8 } },
    };
    for (const [text, code] of [
      ['{', 'file.truncated'],
      ['{"format": "soffit devices", "version": 1, "devices": [{}]}', 'value.missing'],
      [devicesText([reversed]), 'sheet.reversed'],
      [devicesText([device, device]), 'device.twice'],
      [devicesText([{ ...device, device: { ...device.device, recorded: 'none' } }]), 'mode.missing'],
    ] as const) {
      const { taken, faults } = own.take(text);
      expect([taken, faults[0]?.code]).toEqual([0, code]);
      expect(names(own)).toEqual(['Yard turret']);
    }
  });

  test('what is no device in the drawer is left out; where there is no room, it is said', () => {
    expect(names(createOwnDevices(drawerWith('[1, 2')))).toEqual([]);
    const full = createOwnDevices(drawerWith(null, false));
    full.put(entryOf(C1, 'own-1', 'Yard turret'));
    expect(full.store.getState()).toMatchObject({ kept: false });
    expect(names(full)).toEqual(['Yard turret']);
  });
});
