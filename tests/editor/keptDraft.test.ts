import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { draftFrom, keepDraft, takeUpDraft } from '../../src/editor/keptDraft.ts';
import { createEditor } from '../../src/editor/store.ts';
import { LATER_TOOLS } from '../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../src/editor/tools/toolbox.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import { memoryShelf, settled } from './device.ts';
import { fromAbove } from './tools/planView.ts';

/** A window on a plan; another one on the same device is what a reload, or a killed tab opened anew, comes to. */
function opened(device = memoryShelf(), plan = emptyPlan('drawn', 'Drawn')) {
  const editor = createEditor(plan);
  keepDraft(editor, device.shelf);
  const tools = createToolbox(editor, LATER_TOOLS);
  const state = () => tools.store.getState().state;
  const click = (...at: Vec2) => {
    tools.hover(fromAbove(at));
    tools.click(fromAbove(at));
  };
  const length = (text: string) => tools.typed('length', text, 'right');
  return { device, editor, tools, state, click, length, now: () => editor.store.getState() };
}

/** An outline of three corners, every length of it typed, not closed. */
function drawing(device = memoryShelf()) {
  const window = opened(device);
  window.editor.hold('outline');
  window.click(1, 2);
  window.length('4.2');
  window.tools.typed('length', '1.6', 'up');
  return window;
}

describe('a draft', () => {
  test('comes back to hand after a reload, and is finished as if nothing had been', async () => {
    const { device } = drawing();
    const again = opened(device);
    await takeUpDraft(again.editor, device.shelf);
    expect(again.now().notice?.text).toBe('Your outline of 3 corners is back in hand.');
    expect(again.now().tool).toBe('outline');
    expect(again.state().name).toBe('outline chaining');
    again.tools.enter();
    expect(Object.values(again.now().plan.structures)).toMatchObject([
      {
        outline: [
          [1, 2],
          [5.2, 2],
          [5.2, 3.6],
        ],
        got: { outline: 'measured' },
      },
    ]);
    await settled();
    expect(device.drafts.size).toBe(0);
  });

  test('taken up before there is a Model is in the hand of the toolbox made later', async () => {
    const { device } = drawing();
    const editor = createEditor(emptyPlan('drawn', 'Drawn'));
    await takeUpDraft(editor, device.shelf);
    const tools = createToolbox(editor, LATER_TOOLS);
    expect(tools.store.getState().state.chain?.corners).toEqual([
      [1, 2],
      [5.2, 2],
      [5.2, 3.6],
    ]);
    tools.back();
    expect(editor.store.getState().chain?.corners).toHaveLength(2);
  });

  test('is there with each corner at once, and goes with Backspace and Esc; Ctrl+Z after Esc keeps it again', async () => {
    const { device, tools, editor } = drawing();
    const kept = () => draftFrom(device.drafts.get('drawn'))?.corners.length ?? 0;
    expect(kept()).toBe(3);
    tools.back();
    expect(kept()).toBe(2);
    tools.hover(fromAbove([9, 9]));
    expect(kept()).toBe(2);
    tools.escape();
    expect(device.drafts.size).toBe(0);
    editor.undo();
    expect(kept()).toBe(2);
    await settled();
  });

  test('keeps its kind: a hedge goes on as a hedge', async () => {
    const { device, tools, editor, click } = opened();
    editor.hold('line');
    tools.again();
    tools.again();
    click(0, 0);
    const again = opened(device);
    await takeUpDraft(again.editor, device.shelf);
    expect(again.now().notice?.text).toBe('Your hedge of one corner is back in hand.');
    again.length('5');
    again.tools.enter();
    expect(Object.values(again.now().plan.structures)).toMatchObject([
      {
        sort: 'hedge',
        line: [
          [0, 0],
          [5, 0],
        ],
      },
    ]);
  });

  test('stays with its plan: another one is not given it, and leaves it there', async () => {
    const { device, editor } = drawing();
    editor.open(emptyPlan('other', 'Other'));
    await takeUpDraft(editor, device.shelf);
    expect(editor.store.getState()).toMatchObject({ tool: 'rest', chain: null });
    editor.open(emptyPlan('drawn', 'Drawn'));
    await takeUpDraft(editor, device.shelf);
    expect(editor.store.getState().chain?.corners).toHaveLength(3);
    // Nor does the plan that makes way take the draft of the next with it.
    device.drafts.set('other', device.drafts.get('drawn'));
    editor.open(emptyPlan('other', 'Other'));
    await takeUpDraft(editor, device.shelf);
    expect(editor.store.getState()).toMatchObject({ tool: 'outline', plan: { id: 'other' } });
  });

  test('is left to the tab that edits the plan', async () => {
    const { device } = drawing();
    const reading = opened(device);
    await takeUpDraft(reading.editor, device.shelf);
    reading.editor.store.setState({ readOnly: true });
    expect(reading.now()).toMatchObject({ tool: 'rest', chain: null });
    expect(draftFrom(device.drafts.get('drawn'))?.corners).toHaveLength(3);
  });

  const good = {
    tool: 'outline',
    kind: 'building',
    corners: [[0, 0]],
    axes: { up: 0, of: null },
    typed: true,
  };

  test.each([
    undefined,
    7,
    '{"tool":',
    JSON.stringify({ ...good, tool: 'camera' }),
    JSON.stringify({ ...good, corners: [] }),
    JSON.stringify({ ...good, corners: [[0, null]] }),
    JSON.stringify({ ...good, corners: [[0, 1e12]] }),
    JSON.stringify({ ...good, axes: { up: 90, of: null } }),
  ])('that the device holds as %j is none', (held) => {
    expect(draftFrom(JSON.stringify(good))).toEqual(good);
    expect(draftFrom(held)).toBeNull();
  });
});
