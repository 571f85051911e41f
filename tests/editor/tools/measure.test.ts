import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { createEditor } from '../../../src/editor/store.ts';
import type { SightPort } from '../../../src/editor/sightPort.ts';
import { cornerAngle, legOf, pathLength, ringArea } from '../../../src/editor/tools/measure/measured.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { demo } from '../plans.ts';
import { pointing } from './pointing.ts';

function inHand(sight?: SightPort) {
  const editor = createEditor(demo());
  if (sight) editor.lendSight(sight);
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.hold('measure');
  const now = () => tools.store.getState().state;
  const at = (point: Vec3, more = {}) =>
    pointing(editor.store.getState().plan, point, { free: true, ...more });
  return { editor, tools, now, at };
}

describe('what is measured', () => {
  test('a leg up a 3-4-5 triangle', () => {
    const leg = legOf([1, 1, 0], [1, 5, 3]);
    expect(leg).toMatchObject({ length: 5, ground: 4, rise: 3 });
    // arcsin 3/5.
    expect(leg.slope).toBeCloseTo(36.8699, 4);
    expect(legOf([1, 5, 3], [1, 1, 0]).rise).toBe(-3);
  });

  test('a path, and the same closed', () => {
    const square: Vec3[] = [
      [0, 0, 0],
      [2, 0, 0],
      [2, 2, 0],
      [0, 2, 0],
    ];
    expect(pathLength(square, false)).toBe(6);
    expect(pathLength(square, true)).toBe(8);
    expect(ringArea(square)).toBe(4);
  });

  test('an area on a slope is that of the slope, and an inner corner takes away', () => {
    const up: Vec3[] = [
      [0, 0, 0],
      [2, 0, 0],
      [2, 4, 3],
      [0, 4, 3],
    ];
    expect(ringArea(up)).toBeCloseTo(10, 12);
    const ell: Vec3[] = [
      [0, 0, 1],
      [3, 0, 1],
      [3, 1, 1],
      [1, 1, 1],
      [1, 3, 1],
      [0, 3, 1],
    ];
    expect(ringArea(ell)).toBeCloseTo(5, 12);
  });

  test('the angle between two legs', () => {
    expect(cornerAngle([1, 0, 0], [0, 0, 0], [0, 2, 0])).toBeCloseTo(90, 12);
    expect(cornerAngle([1, 0, 0], [0, 0, 0], [-1, 0, 0])).toBeCloseTo(180, 12);
    expect(cornerAngle([0, 0, 0], [0, 0, 0], [-1, 0, 0])).toBeNull();
  });
});

describe('measuring', () => {
  test('two presses make a line whose words say whether it is clear', () => {
    const asked: Vec3[][] = [];
    const { tools, now, at } = inHand((from, to) => {
      asked.push([[...from], [...to]]);
      return { blocked: null };
    });
    expect(now().name).toBe('measure armed');
    tools.click(at([15, -24, 0]));
    tools.click(at([18, -20, 0]));
    expect(now().strip?.text).toBe('5.00 long · level · clear');
    expect(asked.at(-1)?.map((point) => point.map((value) => Math.round(value * 1000) / 1000))).toEqual([
      [15, -24, 0],
      [18, -20, 0],
    ]);
  });

  test('a blocked line is drawn in two parts and says by what', () => {
    const { tools, now, at } = inHand(() => ({ blocked: { by: 'Van', after: 4.1, at: [16, -24, 0] } }));
    tools.click(at([15, -24, 0]));
    tools.click(at([20, -24, 0]));
    expect(now().strip?.text).toContain('blocked by Van, 4.10 on');
    const { ghost } = now();
    expect(ghost?.kind === 'sketch' && ghost.lines.map(({ style }) => style)).toEqual(['clear', 'blocked']);
    expect(ghost?.kind === 'sketch' && ghost.lines[0]?.points[1]).toEqual([16, -24, 0]);
  });

  test('a drag measures from its press to where it is', () => {
    const { tools, now, at } = inHand();
    const from = at([15, -24, 0]);
    expect(tools.takes(from)).toBe(true);
    tools.drag(from, at([15, -23, 0]));
    tools.drag(from, at([15, -21, 0]));
    tools.release();
    expect(now().strip?.text).toBe('3.00 long · level');
    tools.click(at([12, -24, 0]));
    expect(now().strip?.text).toBe('Pick where it ends.');
  });

  test('the first point again closes an area', () => {
    const { tools, now, at } = inHand();
    for (const point of [
      [15, -24, 0],
      [18, -24, 0],
      [18, -22, 0],
    ] as const)
      tools.click(at(point));
    expect(now().strip?.text).toContain('5.00 in all · last 2.00 · 90.0° at the corner');
    const onFirst = at([15, -24, 0]);
    tools.click({
      ...onFirst,
      screen: { ...onFirst.screen, spot: onFirst.screen.place([15, -24, 0]) ?? [9, 9] },
    });
    // 3 + 2 + √13.
    expect(now().strip?.text).toBe('3.00 m² · 8.61 around');
  });

  test('a typed length with an arrow goes on that way; a wrong one stays', () => {
    const { tools, now, at } = inHand();
    tools.click(at([15, -24, 0]));
    expect(tools.typed('length', '2.5', 'right')).toBeNull();
    expect(tools.typed('length', '150 cm', 'up')).toBeNull();
    expect(now().strip?.text).toContain('4.00 in all');
    expect(tools.typed('length', 'much', 'up')).toContain('not a length');
    expect(now().strip?.text).toContain('4.00 in all');
  });

  test('Ctrl+Z takes the last point, Esc wipes, and again leaves the tool', () => {
    const { editor, tools, now, at } = inHand();
    editor.run('Rename', (plan) => ({ ...plan, name: 'Other' }));
    tools.click(at([15, -24, 0]));
    tools.click(at([15, -22, 0]));
    editor.undo();
    expect(now().strip?.text).toBe('Pick where it ends.');
    expect(editor.store.getState().plan.name).toBe('Other');
    tools.escape();
    expect(now().name).toBe('measure armed');
    // Esc dropped the chain; Ctrl+Z brings it back to hand.
    editor.undo();
    expect(now().name).toBe('measure chaining');
    tools.escape();
    tools.escape();
    expect(now().name).toBe('rest');
    expect(editor.store.getState().tool).toBe('rest');
  });

  test('what is kept stays to be seen, and can be wiped', () => {
    const { editor, tools, now, at } = inHand();
    tools.click(at([15, -24, 0]));
    tools.click(at([15, -22, 0]));
    expect(now().strip?.choices?.[0]?.key).toBe('keep');
    tools.choose('keep', 'keep');
    expect(editor.store.getState().measured).toHaveLength(1);
    expect(now().name).toBe('measure armed');
    const { ghost } = now();
    expect(ghost?.kind === 'sketch' && ghost.plates.map(({ text }) => text)).toEqual(['2.00']);
    tools.choose('wipe', 'wipe');
    expect(editor.store.getState().measured).toHaveLength(0);
  });

  test('a corner of what is pointed at within reach is taken', () => {
    const { editor, tools, now } = inHand();
    const { plan } = editor.store.getState();
    const house = plan.structures['house'];
    if (house?.kind !== 'building') throw new Error('the sample has a house');
    const [corner] = house.outline;
    if (!corner) throw new Error('it has corners');
    // On its south wall, 3 cm from the lower left corner.
    const near = pointing(plan, [corner[0] + 0.03, corner[1], house.base + 0.001], {}, [1, -3, 1.5]);
    tools.hover(near);
    const { ghost } = now();
    const mark = ghost?.kind === 'sketch' ? ghost.marks.find(({ sign }) => sign === 'corner') : undefined;
    expect(mark?.at.slice(0, 2)).toEqual([...corner]);
  });
});
