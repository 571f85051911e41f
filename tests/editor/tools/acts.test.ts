import { describe, expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import { garage, house, site, window } from '../site.ts';
import { atRest, thing } from './atRest.ts';

/** On the roofs, which are flat. */
const ON_HOUSE: Vec3 = [4, 3, 2.7];

describe('copying', () => {
  test('a number and an arrow place copies, the field repeats the step', () => {
    const { editor, tools, now, outline, state } = atRest(site(house(), garage()), thing('garage'));
    expect(tools.act('copy', null)).toBe(true);
    expect(state().name).toBe('rest copying');
    expect(tools.typed('distance', '4', 'right')).toBeNull();
    expect(tools.typed('copies', '3', 'tab')).toBeNull();
    tools.enter();
    expect(state().name).toBe('rest');
    const ids = now().selection.flatMap((one) => ('id' in one ? [one.id] : []));
    expect(ids).toHaveLength(3);
    expect(ids.map((id) => outline(id)[0])).toEqual([
      [17, 0],
      [21, 0],
      [25, 0],
    ]);
    expect(now().undoName).toBe('Copy Garage');
    editor.undo();
    expect(now().plan.structureOrder).toEqual(['house', 'garage']);
  });

  test('the copy is in hand and goes where the press is', () => {
    const { tools, now, outline, at } = atRest(site(house(), garage()), thing('garage'));
    tools.act('copy', null);
    tools.hover(at([20, -8, 0], { free: true }));
    tools.click(at([24.5, -10, 0], { free: true }));
    const [copy] = now().selection;
    // Its middle lies 1.5 east and 3 north of its first corner.
    expect(copy && 'id' in copy && outline(copy.id)[0]).toEqual([23, -13]);
  });

  test('no copy lies upon what it is of; Esc leaves none', () => {
    const { tools, now, state } = atRest(site(garage()), thing('garage'));
    tools.act('copy', null);
    tools.enter();
    expect(state().strip?.trouble).toBe(true);
    expect(tools.typed('copies', '0', 'tab')).toContain('1 to 200');
    tools.escape();
    expect(state().name).toBe('rest');
    expect(now().plan.structureOrder).toEqual(['garage']);
  });
});

describe('acts', () => {
  test('R turns by fifteen degrees, Shift R back', () => {
    const { editor, tools, now, outline } = atRest(site(garage()), thing('garage'));
    tools.act('turn right', null);
    // Six to the north of three to the east, about (14.5, 3).
    const [c, s] = [Math.cos(Math.PI / 12), Math.sin(Math.PI / 12)];
    expect(outline('garage')[0]?.[0]).toBeCloseTo(14.5 - 1.5 * c - 3 * s, 9);
    expect(outline('garage')[0]?.[1]).toBeCloseTo(3 + 1.5 * s - 3 * c, 9);
    tools.act('turn left', null);
    expect(outline('garage')[0]?.[0]).toBeCloseTo(13, 9);
    expect(now().undoName).toBe('Turn Garage');
    editor.undo();
    expect(outline('garage')[0]).toEqual([13, 0]);
  });

  test('X puts what was on the left of its longest wall on the right', () => {
    const plan = site(house({ openings: [window('w')] }));
    const { tools, now } = atRest(plan, thing('house'));
    tools.act('mirror', null);
    const found = now().plan.structures['house'];
    if (found?.kind !== 'building') throw new Error('no house');
    const [opening] = found.openings;
    const a = opening && found.outline[opening.face];
    const b = opening && found.outline[(opening.face + 1) % 4];
    if (!opening || !a || !b) throw new Error('no window');
    const way = Math.sign(b[0] - a[0]);
    expect([a[1], b[1]]).toEqual([0, 0]);
    const ends = [a[0] + way * opening.along, a[0] + way * (opening.along + opening.width)].toSorted(
      (p, q) => p - q,
    );
    expect(ends[0]).toBeCloseTo(6, 9);
    expect(ends[1]).toBeCloseTo(7, 9);
  });

  test('K puts a corner into the edge under the pointer, J takes it out again', () => {
    const { tools, outline, at } = atRest(site(house()), thing('house'));
    tools.act('split', at([5.003, 0, 0]));
    expect(outline('house')).toHaveLength(5);
    expect(outline('house')[1]?.[0]).toBeCloseTo(5, 9);
    tools.act('join', at([5, 0, 0]));
    expect(outline('house')).toHaveLength(4);
    expect(outline('house')[1]).toEqual([8, 0]);
  });

  test('K away from any edge says what to do', () => {
    const { tools, now, outline, at } = atRest(site(house()), thing('house'));
    tools.act('split', at([20, -10, 0]));
    expect(outline('house')).toHaveLength(4);
    expect(now().notice?.text).toContain('Point at an edge');
  });

  test('three corners are the least', () => {
    const plan = site(
      house({
        outline: [
          [0, 0],
          [8, 0],
          [8, 6],
        ],
      }),
    );
    const { tools, now, outline, at } = atRest(plan, thing('house'));
    tools.act('join', at([8, 0, 0]));
    expect(outline('house')).toHaveLength(3);
    expect(now().notice?.tone).toBe('trouble');
  });

  test('a bow puts corners within 5 mm of its arc into the edge', () => {
    const { tools, outline, at, state } = atRest(site(house()), thing('house'));
    tools.act('bow', at([4, 0, 0]));
    expect(state().name).toBe('rest bowing');
    expect(tools.typed('rise', '1', 'enter')).toBeNull();
    const bowed = outline('house').filter(([, y]) => y <= 0);
    // The circle through (0, 0), (4, −1), (8, 0): radius (4² + 1²) / 2, middle due north of the lowest.
    const radius = 8.5;
    const middle: Vec2 = [4, 7.5];
    expect(bowed.length).toBeGreaterThan(5);
    for (const [x, y] of bowed) expect(Math.hypot(x - middle[0], y - middle[1])).toBeCloseTo(radius, 6);
    for (const [k, [x, y]] of bowed.slice(1).entries()) {
      const [px, py] = bowed[k] ?? [0, 0];
      const half: Vec2 = [(x + px) / 2, (y + py) / 2];
      expect(radius - Math.hypot(half[0] - middle[0], half[1] - middle[1])).toBeLessThan(0.005);
    }
  });

  test('hide, show all, lock, delete', () => {
    const { editor, tools, now } = atRest(site(house(), garage()), thing('house'), thing('garage'));
    const marks = (key: 'hidden' | 'locked') => Object.values(now().plan.structures).map((one) => one[key]);
    tools.act('hide', null);
    expect(marks('hidden')).toEqual([true, true]);
    tools.act('show all', null);
    expect(marks('hidden')).toEqual([false, false]);
    editor.select(thing('garage'));
    tools.act('lock', null);
    expect(marks('locked')).toEqual([false, true]);
    editor.selectAll([thing('house'), thing('garage')]);
    tools.act('delete', null);
    expect(now().plan.structureOrder).toEqual(['garage']);
    expect(now().notice?.text).toContain('locked');
    editor.undo();
    expect(now().plan.structureOrder).toEqual(['house', 'garage']);
    expect(now().selection).toEqual([thing('house')]);
    editor.select(thing('garage'));
    tools.act('lock', null);
    expect(marks('locked')).toEqual([false, false]);
  });

  test('group and ungroup, order, align', () => {
    const { editor, tools, now, outline } = atRest(
      site(
        house(),
        garage({
          outline: [
            [13, 1],
            [16, 1],
            [16, 7],
            [13, 7],
          ],
        }),
      ),
      thing('house'),
      thing('garage'),
    );
    tools.act('group', null);
    expect(Object.values(now().plan.groups).map(({ members }) => members)).toEqual([['house', 'garage']]);
    tools.act('ungroup', null);
    expect(now().plan.groupOrder).toEqual([]);
    tools.act('align front', null);
    expect(outline('house')[0]).toEqual([0, 1]);
    expect(outline('garage')[0]).toEqual([13, 1]);
    editor.select(thing('garage'));
    tools.act('forward', null);
    expect(now().plan.structureOrder).toEqual(['garage', 'house']);
    tools.act('group', null);
    expect(now().plan.groupOrder).toEqual([]);
  });

  test('a plan that is only read is not changed', () => {
    const { editor, tools, now, at } = atRest(site(house()), thing('house'));
    editor.store.setState({ readOnly: true });
    const before = now().plan;
    for (const act of ['turn right', 'delete', 'lock', 'hide', 'split', 'group'] as const)
      tools.act(act, at([4, 0, 0]));
    tools.nudge('right', false);
    expect(tools.takes(at(ON_HOUSE))).toBe(false);
    expect(now().plan).toBe(before);
  });
});
