import { describe, expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../../src/base/vector.ts';
import { sentenceFor, type Facts } from '../../src/editor/firstSteps.ts';
import { createEditor } from '../../src/editor/store.ts';
import { followFirstSteps } from '../../src/editor/stepping.ts';
import { LATER_TOOLS } from '../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../src/editor/tools/toolbox.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import { house, site } from './site.ts';
import { fromAbove } from './tools/planView.ts';
import { pointing } from './tools/pointing.ts';

function beginning(plan = emptyPlan('new', 'New plan')) {
  const editor = createEditor(plan);
  const tools = createToolbox(editor, LATER_TOOLS);
  const steps = followFirstSteps(editor, tools);
  /** The panel's words, else those of the strip, which are not said twice. */
  const words = () => steps.store.getState().sentence ?? tools.store.getState().state.strip?.text ?? '';
  const panel = () => steps.store.getState().sentence;
  const click = (...at: Vec2) => {
    tools.hover(fromAbove(at));
    tools.click(fromAbove(at));
  };
  const at = (point: Vec3) => pointing(editor.store.getState().plan, point);
  return { editor, tools, steps, words, panel, click, at };
}

/** A house of 8 by 6 whose height is taken as it is. */
function housed() {
  const begun = beginning();
  begun.editor.hold('outline');
  begun.click(0, 0);
  begun.tools.typed('length', '8x6', 'enter');
  begun.tools.enter();
  return begun;
}

describe('the first steps', () => {
  test('say one sentence after the other as the house is drawn', () => {
    const { editor, tools, words, panel, click } = beginning();
    expect(panel()).toBeNull();
    editor.hold('outline');
    expect(words()).toBe('Pick the first corner.');
    click(0, 0);
    expect(words()).toBe('Type a length, then an arrow for its direction. Or pick the next corner.');
    // The strip goes over to the numbers; what to do stays.
    tools.hover(fromAbove([3, 0.4]));
    expect(panel()).toBe('Type a length, then an arrow for its direction. Or pick the next corner.');
    click(8, 0);
    click(8, 6);
    tools.hover(fromAbove([4, 6.4]));
    expect(panel()).toBe('Pick the first corner, or press Enter, to close.');
    tools.enter();
    expect(words()).toBe('Pull it up to the eaves, or type the height.');
    tools.typed('height', '2.5', 'enter');
    expect(words()).toContain('Give it a roof, or leave it flat.');
    tools.enter();
    expect(panel()).toBe('No camera yet. Press C, then point at a wall.');
  });

  test('go on with the camera, and end with what is done next', () => {
    const { editor, tools, words, panel, at } = housed();
    tools.enter();
    editor.hold('camera');
    expect(words()).toContain('Point at a wall, or up under the eaves.');
    tools.hover(at([4, 0, 2.2]));
    expect(panel()).toBe('Press to fix it.');
    tools.click(at([4, 0, 2.2]));
    expect(panel()).toBe('Now pick what it should look at.');
    tools.click(at([4, -6, 0]));
    expect(panel()).toContain('This is what it sees');
    editor.hold('line');
    expect(panel()).toBeNull();
    editor.hold('rest');
    expect(panel()).toBeNull();
  });

  test('do not come again for a second house, and come back where the first is undone', () => {
    const { editor, words, panel } = housed();
    editor.hold('outline');
    expect(panel()).toBeNull();
    editor.hold('rest');
    editor.undo();
    editor.hold('outline');
    expect(words()).toBe('Pick the first corner.');
  });

  test('leave a plan alone in which something stands, until they are asked for; they can be put away', () => {
    const { editor, steps, panel } = beginning(site(house()));
    editor.hold('outline');
    expect(panel()).toBeNull();
    editor.hold('rest');
    steps.show();
    expect(panel()).toBe('No camera yet. Press C, then point at a wall.');
    steps.putAway();
    expect(panel()).toBeNull();
    editor.hold('camera');
    expect(panel()).toBeNull();
  });

  test('begin anew with an empty plan that is opened', () => {
    const { editor, words, panel, steps } = beginning(site(house()));
    expect(panel()).toBeNull();
    editor.open(emptyPlan('other', 'Other'));
    editor.hold('outline');
    expect(words()).toBe('Pick the first corner.');
    steps.dispose();
    editor.hold('rest');
  });

  test('say nothing with a tool that is no first step', () => {
    const facts = (name: string): Facts => ({ structures: 0, cameras: 0, tool: { name, ghost: null } });
    expect(sentenceFor('house', facts('line armed'))).toBeNull();
    expect(sentenceFor('camera', facts('line armed'))).toBeNull();
    expect(sentenceFor('off', facts('outline armed'))).toBeNull();
  });
});
