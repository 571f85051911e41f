import { describe, expect, test } from 'vitest';
import { addCamera, newCamera } from '../../../src/plan/commands/addCamera.ts';
import { aimCamera } from '../../../src/plan/commands/aimCamera.ts';
import { moveMount } from '../../../src/plan/commands/moveMount.ts';
import { setLens } from '../../../src/plan/commands/setLens.ts';
import { setMount } from '../../../src/plan/commands/setMount.ts';
import { setRange } from '../../../src/plan/commands/setRange.ts';
import { setSensor } from '../../../src/plan/commands/setSensor.ts';
import type { Lens } from '../../../src/optics/device.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { bare, cameraOn, wholePlan } from '../wholePlan.ts';
import { NO_LIMITS } from '../../../src/optics/mount.ts';

const lensOf = (plan: Plan): Lens | undefined => plan.cameras['C1']?.device.lens;

describe('aimCamera', () => {
  test('keeps pan a bearing and roll a half turn either way', () => {
    const camera = aimCamera(wholePlan(), 'C1', { pan: -45, roll: 270 }).cameras['C1'];
    expect(camera).toMatchObject({ pan: 315, tilt: 20, roll: -90 });
  });

  test('changes the one camera and nothing else', () => {
    const plan = wholePlan();
    const next = aimCamera(plan, 'C1', { tilt: 33 });
    expect(next.cameras['C1']?.tilt).toBe(33);
    expect(next.cameras['C2']).toBe(plan.cameras['C2']);
    expect(next.structures).toBe(plan.structures);
    expect(plan).toEqual(wholePlan());
  });

  test('that changes nothing returns the same plan', () => {
    const plan = wholePlan();
    expect(aimCamera(plan, 'C1', { pan: 180, tilt: 20, roll: 0 })).toBe(plan);
    expect(aimCamera(plan, 'C1', { pan: 540 })).toBe(plan);
  });

  test.each([{ pan: NaN }, { tilt: Infinity }, { tilt: 90.1 }, { roll: NaN }])('refuses %j', (aim) => {
    expect(() => aimCamera(wholePlan(), 'C1', aim)).toThrow(RangeError);
  });

  test.each(['C9', 'constructor'])('refuses a camera that is not there: %s', (id) => {
    expect(() => aimCamera(wholePlan(), id, { tilt: 3 })).toThrow(id);
  });
});

describe('mounts', () => {
  test('moveMount slides and raises, the kind stays', () => {
    const next = moveMount(wholePlan(), 'C1', { distance: 1.25, height: 2.5 });
    expect(next.cameras['C1']?.mount).toMatchObject({
      kind: 'arm',
      host: 'house',
      distance: 1.25,
      height: 2.5,
      reach: 0.3,
    });
  });

  test('moveMount refuses a measure that the kind lacks: a loose lens has no height of its own', () => {
    expect(() => moveMount(wholePlan(), 'C2', { height: 2 })).toThrow('a loose mount has no height');
    expect(() => moveMount(wholePlan(), 'C2', { eye: [0, NaN, 2] })).toThrow(RangeError);
  });

  test('setMount takes any kind, and the same one is no change', () => {
    const plan = wholePlan();
    const soffit = {
      kind: 'soffit',
      ...bare,
      host: 'house',
      face: 0,
      corner: 'start',
      distance: 1,
      inset: 0.2,
      drop: 0.1,
    } as const;
    expect(setMount(plan, 'C1', soffit).cameras['C1']?.mount).toEqual(soffit);
    expect(setMount(plan, 'C2', { kind: 'loose', eye: [4, -5, 3] })).toBe(plan);
    expect(setMount(plan, 'C2', { kind: 'loose', eye: [4, -5, 3.1] })).not.toBe(plan);
  });
});

describe('setLens', () => {
  test('a new focal length of a fixed lens is a new lens, whose angle nobody has stated yet', () => {
    expect(lensOf(setLens(wholePlan(), 'C1', { focalLength: 4 }))).toEqual({
      shortest: 4,
      longest: 4,
      focalLength: 4,
      statedHfov: null,
      statedVfov: null,
      statedIn: null,
      fNumber: 1.6,
    });
  });

  test('the angle can be stated with it, or alone, or taken back', () => {
    const four = setLens(wholePlan(), 'C1', { focalLength: 4, hfov: 72 });
    expect(lensOf(four)?.statedHfov).toEqual({ atShortest: 72, atLongest: 72 });
    expect(lensOf(setLens(four, 'C1', { hfov: 70 }))?.statedHfov?.atShortest).toBe(70);
    expect(lensOf(setLens(four, 'C1', { hfov: null }))?.statedHfov).toBeNull();
  });

  test('a varifocal lens keeps its range and its angles while its setting turns', () => {
    const statedHfov = { atShortest: 100, atLongest: 30 };
    const zoom = setLens(wholePlan(), 'C1', { shortest: 2.8, longest: 12, focalLength: 2.8, statedHfov });
    expect(lensOf(setLens(zoom, 'C1', { focalLength: 6 }))).toMatchObject({
      shortest: 2.8,
      longest: 12,
      focalLength: 6,
      statedHfov,
    });
    expect(() => setLens(zoom, 'C1', { focalLength: 13 })).toThrow('outside 2.8 to 12 mm');
  });

  test('a stated angle replaces a law that was known itself', () => {
    const known = setLens(wholePlan(), 'C1', { law: 0.4 });
    expect(lensOf(known)?.law).toBe(0.4);
    expect(lensOf(setLens(known, 'C1', { fNumber: 2 }))?.law).toBe(0.4);
    expect(lensOf(setLens(known, 'C1', { hfov: 95 }))).not.toHaveProperty('law');
  });

  test('the same values are no change', () => {
    const plan = wholePlan();
    expect(setLens(plan, 'C1', { focalLength: 2.8, hfov: 100 })).toBe(plan);
  });

  test.each([{ focalLength: 0 }, { focalLength: NaN }, { hfov: -1 }, { hfov: Infinity }])(
    'refuses %j',
    (change) => {
      expect(() => setLens(wholePlan(), 'C1', change)).toThrow(RangeError);
    },
  );
});

test('setSensor changes the area and the recorded picture only', () => {
  const plan = wholePlan();
  const small = {
    id: 'small',
    name: 'Small',
    frame: { width: 640, height: 360 },
    crop: { x: 0, y: 0, width: 1, height: 1 },
    cropKnown: true,
    use: 'live' as const,
  };
  const camera = cameraOn('C1', { kind: 'loose', eye: [0, 0, 3] });
  const two = {
    ...plan,
    cameras: {
      ...plan.cameras,
      C1: { ...camera, device: { ...camera.device, modes: [...camera.device.modes, small] } },
    },
  };
  const device = setSensor(two, 'C1', { sensor: { width: 6.4 }, frame: { width: 3840, height: 2160 } })
    .cameras['C1']?.device;
  expect(device?.sensor).toEqual({ width: 6.4, height: 3.04 });
  expect(device?.modes.map(({ frame }) => frame.width)).toEqual([3840, 640]);
  expect(setSensor(two, 'C1', { frame: { width: 2688 } })).toBe(two);
  expect(() => setSensor(two, 'C1', { sensor: { width: 0 } })).toThrow(RangeError);
});

test('setRange takes any distance above 0', () => {
  expect(setRange(wholePlan(), 'C1', 12.5).cameras['C1']?.range).toBe(12.5);
  for (const range of [0, -1, NaN, Infinity])
    expect(() => setRange(wholePlan(), 'C1', range)).toThrow(RangeError);
});

describe('addCamera', () => {
  const pole = {
    kind: 'pole',
    at: [1, 2],
    height: 3,
    reach: 0.2,
    facing: 90,
    diameter: 0.1,
    limits: NO_LIMITS,
  } as const;

  test('gives the next free name and puts the camera last', () => {
    const plan = wholePlan();
    const camera = newCamera(plan, pole, { pan: 90, tilt: 20 });
    expect(camera).toMatchObject({ id: 'C3', name: 'C3', pan: 90, tilt: 20, mount: pole });
    expect(addCamera(plan, camera).cameraOrder).toEqual(['C1', 'C2', 'C3']);
  });

  test('fills a gap, and minds names that a person gave', () => {
    const plan = wholePlan();
    const { C2 } = plan.cameras;
    if (!C2) throw new Error('C2 is gone');
    const gap: Plan = { ...plan, cameras: { C2: { ...C2, name: 'C1' } }, cameraOrder: ['C2'] };
    expect(newCamera(gap, pole, { pan: 0, tilt: 0 }).id).toBe('C3');
  });

  test('refuses an id that is taken', () => {
    const plan = wholePlan();
    expect(() => addCamera(plan, cameraOn('house', pole))).toThrow('house is taken');
  });
});
