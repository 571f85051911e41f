import { describe, expect, test } from 'vitest';
import {
  aimTrouble,
  inCorridor,
  lookLevel,
  straightOf,
  switchCorridor,
} from '../../src/editor/settings/aimActs.ts';
import { panOutSetting, rollSetting, tiltSetting } from '../../src/editor/settings/aimSettings.ts';
import { limitSettings, plateSettings } from '../../src/editor/settings/bracketSettings.ts';
import { cornersOf, moveToCorner } from '../../src/editor/settings/cornerChoices.ts';
import { endAngles, setStated, statedAngleSettings } from '../../src/editor/settings/lensSettings.ts';
import { modeAngle, modePixels, modeShare } from '../../src/editor/settings/modeSettings.ts';
import { setMountFace, setMountKind } from '../../src/editor/settings/mountKind.ts';
import { facesOf } from '../../src/editor/settings/hostChoices.ts';
import { knownSetting, type OptionalSetting, type Setting } from '../../src/editor/settings/setting.ts';
import { sharpnessSettings, sheetSettings } from '../../src/editor/settings/sheetSettings.ts';
import { createEditor } from '../../src/editor/store.ts';
import { attempt } from '../../src/editor/shaping/attempt.ts';
import { settingOf } from '../../src/optics/setting.ts';
import { checkPlan } from '../../src/plan/checkPlan.ts';
import { moveMount } from '../../src/plan/commands/moveMount.ts';
import { addMode } from '../../src/plan/commands/setModes.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { demo } from './plans.ts';

const plan = demo();
const cameraOf = (now: Plan, id = 'C2') => {
  const camera = now.cameras[id];
  if (!camera) throw new Error(`no ${id}`);
  return camera;
};

/** The plan after a setting was given a value; throws where it is refused. */
function given(now: Plan, setting: Setting | undefined, value: number): Plan {
  const tried = setting && attempt(now, (before) => setting.change(before, value));
  if (!tried?.ok) throw new Error(tried ? tried.words : 'no such setting');
  return tried.plan;
}

describe('numbers that may not be known', () => {
  const optional = (now: Plan): readonly OptionalSetting[] => [
    ...sheetSettings(cameraOf(now)),
    ...sharpnessSettings(cameraOf(now)),
    ...limitSettings(cameraOf(now)),
  ];

  test.each(optional(plan).map(({ key }) => key))(
    '%s is filled in, set to its bounds, and forgotten again',
    (key) => {
      const of = (now: Plan) => optional(now).find((one) => one.key === key);
      const first = of(plan);
      if (!first) throw new Error('gone');
      for (const value of [first.first, first.bounds.least, first.bounds.most]) {
        const tried = attempt(plan, (now) => first.change(now, value));
        expect(tried.ok && checkPlan(tried.plan).ok).toBe(true);
        expect(tried.ok && of(tried.plan)?.value).toBe(value);
        const gone = tried.ok ? of(tried.plan)?.change(tried.plan, null) : null;
        if (!gone || 'ok' in gone) throw new Error('refused');
        expect(knownSetting(of(gone) ?? first)).toBeNull();
      }
    },
  );
});

test('the plate has a size and a place off its hole; a camera on a pole has none', () => {
  const sizes = plateSettings(cameraOf(plan));
  expect(sizes.map(({ key }) => key)).toEqual(['plate width', 'plate height', 'plate right', 'plate up']);
  const wider = given(plan, sizes[0], 0.2);
  const off = given(wider, plateSettings(cameraOf(wider))[3], -0.05);
  expect(cameraOf(off).mount).toMatchObject({ plate: { width: 0.2, height: 0.12, right: 0, up: -0.05 } });
  const pole = setMountKind(plan, cameraOf(plan), 'pole', [4, -3, 2.4]);
  expect([plateSettings(cameraOf(pole)), limitSettings(cameraOf(pole)).length]).toEqual([[], 4]);
});

describe('how far a camera turns', () => {
  const held = moveMount(plan, 'C2', { limits: { pan: 75, tilt: { up: 10, down: 60 }, roll: 15 } });
  const camera = cameraOf(held);
  const straight = straightOf(held, camera) ?? NaN;

  test('bounds the fields of tilt, roll and pan from straight out', () => {
    // C2 is on the garage's south wall.
    expect(straight).toBe(180);
    expect(panOutSetting(camera, straight)).toMatchObject({ value: 3, bounds: { least: -75, most: 75 } });
    expect(tiltSetting(camera).bounds).toEqual({ least: -10, most: 60 });
    expect(rollSetting(camera).bounds).toEqual({ least: -15, most: 15 });
    expect(cameraOf(given(held, panOutSetting(camera, straight), -20)).pan).toBe(160);
  });

  test('past them is said where the camera looks so already', () => {
    expect(aimTrouble(held, camera)).toEqual([]);
    expect(aimTrouble(held, { ...camera, pan: 300, tilt: 61 }).map(({ code }) => code)).toEqual([
      'aim.pan',
      'aim.tilt',
    ]);
  });

  test('a corridor format that it does not reach is refused in words, and nothing changes', () => {
    const editor = createEditor(held);
    switchCorridor(editor, camera);
    expect(editor.store.getState().plan).toBe(held);
    expect(editor.store.getState().notice?.text).toContain('Roll stops at 15° each way');
  });
});

test('level is level, also in the corridor format, and each is one step', () => {
  const editor = createEditor(plan);
  const now = () => cameraOf(editor.store.getState().plan);
  switchCorridor(editor, now());
  expect([inCorridor(now()), now().roll]).toEqual([true, 90]);
  lookLevel(editor, { ...now(), tilt: 24 });
  expect([now().tilt, now().roll]).toEqual([0, 90]);
  editor.undo();
  editor.undo();
  expect(editor.store.getState().plan).toEqual(plan);
});

describe('a part of the sensor for one picture', () => {
  const two = addMode(plan, 'C1', 'stabilised');
  const of = (now: Plan, key: string) => {
    const mode = cameraOf(now, 'C1').device.modes[1];
    if (!mode) throw new Error('no second picture');
    return [...modePixels(cameraOf(now, 'C1'), mode), ...modeShare(cameraOf(now, 'C1'), mode)].find(
      (one) => one.key === `stabilised ${key}`,
    );
  };

  test('a share, or the angle across, gives it a part in the middle of the shape of its pixels', () => {
    const half = given(two, of(two, 'share'), 50);
    // 2688 × 1520 on half of 5.37 mm: 2.685 by 1.518 mm, of 3.04 mm.
    const { crop, cropKnown } = cameraOf(half, 'C1').device.modes[1] ?? {};
    expect(crop?.width).toBeCloseTo(0.5, 12);
    expect((crop?.height ?? 0) * 3.04).toBeCloseTo((2.685 * 1520) / 2688, 9);
    expect(crop?.x).toBeCloseTo(0.25, 12);
    expect(cropKnown).toBe(true);
    const angle = of(two, 'angle');
    const typed = given(two, angle, 60);
    expect(of(typed, 'angle')?.value).toBeCloseTo(60, 9);
  });

  test('its angle is the one that the engine has when it is recorded', () => {
    const { device } = cameraOf(two, 'C1');
    const mode = device.modes[1];
    if (!mode) throw new Error('no second picture');
    const { setting } = settingOf({ ...device, recorded: 'stabilised' }, 'C1');
    expect(setting.sensor.width).toBeCloseTo(5.37 * 0.9, 12);
    expect(modeAngle(cameraOf(two, 'C1'), mode)).toBeLessThan(100);
    expect(
      modeAngle(cameraOf(two, 'C1'), { ...mode, crop: { x: 0, y: 0, width: 1, height: 1 } }),
    ).toBeCloseTo(100, 9);
  });

  test('a picture on its side takes its share along the sensor’s height', () => {
    const turned = addMode(plan, 'C1', 'rotated');
    const camera = cameraOf(turned, 'C1');
    const mode = camera.device.modes[1];
    if (!mode) throw new Error('no second picture');
    const [share, angle] = modeShare(camera, mode);
    expect(share?.value).toBeCloseTo(100, 9);
    // Its whole width is the sensor's height, so that its angle is the vertical one of the picture that lies.
    expect(angle?.value).toBeCloseTo(endAngles(camera, 'down')[0] ?? NaN, 9);
    const half = given(turned, share, 50);
    // Half of 3.04 mm across, and 2688 / 1520 of that up, of 5.37 mm.
    const { crop } = cameraOf(half, 'C1').device.modes[1] ?? {};
    expect(crop?.height).toBeCloseTo(0.5, 12);
    expect((crop?.width ?? 0) * 5.37).toBeCloseTo((1.52 * 2688) / 1520, 9);
  });
});

test('a vertical angle is stated first as it follows, and then as typed', () => {
  const camera = cameraOf(plan, 'C1');
  const stated = setStated(plan, camera, true, endAngles(camera, 'down'), 'down');
  const [angle] = statedAngleSettings(cameraOf(stated, 'C1'), 'down');
  const [follows] = endAngles(camera, 'down');
  expect(angle?.value).toBeCloseTo(follows ?? NaN, 1);
  const typed = given(stated, angle, 50);
  expect(cameraOf(typed, 'C1').device.lens.statedVfov).toEqual({ atShortest: 50, atLongest: 50 });
  expect(endAngles(camera, 'across')[0]).toBeCloseTo(100, 9);
});

test('a corner bracket goes from corner to corner, and to another host', () => {
  const corner = setMountKind(plan, cameraOf(plan), 'corner', [10, -1, 2.4]);
  const { mount } = cameraOf(corner);
  if (mount.kind !== 'corner') throw new Error('no corner');
  expect(cornersOf(corner, mount).map(({ walls }) => walls)).toEqual([
    'west wall, south wall',
    'south wall, east wall',
    'east wall, north wall',
    'north wall, west wall',
  ]);
  expect(cameraOf(moveToCorner(corner, cameraOf(corner), 3)).mount).toEqual({ ...mount, face: 3 });
  const [wall] = facesOf(plan, 'house', 'wall');
  if (!wall) throw new Error('no wall');
  expect(cameraOf(setMountFace(corner, cameraOf(corner), wall)).mount).toMatchObject({
    kind: 'corner',
    host: 'house',
    height: mount.height,
    reach: mount.reach,
  });
});
