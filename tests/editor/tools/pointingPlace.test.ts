import { expect, test } from 'vitest';
import { firstLooks, lookTo } from '../../../src/editor/settings/looks.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { demo } from '../plans.ts';
import { pointing } from './pointing.ts';

function pointingAt() {
  const editor = createEditor(demo());
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.ask({ kind: 'face', height: 1.6 });
  lookTo(editor, firstLooks(editor, 'place'));
  const now = () => editor.store.getState();
  const first = now().target;
  editor.hold('place');
  return { editor, tools, now, first };
}

test('faces look to the place that is pointed at, while it is and after the press', () => {
  const { tools, now } = pointingAt();
  tools.hover(pointing(now().plan, [3, -5, 0]));
  expect(now().target).toMatchObject({ kind: 'face', looks: { kind: 'place', at: [3, -5] } });
  tools.click(pointing(now().plan, [4, -6, 0]));
  expect(now()).toMatchObject({ tool: 'rest', target: { looks: { at: [4, -6] } }, undoName: null });
});

test('Esc puts the former place back', () => {
  const { tools, now, first } = pointingAt();
  tools.hover(pointing(now().plan, [3, -5, 0]));
  tools.escape();
  expect(now()).toMatchObject({ tool: 'rest', target: first });
});

test('arrows move the place, Enter takes it', () => {
  const { tools, now, first } = pointingAt();
  if (first.kind !== 'face' || first.looks?.kind !== 'place') throw new Error('no place');
  const [x, y] = first.looks.at;
  tools.nudge('left', true);
  tools.nudge('up', false);
  tools.enter();
  expect(now()).toMatchObject({ tool: 'rest' });
  const { target } = now();
  if (target.kind !== 'face' || target.looks?.kind !== 'place') throw new Error('no place');
  expect(target.looks.at[0]).toBeCloseTo(x - 1, 9);
  expect(target.looks.at[1]).toBeCloseTo(y + 0.1, 9);
});

test('what is no face looks nowhere', () => {
  const editor = createEditor(demo());
  lookTo(editor, { kind: 'bearing', bearing: 90 });
  expect(editor.store.getState().target).toEqual({ kind: 'ground', height: 0 });
});
