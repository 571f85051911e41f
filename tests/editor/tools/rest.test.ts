import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { placeMount } from '../../../src/model/mounting.ts';
import { axesOf } from '../../../src/optics/projection.ts';
import { markThing } from '../../../src/plan/commands/markThing.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { demo } from '../plans.ts';
import { moved, pointing, VIEWER } from './pointing.ts';

function atRest(plan: Plan = demo()) {
  const editor = createEditor(plan);
  const tools = createToolbox(editor, LATER_TOOLS);
  const now = () => editor.store.getState();
  const camera = (id: string) => {
    const found = now().plan.cameras[id];
    if (!found) throw new Error(`no ${id}`);
    return found;
  };
  const eyeOf = (id: string): Vec3 => {
    const placed = placeMount(camera(id).mount, now().plan.structures, 0);
    if (!placed.ok) throw new Error('not placed');
    return placed.value.eye;
  };
  return { editor, tools, now, camera, eyeOf };
}

describe('at rest: selecting', () => {
  test('a click selects what it meets, a click on nothing clears', () => {
    const { tools, now } = atRest();
    tools.click(pointing(now().plan, [5.5, 3.5, 6]));
    expect(now().selected).toEqual({ kind: 'structure', id: 'house' });
    tools.click({ ...pointing(now().plan, [17, -12, 0]), struck: null });
    expect(now().selected).toBeNull();
  });

  test('a camera’s sign goes before what is behind it', () => {
    const { tools, now } = atRest();
    tools.click(pointing(now().plan, [5.5, 3.5, 6], { camera: 'C2' }));
    expect(now().selected).toEqual({ kind: 'camera', id: 'C2' });
  });

  test('hovering lights what a click would select', () => {
    const { tools, now } = atRest();
    tools.hover(pointing(now().plan, [5.5, 3.5, 6]));
    expect(now().hovered).toEqual({ kind: 'structure', id: 'house' });
  });

  test('Esc clears the selection and changes nothing', () => {
    const { editor, tools, now } = atRest();
    editor.select({ kind: 'camera', id: 'C1' });
    expect(tools.escape()).toBe(true);
    expect(now().selected).toBeNull();
    expect(now().undoName).toBeNull();
  });
});

describe('at rest: dragging', () => {
  test('a drag on what is not selected is not the tool’s', () => {
    const { editor, tools, now } = atRest();
    expect(tools.takes(pointing(now().plan, [5.5, 3.5, 6]))).toBe(false);
    editor.select({ kind: 'camera', id: 'C1' });
    expect(tools.takes(pointing(now().plan, [5.5, 3.5, 6]))).toBe(false);
    expect(tools.takes(pointing(now().plan, [5.5, 3.5, 6], { handle: 'body' }))).toBe(true);
  });

  test('the cross aims the axis at the spot at the shown target height, as one step', () => {
    const { editor, tools, now, camera, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C1' });
    editor.ask({ kind: 'face', height: 1.6 });
    const spot: Vec3 = [3, -5, 1.6];
    const from = pointing(now().plan, [2, -3, 0], { handle: 'cross' });
    tools.drag(from, pointing(now().plan, [1, -4, 1.6]));
    tools.drag(from, pointing(now().plan, spot));
    expect(now().gesturing).toBe(true);
    tools.release();
    expect(now().gesturing).toBe(false);
    const { forward } = axesOf(camera('C1'));
    const eye = eyeOf('C1');
    const t = (1.6 - eye[2]) / forward[2];
    // Tenths of a degree at 6 m are a centimetre; along a flat axis they are more.
    expect(Math.hypot(eye[0] + t * forward[0] - spot[0], eye[1] + t * forward[1] - spot[1])).toBeLessThan(
      0.05,
    );
    expect(now().undoName).toBe('Aim C1');
    editor.undo();
    expect(camera('C1')).toEqual(demo().cameras['C1']);
  });

  test('Shift turns without tilting', () => {
    const { editor, tools, now, camera } = atRest();
    editor.select({ kind: 'camera', id: 'C1' });
    const before = camera('C1');
    const from = pointing(now().plan, [2, -3, 0], { handle: 'cross' });
    tools.drag(from, pointing(now().plan, [7, -5, 0], { shift: true }));
    tools.release();
    expect(camera('C1').tilt).toBe(before.tilt);
    expect(camera('C1').pan).not.toBe(before.pan);
  });

  test('a wall under the pointer is aimed at where it is met', () => {
    const { editor, tools, now, camera, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    // The van's side, from the east.
    const viewer: Vec3 = [60, -5, 20];
    const from = pointing(now().plan, [12, -6, 0], { handle: 'cross' }, viewer);
    const { plan } = now();
    const van = plan.structures['van'];
    if (van?.kind !== 'vehicle') throw new Error('the sample has a van');
    const to = pointing(plan, [van.at[0], van.at[1], van.height * 0.6], {}, viewer);
    expect(to.struck?.structure).toBe('van');
    tools.drag(from, to);
    tools.release();
    const { forward } = axesOf(camera('C2'));
    const eye = eyeOf('C2');
    const at = to.struck?.point ?? [0, 0, 0];
    const run = [at[0] - eye[0], at[1] - eye[1], at[2] - eye[2]] as const;
    const far = Math.hypot(...run);
    const cosine = (run[0] * forward[0] + run[1] * forward[1] + run[2] * forward[2]) / far;
    expect(cosine).toBeGreaterThan(Math.cos((0.1 * Math.PI) / 180));
  });

  test('Esc while dragging restores, and leaves no step', () => {
    const { editor, tools, now, camera } = atRest();
    editor.select({ kind: 'camera', id: 'C1' });
    const before = now().plan;
    tools.drag(pointing(before, [2, -3, 0], { handle: 'cross' }), pointing(before, [7, -5, 0]));
    expect(camera('C1')).not.toEqual(before.cameras['C1']);
    tools.escape();
    expect(now().plan).toBe(before);
    expect(now().undoName).toBeNull();
    expect(now().selected).toEqual({ kind: 'camera', id: 'C1' });
  });

  test('a locked camera does not move', () => {
    const { editor, tools, now } = atRest(markThing(demo(), { kind: 'camera', id: 'C1' }, { locked: true }));
    editor.select({ kind: 'camera', id: 'C1' });
    expect(tools.takes(pointing(now().plan, [2, -3, 0], { handle: 'body' }))).toBe(false);
  });

  test('the body slides along and up its wall by as much as the pointer moves on it', () => {
    const { editor, tools, now, camera, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    const eye = eyeOf('C2');
    const from = pointing(now().plan, eye, { handle: 'body' });
    tools.drag(from, pointing(now().plan, moved(eye, [-1, 0, -0.2]), { free: true }));
    tools.release();
    const after = eyeOf('C2');
    expect(after[0]).toBeCloseTo(eye[0] - 1, 2);
    expect(after[1]).toBeCloseTo(eye[1], 6);
    expect(after[2]).toBeCloseTo(eye[2] - 0.2, 2);
    expect(camera('C2').mount.kind).toBe('arm');
    expect(now().undoName).toBe('Slide C2');
  });

  test('it does not go where it cannot be fixed, and the strip says why', () => {
    const { editor, tools, now, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    const eye = eyeOf('C2');
    const from = pointing(now().plan, eye, { handle: 'body' });
    tools.drag(from, pointing(now().plan, moved(eye, [-0.8, 0, 0]), { free: true }));
    // The hole would lie in the garage door.
    tools.drag(from, pointing(now().plan, moved(eye, [-1, 0, -1]), { free: true }));
    expect(tools.store.getState().state.strip?.trouble).toBe(true);
    tools.release();
    expect(eyeOf('C2')[0]).toBeCloseTo(eye[0] - 0.8, 2);
    expect(eyeOf('C2')[2]).toBeCloseTo(eye[2], 2);
  });

  test('it stops at the end of its wall, and Shift keeps to one way', () => {
    const { editor, tools, now, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    const eye = eyeOf('C2');
    const from = pointing(now().plan, eye, { handle: 'body' });
    tools.drag(from, pointing(now().plan, moved(eye, [30, 0, 0.3]), { shift: true, free: true, ...noSolid }));
    tools.release();
    expect(eyeOf('C2')[0]).toBeCloseTo(14.6, 6);
    expect(eyeOf('C2')[2]).toBeCloseTo(eye[2], 6);
  });

  test('past a corner it goes on to the next wall and counts from its nearer corner', () => {
    const { editor, tools, now, camera } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    // From the south-east both walls of the garage are in sight.
    const viewer: Vec3 = [60, -60, 45];
    const { plan } = now();
    const placed = placeMount(camera('C2').mount, plan.structures, 0);
    if (!placed.ok) throw new Error('not placed');
    const from = pointing(plan, placed.value.eye, { handle: 'body' }, viewer);
    const to = pointing(plan, [14.6, 2.4, 2], { free: true }, viewer);
    expect(to.struck?.structure).toBe('garage');
    tools.drag(from, to);
    tools.release();
    const { mount } = camera('C2');
    if (mount.kind !== 'arm') throw new Error('still an arm');
    expect(mount.face).toBe(1);
    expect(mount.corner).toBe('start');
    expect(mount.distance).toBeCloseTo(1, 2);
    expect(mount.height).toBeCloseTo(2, 2);
  });

  test('under a soffit it slides along and out, never past fascia or wall', () => {
    const { editor, tools, now, camera, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C1' });
    const eye = eyeOf('C1');
    const from = pointing(now().plan, eye, { handle: 'body' });
    tools.drag(from, pointing(now().plan, moved(eye, [-2, -5, 0]), { free: true }));
    tools.release();
    const { mount } = camera('C1');
    if (mount.kind !== 'soffit') throw new Error('still under the soffit');
    expect(eyeOf('C1')[0]).toBeCloseTo(eye[0] - 2, 2);
    expect(mount.inset).toBeLessThan(0.5);
    expect(mount.inset).toBeGreaterThan(0.4);
  });

  test('a wall seen edge-on is not dragged on, and the strip says so', () => {
    const { editor, tools, now, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    const eye = eyeOf('C2');
    const above: Vec3 = [eye[0], eye[1], 80];
    const before = now().plan;
    tools.drag(
      pointing(before, eye, { handle: 'body' }, above),
      pointing(before, moved(eye, [1, 0, 0]), {}, above),
    );
    expect(tools.store.getState().state.strip?.text).toMatch(/edge-on/);
    tools.release();
    expect(now().plan).toBe(before);
  });
});

const noSolid = { struck: null };

describe('at rest: keys', () => {
  test('arrows move a selected camera on its wall by a centimetre, Shift ten', () => {
    const { editor, tools, eyeOf } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    const eye = eyeOf('C2');
    tools.nudge('left', false);
    tools.nudge('up', true);
    expect(eyeOf('C2')[0]).toBeCloseTo(eye[0] - 0.01, 9);
    expect(eyeOf('C2')[2]).toBeCloseTo(eye[2] + 0.1, 9);
  });

  test('on a wall seen from the north, right is west', () => {
    const plan = demo();
    const back = {
      ...plan.cameras['C2'],
      mount: {
        kind: 'flush',
        host: 'house',
        face: 2,
        corner: 'start',
        distance: 2,
        height: 2.4,
        standOff: 0.05,
      },
    };
    const { editor, tools, eyeOf } = atRest({
      ...plan,
      cameras: { ...plan.cameras, C2: back as Plan['cameras'][string] },
    });
    editor.select({ kind: 'camera', id: 'C2' });
    const eye = eyeOf('C2');
    tools.nudge('right', true);
    expect(eyeOf('C2')[0]).toBeCloseTo(eye[0] - 0.1, 9);
  });

  test('steps within a second are one step of history', () => {
    const { editor, tools, now } = atRest();
    editor.select({ kind: 'camera', id: 'C2' });
    const before = now().plan;
    for (let i = 0; i < 5; i += 1) tools.nudge('left', false);
    editor.undo();
    expect(now().plan).toEqual(before);
  });

  test('with nothing selected the arrows are left to the view', () => {
    const { tools, now } = atRest();
    const before = now().plan;
    tools.nudge('left', false);
    expect(now().plan).toBe(before);
  });

  test('nothing is in sight from where the viewer stands but what is there', () => {
    expect(pointing(demo(), [5.5, 0, 1.5]).ray.from).toEqual(VIEWER);
  });
});
