import { expect, test } from 'vitest';
import { standingAt } from '../../../src/editor/standingAt.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { demo } from '../plans.ts';
import { pointing } from './pointing.ts';

function picking() {
  const editor = createEditor(demo());
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.hold('stand');
  return { editor, tools, now: () => editor.store.getState() };
}

test('somebody stands where a press picks, and no step of history is made of it', () => {
  const { tools, now } = picking();
  tools.hover(pointing(now().plan, [3, -5, 0]));
  expect(now().standing.at).toBeNull();
  tools.click(pointing(now().plan, [4, -6, 0]));
  expect(now()).toMatchObject({ tool: 'rest', standing: { at: [4, -6], ahead: 4 }, undoName: null });
});

test('arrows move the mark from where it is, Enter takes it; Esc leaves the former', () => {
  const { editor, tools, now } = picking();
  tools.hover(pointing(now().plan, [3, -5, 0]));
  tools.nudge('left', true);
  tools.nudge('up', false);
  tools.enter();
  expect(now()).toMatchObject({ tool: 'rest', standing: { at: [2, -4.9] } });
  editor.hold('stand');
  tools.nudge('right', true);
  tools.escape();
  expect(now()).toMatchObject({ tool: 'rest', standing: { at: [2, -4.9] } });
});

test('ahead of a lens is along its pan; a place that was picked comes first', () => {
  const camera = { eye: [1, 2, 3], pan: 90 } as const;
  expect(standingAt({ ahead: 4, at: null }, camera)).toEqual([5, 2]);
  expect(standingAt({ ahead: 4, at: [7, 8] }, camera)).toEqual([7, 8]);
});
