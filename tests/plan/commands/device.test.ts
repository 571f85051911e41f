import { describe, expect, test } from 'vitest';
import { library } from '../../../src/editor/devices/library.ts';
import { entryOf, setDevice } from '../../../src/plan/commands/setDevice.ts';
import {
  addMode,
  isCorridor,
  recordMode,
  removeMode,
  setCorridor,
  setMode,
} from '../../../src/plan/commands/setModes.ts';
import { setMount } from '../../../src/plan/commands/setMount.ts';
import { setHousing, setSheet } from '../../../src/plan/commands/setSheet.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { checkPlan } from '../../../src/plan/checkPlan.ts';
import { bare, wholePlan } from '../wholePlan.ts';

const plan = wholePlan();
const cameraOf = (now: Plan, id = 'C1') => {
  const camera = now.cameras[id];
  if (!camera) throw new Error(`no ${id}`);
  return camera;
};
const bullet = library().find(({ id }) => id === 'bullet-8-zoom');
if (!bullet) throw new Error('no such device');

describe('setDevice', () => {
  test('puts another kind up in the same place with the same aim', () => {
    const next = cameraOf(setDevice(plan, 'C1', bullet));
    expect(next).toMatchObject({
      housing: 'bullet',
      device: bullet.device,
      infrared: { range: 50 },
      sheet: { name: bullet.name, powerClass: 4 },
      pan: 180,
      tilt: 20,
    });
    expect(next.mount).toEqual({ ...cameraOf(plan).mount, limits: bullet.limits.wall });
    expect(cameraOf(setDevice(plan, 'C2', bullet), 'C2').mount).toBe(cameraOf(plan, 'C2').mount);
  });

  test('below a board it turns as it does there', () => {
    const place = { host: 'house', face: 0, corner: 'start', distance: 2, inset: 0.2, drop: 0.1 } as const;
    const hung = setMount(plan, 'C1', { kind: 'soffit', ...bare, ...place });
    expect(cameraOf(setDevice(hung, 'C1', bullet)).mount).toMatchObject({ limits: { pan: 180 } });
  });

  test('an entry made of a camera gives the same camera again', () => {
    const put = setDevice(plan, 'C1', bullet);
    const entry = entryOf(cameraOf(put), 'own-1', 'Mine');
    expect(cameraOf(setDevice(plan, 'C1', entry))).toEqual({
      ...cameraOf(put),
      sheet: { ...cameraOf(put).sheet, name: 'Mine' },
    });
  });

  test('every device of the library gives a plan that opens again', () => {
    for (const entry of library()) expect(checkPlan(setDevice(plan, 'C1', entry)).ok).toBe(true);
  });
});

describe('picture modes', () => {
  test('a small stream has a quarter of the pixels each way, on the same part of the sensor', () => {
    const next = cameraOf(addMode(plan, 'C1', 'live')).device;
    expect(next.modes[1]).toMatchObject({
      use: 'live',
      frame: { width: 672, height: 380 },
      crop: { width: 1 },
    });
    expect(next.recorded).toBe('main');
  });

  test('of how much stabilising takes nobody has told yet', () => {
    expect(cameraOf(addMode(plan, 'C1', 'stabilised')).device.modes[1]).toMatchObject({
      frame: { width: 2688 },
      crop: { width: 0.9, height: 0.9 },
      cropKnown: false,
    });
  });

  test('ids stay apart, a change of nothing is none, the recorded one is not taken away', () => {
    const two = addMode(addMode(plan, 'C1', 'live'), 'C1', 'live');
    expect(cameraOf(two).device.modes.map(({ id }) => id)).toEqual(['main', 'live', 'live-2']);
    expect(setMode(two, 'C1', 'live', { use: 'live' })).toBe(two);
    const one = removeMode(two, 'C1', 'live');
    expect(cameraOf(one).device.modes.map(({ id }) => id)).toEqual(['main', 'live-2']);
    expect(() => removeMode(one, 'C1', 'main')).toThrow('stays');
    expect(cameraOf(removeMode(recordMode(one, 'C1', 'live-2'), 'C1', 'main')).device.recorded).toBe(
      'live-2',
    );
  });

  test('angles stated for a mode that is taken away are those of the whole sensor', () => {
    const two = addMode(plan, 'C1', 'live');
    const { device } = cameraOf(two);
    const stated = { ...device, lens: { ...device.lens, statedIn: 'live' } };
    const now = { ...two, cameras: { ...two.cameras, C1: { ...cameraOf(two), device: stated } } };
    expect(cameraOf(removeMode(now, 'C1', 'live')).device.lens.statedIn).toBeNull();
  });
});

describe('the corridor format', () => {
  const on = setCorridor(plan, 'C1', true);
  if (!on.ok) throw new Error('refused');

  test('turns the camera on its side and records an upright picture', () => {
    const camera = cameraOf(on.value);
    expect(camera.roll).toBe(90);
    expect(isCorridor(camera.device)).toBe(true);
    expect(camera.device.modes[1]).toMatchObject({ use: 'rotated', frame: { width: 1520, height: 2688 } });
    expect(setCorridor(on.value, 'C1', true)).toMatchObject({ value: on.value });
  });

  test('and back again, without a mode more each time', () => {
    const off = setCorridor(on.value, 'C1', false);
    if (!off.ok) throw new Error('refused');
    expect(cameraOf(off.value)).toMatchObject({ roll: 0, device: { recorded: 'main' } });
    const again = setCorridor(off.value, 'C1', true);
    expect(again.ok && cameraOf(again.value).device.modes).toHaveLength(2);
  });

  test('is refused where the mount does not turn so far', () => {
    const { mount } = cameraOf(plan);
    if (!('limits' in mount)) throw new Error('no limits');
    const stiff = { ...mount, limits: { ...mount.limits, roll: 15 } };
    const held = { ...plan, cameras: { ...plan.cameras, C1: { ...cameraOf(plan), mount: stiff } } };
    const refused = setCorridor(held, 'C1', true);
    expect(refused.ok ? [] : refused.faults.map(({ code }) => code)).toEqual(['aim.roll']);
  });
});

test('what a sheet tells is set one by one; the same again is no change', () => {
  const set = setSheet(plan, 'C1', { powerClass: 3, imagesPerSecond: 20 });
  expect(cameraOf(set).sheet).toMatchObject({ powerClass: 3, imagesPerSecond: 20, bitRate: null });
  expect(setSheet(set, 'C1', { powerClass: 3 })).toBe(set);
  expect(cameraOf(setHousing(set, 'C1', 'dome')).housing).toBe('dome');
  expect(setHousing(set, 'C1', null)).toBe(set);
});
