import { describe, expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import type { Selected } from '../../../src/editor/editor.ts';
import { createEditor } from '../../../src/editor/store.ts';
import type { Pointed } from '../../../src/editor/tools/pointed.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { addCamera, newCamera } from '../../../src/plan/commands/addCamera.ts';
import { addGroup } from '../../../src/plan/commands/addGroup.ts';
import { addLamp, newLamp } from '../../../src/plan/commands/addLamp.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { garage, house, site, window } from '../site.ts';
import { pointing } from './pointing.ts';

const thing = (id: string): Selected => ({ kind: 'structure', id });

function atRest(plan: Plan, ...selection: readonly Selected[]) {
  let clock = 0;
  const editor = createEditor(plan, () => clock);
  const tools = createToolbox(editor);
  editor.selectAll(selection);
  const now = () => editor.store.getState();
  const state = () => tools.store.getState().state;
  const outline = (id: string): readonly Vec2[] => {
    const found = now().plan.structures[id];
    if (!found || !('outline' in found)) throw new Error(`no outline of ${id}`);
    return found.outline;
  };
  const at = (point: Vec3, more: Partial<Pointed> = {}) => pointing(now().plan, point, more);
  const later = (ms: number) => {
    clock += ms;
  };
  return { editor, tools, now, state, outline, at, later };
}

/** On the roofs, which are flat. */
const ON_HOUSE: Vec3 = [4, 3, 2.7];
const ON_GARAGE: Vec3 = [14.5, 3, 2.4];

describe('selecting', () => {
  test('Shift adds and takes out', () => {
    const { tools, now, at } = atRest(site(house(), garage()));
    tools.click(at(ON_HOUSE));
    tools.click(at(ON_GARAGE, { shift: true }));
    expect(now().selection).toEqual([thing('house'), thing('garage')]);
    expect(now().selected).toEqual(thing('garage'));
    tools.click(at(ON_HOUSE, { shift: true }));
    expect(now().selection).toEqual([thing('garage')]);
    tools.click(at(ON_HOUSE));
    expect(now().selection).toEqual([thing('house')]);
  });

  test('one of a group selects all of it, once more it alone', () => {
    const plan = addGroup(site(house(), garage()), ['house', 'garage']).plan;
    const { tools, now, at } = atRest(plan);
    tools.click(at(ON_HOUSE));
    expect(now().selection).toHaveLength(2);
    expect(now().selected).toEqual(thing('house'));
    tools.click(at(ON_HOUSE));
    expect(now().selection).toEqual([thing('house')]);
  });

  test('a frame selects what lies wholly within it', () => {
    const { tools, now, state, at } = atRest(site(house(), garage()));
    const from = at([-6, -9, 0], { shift: true });
    expect(tools.takes(from)).toBe(true);
    expect(tools.takes(at([-6, -9, 0]))).toBe(false);
    // One window for both ends: spots are px from where the first looks.
    const to = (point: Vec3): Pointed => {
      const spot = from.screen.place(point);
      if (!spot) throw new Error('behind');
      return { ...at(point, { shift: true }), screen: { ...from.screen, spot } };
    };
    tools.drag(from, to([14, 30, 0]));
    const { ghost } = state();
    expect(ghost?.kind === 'frame' && ghost.count).toBe(1);
    tools.drag(from, to([30, 30, 0]));
    tools.release();
    expect(now().selection).toEqual([thing('house'), thing('garage')]);
    expect(now().undoName).toBeNull();
  });

  test('a frame called off leaves the selection', () => {
    const { tools, now, at } = atRest(site(house(), garage()), thing('garage'));
    const from = at([-6, -9, 0], { shift: true });
    tools.drag(from, at([30, 30, 0], { shift: true }));
    tools.escape();
    expect(now().selection).toEqual([thing('garage')]);
  });
});

describe('moving', () => {
  test('a drag on a selected body moves it over the ground by as much as the pointer, as one step', () => {
    const { editor, tools, now, outline, at } = atRest(site(house(), garage()), thing('garage'));
    expect(tools.takes(at(ON_HOUSE))).toBe(false);
    const from = at(ON_GARAGE);
    expect(tools.takes(from)).toBe(true);
    tools.drag(from, at([20, 0, 0], { free: true }));
    tools.drag(from, { ...at([15.5, 4.25, 2.4], { free: true }), struck: null });
    tools.release();
    expect(outline('garage')[0]).toEqual([14, 1.25]);
    expect(now().undoName).toBe('Move Garage');
    editor.undo();
    expect(outline('garage')[0]).toEqual([13, 0]);
    expect(now().selection).toEqual([thing('garage')]);
  });

  test('its corner is drawn to another’s corner', () => {
    const { tools, outline, state, at } = atRest(site(house(), garage()), thing('garage'));
    const from = at(ON_GARAGE);
    // The garage's first corner would come to (8.03, 0.02), beside the house's second.
    tools.drag(from, at([14.5 - 4.97, 3.02, 2.4]));
    expect(state().strip?.text).toContain('corner of House');
    tools.release();
    expect(outline('garage')[0]).toEqual([8, 0]);
  });

  test('its corner is drawn onto another’s edge and stays where it is along it', () => {
    const { tools, outline, state, at } = atRest(site(house(), garage()), thing('garage'));
    tools.drag(at(ON_GARAGE), at([14.5 - 4.98, 4.5, 2.4]));
    expect(state().strip?.text).toContain('House');
    tools.release();
    expect(outline('garage')[0]?.[0]).toBeCloseTo(8, 9);
    expect(outline('garage')[0]?.[1]).toBeCloseTo(1.5, 6);
  });

  test('with snapping off, or Ctrl held, it is not', () => {
    const { editor, tools, outline, at } = atRest(site(house(), garage()), thing('garage'));
    editor.snap(false);
    tools.drag(at(ON_GARAGE), at([14.5 - 4.97, 3.02, 2.4]));
    tools.release();
    expect(outline('garage')[0]?.[0]).toBeCloseTo(8.03, 9);
    expect(outline('garage')[0]?.[1]).toBeCloseTo(0.02, 9);
  });

  test('Shift keeps to one of its own axes', () => {
    const { tools, outline, at } = atRest(site(house(), garage()), thing('garage'));
    tools.drag(at(ON_GARAGE), at([16.5, 3.7, 2.4], { shift: true }));
    tools.release();
    expect(outline('garage')[0]).toEqual([15, 0]);
  });

  test('the strip tells how far, and the gap to the nearest', () => {
    const { tools, state, at } = atRest(site(house(), garage()), thing('garage'));
    tools.drag(at(ON_GARAGE), at([12.5, 3, 2.4], { free: true }));
    // Two metres west of five metres off.
    expect(state().strip?.text).toBe('2.00 west · 0.00 north · 3.00 from House');
  });

  test('several move together, what is locked stays and says so', () => {
    const plan = site(house(), garage({ locked: true }));
    const { tools, now, outline, at } = atRest(plan, thing('garage'), thing('house'));
    tools.drag(at(ON_HOUSE), at([5, 3, 2.7], { free: true }));
    tools.release();
    expect(outline('house')[0]).toEqual([1, 0]);
    expect(outline('garage')[0]).toEqual([13, 0]);
    expect(now().notice?.text).toBe('Garage is locked. L frees it.');
  });

  test('arrows nudge by a centimetre, Shift ten; within a second it is one step', () => {
    const { editor, tools, outline, later, state } = atRest(site(house(), garage()), thing('garage'));
    tools.nudge('right', false);
    tools.nudge('right', false);
    tools.nudge('up', true);
    expect(outline('garage')[0]).toEqual([13.02, 0.1]);
    expect(state().strip?.text).toBe('13.02 east · 0.10 north');
    later(1500);
    tools.nudge('left', false);
    editor.undo();
    expect(outline('garage')[0]).toEqual([13.02, 0.1]);
    editor.undo();
    expect(outline('garage')[0]).toEqual([13, 0]);
  });

  test('lamps and posts go along with a group that is nudged', () => {
    const post = { kind: 'pole', at: [10, 0], height: 3, reach: 0.2, facing: 180, diameter: 0.1 } as const;
    let plan = addLamp(site(house()), newLamp(site(house()), [9, 1]));
    plan = addCamera(plan, newCamera(plan, post, { pan: 180, tilt: 20 }));
    const grouped = addGroup(plan, ['house', 'L1', 'C1']).plan;
    const group = Object.keys(grouped.groups)[0] ?? '';
    const { tools, now } = atRest(grouped, { kind: 'group', id: group });
    tools.nudge('right', true);
    expect(now().plan.lamps['L1']?.at[0]).toBeCloseTo(9.1, 9);
    const mount = now().plan.cameras['C1']?.mount;
    expect(mount?.kind === 'pole' && mount.at[0]).toBeCloseTo(10.1, 9);
  });

  test('an opening is nudged along its wall', () => {
    const plan = site(house({ openings: [window('w')] }));
    const { tools, now, state } = atRest(plan, { kind: 'opening', id: 'w', on: 'house' });
    const of = () => {
      const found = now().plan.structures['house'];
      return found && 'openings' in found ? found.openings[0] : undefined;
    };
    tools.nudge('right', true);
    tools.nudge('up', false);
    expect(of()?.along).toBeCloseTo(1.1, 9);
    expect(of()?.sill).toBeCloseTo(0.91, 9);
    for (let k = 0; k < 20; k += 1) tools.nudge('left', true);
    expect(of()?.along).toBeCloseTo(0.1, 9);
    expect(state().strip?.trouble).toBe(true);
  });
});

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
    const ends = [a[0] + way * opening.along, a[0] + way * (opening.along + opening.width)].toSorted();
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

describe('keyboard stops', () => {
  test('Enter begins, Tab walks in order, Enter rests', () => {
    const { tools, state } = atRest(site(house()), thing('house'));
    tools.enter();
    const labels: (string | undefined)[] = [];
    while (state().name === 'rest stops' && labels.length < 20) {
      labels.push(state().strip?.fields[0]?.label);
      tools.tab(false);
    }
    expect(labels).toEqual([
      'East',
      'North',
      'Edge 1',
      'Edge 2',
      'Edge 3',
      'Edge 4',
      'Wall height',
      'Base',
      'Overhang',
    ]);
    expect(state().name).toBe('rest');
    tools.enter();
    tools.tab(false);
    tools.tab(true);
    expect(state().strip?.fields[0]?.label).toBe('East');
    tools.enter();
    expect(state().name).toBe('rest');
  });

  test('arrows step the stop, within a second as one step of history', () => {
    const { editor, tools, outline } = atRest(site(house()), thing('house'));
    tools.enter();
    tools.tab(false);
    tools.tab(false);
    tools.nudge('up', true);
    tools.nudge('up', false);
    expect(outline('house')[1]?.[0]).toBeCloseTo(8.11, 9);
    expect(outline('house')[2]?.[0]).toBeCloseTo(8.11, 9);
    editor.undo();
    expect(outline('house')[1]).toEqual([8, 0]);
  });

  test('a typed length lengthens, with ; the other end moves', () => {
    const { tools, outline } = atRest(site(house()), thing('house'));
    tools.enter();
    tools.tab(false);
    tools.tab(false);
    tools.swap();
    expect(tools.typed('edge 0', '9.5', 'tab')).toBeNull();
    expect(outline('house')[0]).toEqual([-1.5, 0]);
    expect(outline('house')[1]).toEqual([8, 0]);
    expect(tools.typed('edge 1', '0', 'enter')).toContain('must be above 0');
    expect(outline('house')[2]).toEqual([8, 6]);
  });

  test('on a position a number and an arrow go that far', () => {
    const { tools, outline, state } = atRest(site(garage()), thing('garage'));
    tools.enter();
    expect(tools.typed('east', '1.25', 'down')).toBeNull();
    expect(outline('garage')[0]).toEqual([13, -1.25]);
    expect(state().name).toBe('rest stops');
    expect(tools.typed('east', '20', 'enter')).toBeNull();
    expect(outline('garage')[0]).toEqual([20, -1.25]);
    expect(state().name).toBe('rest');
  });

  test('what does not fit stays in the field and says so', () => {
    const { tools, outline } = atRest(site(house({ openings: [window('w')] })), thing('house'));
    tools.enter();
    tools.tab(false);
    tools.tab(false);
    expect(tools.typed('edge 0', '1.5', 'enter')).toContain('Stops here');
    expect(tools.typed('edge 0', 'wide', 'enter')).toContain('not a length');
    expect(outline('house')[1]).toEqual([8, 0]);
  });
});
