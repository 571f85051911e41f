import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { placeMount } from '../../../src/model/mounting.ts';
import { axesOf } from '../../../src/optics/projection.ts';
import { demo } from '../plans.ts';
import { pointing } from './pointing.ts';

function inHand() {
  const editor = createEditor(demo());
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.hold('camera');
  const now = () => editor.store.getState();
  const state = () => tools.store.getState().state;
  const fourth = () => {
    const camera = now().plan.cameras['C4'];
    if (!camera) throw new Error('no fourth camera');
    return camera;
  };
  return { editor, tools, now, state, fourth };
}
const WALL: Vec3 = [8.6, 0, 2.2];

describe('the camera tool', () => {
  test('says where a camera would go, from both corners', () => {
    const { tools, now, state } = inHand();
    tools.hover(pointing(now().plan, WALL));
    expect(state().name).toBe('camera seeking');
    expect(state().ghost).not.toBeNull();
    expect(state().strip?.text).toContain('2.20 up · 2.40 from the east corner · 8.60 from the west corner');
    expect(now().undoName).toBeNull();
  });

  test('on a roof nothing fits, and the strip says what would', () => {
    const { tools, now, state } = inHand();
    tools.hover(pointing(now().plan, [5.5, 2, 5]));
    expect(state().ghost).toBeNull();
    expect(state().cursor).toBe('not-allowed');
    expect(state().strip?.text).toMatch(/no bracket fits/i);
    tools.click(pointing(now().plan, [5.5, 2, 5]));
    expect(now().plan).toEqual(demo());
  });

  test('keys alone begin on the longest wall, move the spot, fix it and look straight out', () => {
    const { tools, now, state, fourth } = inHand();
    expect(state().strip?.text).toMatch(/Enter begins on the longest wall/);
    tools.enter();
    expect(state().ghost).not.toBeNull();
    expect(state().strip?.text).toContain('2.70 up');
    tools.nudge('up', true);
    tools.nudge('right', true);
    expect(state().strip?.text).toContain('2.80 up');
    expect(now().undoName).toBeNull();
    tools.enter();
    tools.enter();
    expect(state().name).toBe('rest');
    expect(fourth().mount).toMatchObject({ kind: 'flush', height: 2.8 });
    expect(fourth().tilt).toBe(20);
    expect(now().undoName).toBe('Add C4');
  });

  test('keys begin on what is selected', () => {
    const { editor, tools, fourth } = inHand();
    editor.select({ kind: 'structure', id: 'garage' });
    tools.enter();
    tools.enter();
    tools.enter();
    // The garage is 3.60 by 5.60: the middle of a longer wall lies 2.80 from its corner.
    expect(fourth().mount).toMatchObject({ host: 'garage', distance: 2.8 });
  });

  test('near the eaves it goes beneath them', () => {
    const { tools, now, state } = inHand();
    const low: Vec3 = [4, -60, 3];
    tools.hover(pointing(now().plan, [4, 0, 2.9], {}, low));
    expect(state().strip?.text).toMatch(/^under the soffit, /);
  });

  test('a click fixes, a second one aims there: one step, selected, tool put down', () => {
    const { editor, tools, now, state, fourth } = inHand();
    tools.click(pointing(now().plan, WALL));
    expect(state().name).toBe('camera aiming');
    expect(now().gesturing).toBe(true);
    const spot: Vec3 = [6, -6, 0];
    tools.hover(pointing(now().plan, [3, -4, 0]));
    tools.click(pointing(now().plan, spot));
    expect(state().name).toBe('rest');
    expect(now().tool).toBe('rest');
    expect(now().selected).toEqual({ kind: 'camera', id: 'C4' });
    expect(now().undoName).toBe('Add C4');
    expect(fourth().mount).toMatchObject({
      kind: 'flush',
      host: 'house',
      face: 0,
      corner: 'end',
      distance: 2.4,
      height: 2.2,
    });
    const placed = placeMount(fourth().mount, now().plan.structures, 0);
    if (!placed.ok) throw new Error('not placed');
    const { forward } = axesOf(fourth());
    const { eye } = placed.value;
    const t = -eye[2] / forward[2];
    expect(Math.hypot(eye[0] + t * forward[0] - 6, eye[1] + t * forward[1] + 6)).toBeLessThan(0.06);
    editor.undo();
    expect(now().plan).toEqual(demo());
  });

  test('one drag from wall to target does both', () => {
    const { tools, now, fourth } = inHand();
    const from = pointing(now().plan, WALL);
    expect(tools.takes(from)).toBe(true);
    tools.drag(from, pointing(now().plan, [8, -2, 0]));
    tools.drag(from, pointing(now().plan, [6, -6, 0]));
    tools.release();
    expect(now().tool).toBe('rest');
    expect(now().undoName).toBe('Add C4');
    expect(fourth().pan).toBeGreaterThan(180);
  });

  test('a drag that begins where nothing fits adds nothing', () => {
    const { tools, now } = inHand();
    const from = pointing(now().plan, [5.5, 2, 5]);
    tools.drag(from, pointing(now().plan, [6, -6, 0]));
    tools.release();
    expect(now().plan).toEqual(demo());
    expect(now().tool).toBe('camera');
  });

  test('Enter aims straight out and 20° down', () => {
    const { tools, now, fourth } = inHand();
    tools.hover(pointing(now().plan, WALL));
    tools.enter();
    tools.enter();
    expect(fourth().pan).toBeCloseTo(180, 9);
    expect(fourth().tilt).toBe(20);
    expect(now().tool).toBe('rest');
  });

  test('typed height and distance replace the pointed ones', () => {
    const { tools, now, state, fourth } = inHand();
    tools.hover(pointing(now().plan, WALL));
    expect(state().strip?.fields.map(({ key }) => key)).toEqual(['height', 'distance']);
    tools.type('height', 2.7);
    tools.type('distance', 3.1);
    tools.enter();
    tools.enter();
    expect(fourth().mount).toMatchObject({ height: 2.7, distance: 3.1, corner: 'end' });
  });

  test('a typed height past the top of the wall is refused in words, and nothing is added', () => {
    const { tools, now, state } = inHand();
    tools.hover(pointing(now().plan, WALL));
    tools.type('height', 30);
    expect(state().ghost).toBeNull();
    expect(state().strip?.trouble).toBe(true);
    tools.enter();
    expect(now().plan).toEqual(demo());
  });

  test('on the ground it is a post of three metres whose bracket turns with the aim', () => {
    const { tools, now, fourth } = inHand();
    tools.click(pointing(now().plan, [15, -5, 0]));
    tools.click(pointing(now().plan, [10, -5, 0]));
    const { mount, pan } = fourth();
    expect(mount).toMatchObject({ kind: 'pole', at: [15, -5], height: 3 });
    if (mount.kind !== 'pole') throw new Error('a post');
    expect(mount.facing).toBeCloseTo(pan, 0);
    expect(pan).toBeCloseTo(270, 0);
  });

  test('the key again takes the next bracket', () => {
    const { tools, now, state } = inHand();
    tools.again();
    tools.hover(pointing(now().plan, WALL));
    expect(state().strip?.text).toMatch(/^on an arm/);
    tools.again();
    tools.again();
    tools.hover(pointing(now().plan, WALL));
    expect(state().strip?.text).toMatch(/^flat on the wall/);
  });

  test('Esc steps back once: the aim and with it the camera, then the tool', () => {
    const { tools, now, state } = inHand();
    tools.click(pointing(now().plan, WALL));
    tools.hover(pointing(now().plan, [6, -6, 0]));
    tools.escape();
    expect(now().plan).toEqual(demo());
    expect(now().undoName).toBeNull();
    expect(state().name).toBe('camera seeking');
    tools.escape();
    expect(now().tool).toBe('rest');
    expect(state().name).toBe('rest');
  });

  test('another tool in hand drops the camera that is being aimed', () => {
    const { editor, tools, now, state } = inHand();
    tools.click(pointing(now().plan, WALL));
    editor.hold('rest');
    expect(now().plan).toEqual(demo());
    expect(now().gesturing).toBe(false);
    expect(state().name).toBe('rest');
  });

  test('a plan that another tab writes takes no camera, and says so', () => {
    const { editor, tools, now, state } = inHand();
    editor.store.setState({ readOnly: true });
    tools.click(pointing(now().plan, WALL));
    expect(now().plan).toEqual(demo());
    expect(now().selected).toBeNull();
    expect(now().notice?.text).toMatch(/another tab/);
    expect(state().name).toBe('camera seeking');
  });

  test('undo in mid-aim takes the camera away, and the tool seeks again', () => {
    const { editor, tools, now, state } = inHand();
    tools.click(pointing(now().plan, WALL));
    editor.undo();
    expect(now().plan).toEqual(demo());
    tools.hover(pointing(now().plan, [6, -6, 0]));
    expect(state().name).toBe('camera seeking');
  });
});
