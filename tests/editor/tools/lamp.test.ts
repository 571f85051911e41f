import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { demo } from '../plans.ts';
import { pointing } from './pointing.ts';

function inHand() {
  const editor = createEditor(demo());
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.hold('lamp');
  const now = () => editor.store.getState();
  const state = () => tools.store.getState().state;
  const lamp = (id: string) => {
    const found = now().plan.lamps[id];
    if (!found) throw new Error(`no lamp ${id}`);
    return found;
  };
  return { editor, tools, now, state, lamp };
}

const WALL: Vec3 = [8.6, 0, 2.2];
const GROUND: Vec3 = [3, -5, 0];

describe('the lamp tool', () => {
  test('hangs a lamp on the wall where it points, a little off it', () => {
    const { editor, tools, now, state, lamp } = inHand();
    tools.hover(pointing(now().plan, WALL));
    expect(state().ghost).toMatchObject({ kind: 'lamp', eye: [8.6, -0.1, 2.2] });
    expect(state().strip?.text).toBe('8.60 east · 0.10 south · 2.20 up');
    expect(now().undoName).toBeNull();
    tools.click(pointing(now().plan, WALL));
    expect(lamp('L1')).toMatchObject({ at: [8.6, -0.1], height: 2.2, light: { kind: 'range' } });
    expect(now()).toMatchObject({ tool: 'rest', selected: { kind: 'lamp', id: 'L1' }, undoName: 'Add L1' });
    editor.undo();
    expect(now().plan).toEqual(demo());
  });

  test('on the ground puts it on a post of a height that can be typed', () => {
    const { tools, now, lamp } = inHand();
    tools.hover(pointing(now().plan, GROUND));
    tools.type('height', 3.5);
    tools.enter();
    expect(lamp('L1')).toMatchObject({ at: [3, -5], height: 3.5 });
  });

  test('keys alone begin beside the longest wall and move it in tenths', () => {
    const { tools, state, lamp } = inHand();
    tools.enter();
    const { ghost } = state();
    if (ghost?.kind !== 'lamp') throw new Error('no lamp is shown');
    const before = ghost.eye;
    tools.nudge('right', false);
    tools.nudge('down', true);
    tools.enter();
    expect(lamp('L1').at[0]).toBeCloseTo(before[0] + 0.1, 9);
    expect(lamp('L1').at[1]).toBeCloseTo(before[1] - 1, 9);
  });

  test('Esc puts nothing there', () => {
    const { tools, now } = inHand();
    tools.hover(pointing(now().plan, GROUND));
    tools.escape();
    expect(now()).toMatchObject({ tool: 'rest', undoName: null });
  });

  test('in a plan that only reads adds nothing and says so', () => {
    const { editor, tools, now } = inHand();
    editor.store.setState({ readOnly: true });
    tools.click(pointing(now().plan, GROUND));
    expect(now().plan).toEqual(demo());
    expect(now().notice?.text).toContain('another tab');
  });
});

describe('the selected lamp', () => {
  test('is dragged by its sign over the ground at its height, in one step', () => {
    const { editor, tools, now, lamp } = inHand();
    editor.hold('rest');
    editor.select({ kind: 'lamp', id: 'door-lamp' });
    const from = pointing(now().plan, [5.03, -0.15, 2.3], { lamp: 'door-lamp', handle: 'lamp' });
    expect(tools.takes(from)).toBe(true);
    tools.drag(from, pointing(now().plan, GROUND));
    tools.drag(from, pointing(now().plan, [4, -6, 0]));
    tools.release();
    expect(lamp('door-lamp')).toMatchObject({ at: [4, -6], height: 2.3 });
    editor.undo();
    expect(now().plan).toEqual(demo());
  });

  test('is moved by arrows, and a run of them is one step', () => {
    const { editor, tools, now, lamp } = inHand();
    editor.hold('rest');
    editor.select({ kind: 'lamp', id: 'door-lamp' });
    for (let step = 0; step < 3; step += 1) tools.nudge('right', false);
    expect(lamp('door-lamp').at[0]).toBeCloseTo(5.33, 9);
    editor.undo();
    expect(now().plan).toEqual(demo());
  });

  test('is not held by the sign of another', () => {
    const { editor, tools, now } = inHand();
    editor.hold('rest');
    expect(tools.takes(pointing(now().plan, GROUND, { lamp: 'door-lamp' }))).toBe(false);
    tools.click(pointing(now().plan, GROUND, { lamp: 'door-lamp' }));
    expect(now().selected).toEqual({ kind: 'lamp', id: 'door-lamp' });
  });
});
