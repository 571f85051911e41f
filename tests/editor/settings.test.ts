import { describe, expect, test } from 'vitest';
import { panSetting, rangeSetting, rollSetting, tiltSetting } from '../../src/editor/settings/aimSettings.ts';
import { facesOf } from '../../src/editor/settings/hostChoices.ts';
import {
  focalSettings,
  pixelSettings,
  sensorSettings,
  setStated,
  setVarifocal,
  statedAngleSettings,
} from '../../src/editor/settings/lensSettings.ts';
import { setMountFace, setMountKind } from '../../src/editor/settings/mountKind.ts';
import type { MountKind } from '../../src/editor/settings/mountKind.ts';
import { mountChange } from '../../src/editor/settings/mountChange.ts';
import { mountSettings, switchCorner } from '../../src/editor/settings/mountSettings.ts';
import type { Setting } from '../../src/editor/settings/setting.ts';
import { setPassage, setRoofKind } from '../../src/editor/settings/structureChoices.ts';
import { setGot, structureSettings } from '../../src/editor/settings/structureSettings.ts';
import { groundHeight } from '../../src/model/ground.ts';
import { placeMount } from '../../src/model/mounting.ts';
import { setMount } from '../../src/plan/commands/setMount.ts';
import type { Plan, PlanCamera } from '../../src/plan/plan.ts';
import { attempt } from '../../src/editor/shaping/attempt.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { demo } from './plans.ts';
import { bare } from '../plan/wholePlan.ts';

const plan = demo();
const cameraOf = (from: Plan, id = 'C1'): PlanCamera => {
  const camera = from.cameras[id];
  if (!camera) throw new Error(`no camera ${id}`);
  return camera;
};
const eyeOf = (from: Plan, id = 'C1') => {
  const placed = placeMount(cameraOf(from, id).mount, from.structures, groundHeight(from.ground));
  if (!placed.ok) throw new Error(`${id} is nowhere: ${placed.faults.map(({ code }) => code).join()}`);
  return placed.value.eye;
};

/** What is wrong with a plan when it is written and read again, as a file would be. */
const faultsOf = (changed: Plan): readonly string[] => {
  const read = readPlan(planText(changed));
  return read.ok ? [] : read.faults.map(({ code, path }) => `${code} ${path.join('.')}`);
};

/** Holds that a setting can be set to either bound and the plan is still one that opens, and reads back as set. */
function expectSettable(from: Plan, setting: Setting, again: (now: Plan) => readonly Setting[]): void {
  for (const value of [setting.bounds.least, setting.bounds.most]) {
    const tried = attempt(from, (now) => setting.change(now, value));
    // What stands on a thing may stop it before its bounds, in words; nothing else may.
    if (!tried.ok && tried.words.startsWith('Stops here: ')) continue;
    if (!tried.ok) throw new Error(`${setting.key} is refused at ${value}: ${tried.words}`);
    const changed = tried.plan;
    expect({ value, faults: faultsOf(changed) }).toEqual({ value, faults: [] });
    const now = again(changed).find(({ key }) => key === setting.key);
    // A bearing and a roll may come back as the same direction, a turn away.
    const turns = setting.key === 'roll' || setting.measure === 'bearing' ? [0, 360, -360] : [0];
    expect(turns.map((turn) => value + turn)).toContain(now?.value);
  }
}

describe('every number of the setting sheet can be set to its bounds, and the plan still opens', () => {
  const aim = (now: Plan) =>
    [panSetting, tiltSetting, rollSetting, rangeSetting].map((one) => one(cameraOf(now)));
  const lens = (now: Plan) => [
    ...sensorSettings(cameraOf(now)),
    ...pixelSettings(cameraOf(now)),
    ...focalSettings(cameraOf(now)),
    ...statedAngleSettings(cameraOf(now)),
  ];

  test.each(aim(plan).map((setting) => [setting.label, setting] as const))('%s', (_, setting) => {
    expectSettable(plan, setting, aim);
  });

  test.each(lens(plan).map((setting) => [setting.label, setting] as const))(
    'fixed lens: %s',
    (_, setting) => {
      expectSettable(plan, setting, lens);
    },
  );

  const zoom = setStated(
    setVarifocal(plan, cameraOf(plan), true),
    cameraOf(setVarifocal(plan, cameraOf(plan), true)),
    true,
    [90, 30],
  );
  test.each(lens(zoom).map((setting) => [setting.label, setting] as const))('varifocal: %s', (_, setting) => {
    expectSettable(zoom, setting, (now) => lens(now).map((one) => one));
  });

  test.each(
    Object.values(plan.structures).flatMap((one) =>
      structureSettings(one).map((set) => [one.name, set.label, one.id, set] as const),
    ),
  )('%s: %s', (_, __, id, setting) => {
    expectSettable(plan, setting, (now) => {
      const structure = now.structures[id];
      return structure ? structureSettings(structure) : [];
    });
  });

  test.each(['flush', 'arm', 'soffit', 'pole', 'corner'] as const)('mount: %s', (kind) => {
    const mounted = setMountKind(plan, cameraOf(plan), kind, eyeOf(plan));
    for (const setting of mountSettings(mounted, cameraOf(mounted)))
      expectSettable(mounted, setting, (now) => mountSettings(now, cameraOf(now)));
  });
});

describe('a camera fixed another way', () => {
  test.each([
    ['arm', 0.35],
    ['flush', 0.35],
    ['pole', 0.01],
  ] as const)('%s keeps its lens where it was, as near as the bracket allows', (kind, near) => {
    const before = eyeOf(plan);
    const after = eyeOf(setMountKind(plan, cameraOf(plan), kind, before));
    expect(Math.hypot(...after.map((n, axis) => n - (before[axis] ?? 0)))).toBeLessThan(near);
  });

  test('an arm instead of a plate keeps its hole, and the lens moves', () => {
    const flat = setMount(plan, 'C1', {
      kind: 'flush',
      ...bare,
      limits: { pan: 70, tilt: null, roll: null },
      host: 'house',
      face: 0,
      corner: 'end',
      distance: 2.4,
      height: 2.4,
      standOff: 0.08,
    });
    const arm = setMountKind(flat, cameraOf(flat), 'arm', eyeOf(flat));
    // A new arm hangs its lens 0.1 below the hole.
    expect(cameraOf(arm).mount).toMatchObject({
      kind: 'arm',
      corner: 'end',
      distance: 2.4,
      height: 2.3,
      drop: 0.1,
      limits: { pan: 70 },
    });
    expect(mountChange(plan, cameraOf(flat).mount, cameraOf(arm).mount)).toEqual([
      'Lens 2.30 m up, was 2.40 m.',
      'Lens 0.30 m out from the wall, was 0.08 m.',
      'The hole stays where it was.',
    ]);
    const back = setMountKind(arm, cameraOf(arm), 'flush', eyeOf(arm));
    expect(cameraOf(back).mount).toMatchObject({ height: 2.4, distance: 2.4 });
    const corner = setMountKind(arm, cameraOf(arm), 'corner', eyeOf(arm));
    // The east end of the south wall is where the east wall, face 1, begins.
    expect(cameraOf(corner).mount).toMatchObject({ kind: 'corner', face: 1, height: 2.4 });
    expect(mountChange(plan, cameraOf(arm).mount, cameraOf(corner).mount)[2]).toBe(
      'The hole moves by 2.40 m.',
    );
    const hung = setMountKind(arm, cameraOf(arm), 'soffit', eyeOf(arm));
    expect(mountChange(plan, cameraOf(arm).mount, cameraOf(hung).mount).at(-1)).toBe(
      'How far it turns is as before: check that for this mount.',
    );
    // C1 hangs 0.3 out under the eaves, an arm reaches as far.
    const fromEaves = setMountKind(plan, cameraOf(plan), 'arm', eyeOf(plan));
    expect(mountChange(plan, cameraOf(plan).mount, cameraOf(fromEaves).mount)[1]).toBe(
      'Lens still 0.30 m out from the wall.',
    );
    const pole = setMountKind(arm, cameraOf(arm), 'pole', eyeOf(arm));
    expect(mountChange(plan, cameraOf(arm).mount, cameraOf(pole).mount)).toEqual([
      'Lens still 2.30 m up.',
      'No hole in a wall any more.',
    ]);
  });

  test('back and forth through all kinds never loses the wall', () => {
    let now = plan;
    for (const kind of [
      'pole',
      'arm',
      'corner',
      'flush',
      'soffit',
      'arm',
      'pole',
      'soffit',
    ] satisfies MountKind[]) {
      now = setMountKind(now, cameraOf(now), kind, eyeOf(now));
      expect(cameraOf(now).mount.kind).toBe(kind);
      expect(faultsOf(now)).toEqual([]);
      expect(eyeOf(now)).toHaveLength(3);
    }
    expect(cameraOf(now).mount).toMatchObject({ host: 'house', face: 0 });
  });

  test('goes to each wall of each host and has a place there or says why not', () => {
    for (const face of ['house', 'garage', 'bin-store', 'garden-wall'].flatMap((host) =>
      facesOf(plan, host, 'wall'),
    )) {
      const moved = setMountFace(plan, cameraOf(plan, 'C2'), face);
      const placed = placeMount(cameraOf(moved, 'C2').mount, moved.structures, 0);
      const codes = placed.ok ? [] : placed.faults.map(({ code }) => code);
      // An opening may be just there; a place above or beside the wall may not come about.
      const others = codes.filter((code) => code !== 'mount.opening');
      expect({ face: face.name, others }).toEqual({ face: face.name, others: [] });
    }
  });

  test('measured from the other corner stays in its place', () => {
    const switched = switchCorner(plan, cameraOf(plan));
    expect(cameraOf(switched).mount).toMatchObject({ corner: 'start', distance: 8.6 });
    expect(eyeOf(switched)).toEqual(eyeOf(plan));
    expect(cameraOf(switchCorner(switched, cameraOf(switched))).mount).toEqual(cameraOf(plan).mount);
  });

  test('one that lost its wall is offered another all the same', () => {
    const lost = setMount(plan, 'C1', {
      kind: 'flush',
      ...bare,
      host: 'gone',
      face: 0,
      corner: 'start',
      distance: 1,
      height: 2,
      standOff: 0.1,
    });
    expect(cameraOf(setMountKind(lost, cameraOf(lost), 'arm', null)).mount).toMatchObject({
      kind: 'arm',
      host: 'house',
    });
  });
});

test('a lens made varifocal and fixed again keeps its setting', () => {
  const zoom = setVarifocal(plan, cameraOf(plan), true);
  expect(cameraOf(zoom).device.lens).toMatchObject({ focalLength: 2.8, shortest: 2.8 });
  expect(cameraOf(zoom).device.lens.longest).toBeGreaterThan(2.8);
  expect(cameraOf(setVarifocal(zoom, cameraOf(zoom), false)).device.lens).toMatchObject({
    shortest: 2.8,
    longest: 2.8,
  });
});

test('how a size was got changes alone, and typing a size makes it measured', () => {
  const guessed = setGot(plan, 'house', 'roof pitch', 'guessed');
  expect(guessed.structures['house']?.got).toMatchObject({ roof: 'guessed', height: 'measured' });
  const tree = plan.structures['tree'];
  const height = tree && structureSettings(tree).find(({ key }) => key === 'height');
  expect(height?.got).toBe('guessed');
  const taller = height && attempt(plan, (now) => height.change(now, 6));
  expect(taller).toMatchObject({
    ok: true,
    plan: { structures: { tree: { height: 6, got: { height: 'measured' } } } },
  });
  expect(setGot(plan, 'house', 'roof pitch', 'measured')).toBe(plan);
});

test('a roof that gets a pitch or a parapet for the first time gets one that shows', () => {
  const hip = setRoofKind(plan, 'garage', 'hip');
  expect(hip.structures['garage']).toMatchObject({ roof: { kind: 'hip', pitch: 35 } });
  const parapet = setRoofKind(plan, 'house', 'parapet');
  expect(parapet.structures['house']).toMatchObject({ roof: { kind: 'parapet', parapet: 0.3, pitch: 38 } });
  expect(faultsOf(hip)).toEqual([]);
});

test('only barriers and blocks let through what they are told to', () => {
  expect(setPassage(plan, 'back-fence', 'screen').structures['back-fence']).toMatchObject({
    passage: 'screen',
  });
  expect(setPassage(plan, 'house', 'screen')).toBe(plan);
});
