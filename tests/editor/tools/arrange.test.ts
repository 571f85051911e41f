import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import type { Selected } from '../../../src/editor/editor.ts';
import { expanded } from '../../../src/editor/shaping/selection.ts';
import type { Pointed } from '../../../src/editor/tools/pointed.ts';
import { addCamera, newCamera } from '../../../src/plan/commands/addCamera.ts';
import { addGroup } from '../../../src/plan/commands/addGroup.ts';
import { addLamp, newLamp } from '../../../src/plan/commands/addLamp.ts';
import { garage, house, site, window } from '../site.ts';
import { atRest, thing } from './atRest.ts';
import { NO_LIMITS } from '../../../src/optics/mount.ts';
import { bare } from '../../plan/wholePlan.ts';

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
    // Its near corners in, its far ones out.
    tools.drag(from, to([15, 12, 0]));
    expect(state().ghost).toMatchObject({ count: 1 });
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

  test('out of reach it goes by the grid', () => {
    const { tools, outline, at } = atRest(site(house(), garage()), thing('garage'));
    // A tenth of a metre is twenty pixels here.
    tools.drag(at(ON_GARAGE), at([14.5 - 4.898, 3.103, 2.4]));
    tools.release();
    expect(outline('garage')[0]?.[0]).toBeCloseTo(8.1, 9);
    expect(outline('garage')[0]?.[1]).toBeCloseTo(0.1, 9);
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

  test('the gap is to the nearest of several, and none where it stands across one', () => {
    const plan = site(
      house(),
      garage(),
      garage({
        id: 'shed',
        name: 'Shed',
        outline: [
          [17, 0],
          [18, 0],
          [18, 6],
          [17, 6],
        ],
      }),
    );
    const { tools, state, at } = atRest(plan, thing('garage'));
    const from = at(ON_GARAGE);
    tools.drag(from, at([14.7, 3, 2.4], { free: true }));
    expect(state().strip?.text).toContain('0.80 from Shed');
    tools.drag(from, at([12.4, 3, 2.4], { free: true }));
    expect(state().strip?.text).toContain('2.90 from House');
    tools.drag(from, at([7, 4, 2.4], { free: true }));
    expect(state().strip?.text).not.toContain('from');
  });

  test('a thing that is selected with its group moves once', () => {
    const plan = addGroup(site(house(), garage()), ['house', 'garage']).plan;
    const group = plan.groupOrder[0] ?? '';
    const selection: Selected[] = [{ kind: 'group', id: group }, thing('house')];
    expect(expanded(plan, selection)).toEqual([thing('house'), thing('garage')]);
  });

  test('undo of a deletion selects what came back, not the cameras that were on it', () => {
    const mount = {
      kind: 'flush',
      ...bare,
      host: 'house',
      face: 0,
      corner: 'start',
      distance: 3,
      height: 2.4,
      standOff: 0.1,
    } as const;
    const plan = addCamera(site(house()), newCamera(site(house()), mount, { pan: 180, tilt: 20 }));
    const { editor, tools, now } = atRest(plan, thing('house'));
    tools.act('delete', null);
    expect(now().plan.cameras['C1']?.mount.kind).toBe('loose');
    editor.undo();
    expect(now().plan.cameras['C1']?.mount).toEqual(mount);
    expect(now().selection).toEqual([thing('house')]);
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
    const post = {
      kind: 'pole',
      at: [10, 0],
      height: 3,
      reach: 0.2,
      facing: 180,
      diameter: 0.1,
      limits: NO_LIMITS,
    } as const;
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
