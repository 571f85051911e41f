import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import type { Grip } from '../../../src/editor/grips/grip.ts';
import { holding } from './holding.ts';
import { addCamera, newCamera } from '../../../src/plan/commands/addCamera.ts';
import { pointing } from '../tools/pointing.ts';
import { garage, house, site, window } from '../site.ts';
import { bare } from '../../plan/wholePlan.ts';

const corner = (index: number): Grip => ({ part: 'corner', structure: 'house', index });
const edge = (index: number): Grip => ({ part: 'edge', structure: 'house', index });
const plain = (part: 'height' | 'ridge' | 'overhang' | 'base', structure = 'house'): Grip => ({
  part,
  structure,
});

describe('a corner', () => {
  test('goes where the pointer goes, as one step', () => {
    const { tools, now, building, pull, editor } = holding(site(house()));
    pull(corner(2), [
      [7, 7, 0],
      [9.123, 7.5, 0],
    ]);
    expect(now().gesturing).toBe(true);
    tools.release();
    expect(building().outline[2]).toEqual([9.123, 7.5]);
    expect(now().undoName).toBe('Corner 3 of House');
    editor.undo();
    expect(building().outline[2]).toEqual([8, 6]);
  });

  test('does not mark as taped what was only dragged', () => {
    const { tools, building, pull } = holding(site(house()));
    pull(corner(2), [[9, 7, 0]]);
    tools.release();
    expect(building().got.outline).toBe('guessed');
  });

  test('past another edge it is crossed out, and let go stays at the last place that held', () => {
    const { tools, building, pull, state } = holding(site(house()));
    pull(corner(2), [
      [5, 5, 0],
      [4, -2, 0],
    ]);
    const { ghost, strip } = state();
    expect(strip?.trouble).toBe(true);
    expect(strip?.text).toContain('cross');
    const wrong = ghost?.kind === 'sketch' ? ghost.lines.find(({ style }) => style === 'wrong') : undefined;
    expect(wrong?.hatched).toBe(true);
    expect(wrong?.points[2]?.map((value) => Math.round(value * 1e6) / 1e6)).toEqual([4, -2, 0]);
    tools.release();
    expect(building().outline[2]).toEqual([5, 5]);
  });

  test('crossed out twice running it still stays at the last place that held', () => {
    const { building, pull } = holding(site(house()));
    pull(corner(2), [
      [5, 5, 0],
      [4, -2, 0],
      [4, -3, 0],
    ]);
    expect(building().outline[2]).toEqual([5, 5]);
  });

  test('of a house that stands higher is held at its foot', () => {
    const { tools, building, pull } = holding(site(house({ base: 0.5 })));
    pull(corner(2), [[9, 7, 0.5]]);
    tools.release();
    expect(building().outline[2]?.[0]).toBeCloseTo(9, 3);
    expect(building().outline[2]?.[1]).toBeCloseTo(7, 3);
  });

  test('is drawn to a corner of another thing, not to its own', () => {
    const { tools, building, pull, state } = holding(site(house(), garage()));
    pull(corner(1), [[13.03, 0.02, 0]], { free: false });
    expect(state().strip?.text).toContain('corner of Garage');
    tools.release();
    expect(building().outline[1]).toEqual([13, 0]);
  });

  test('dropped on its neighbour it goes', () => {
    const outline = [
      [0, 0],
      [8, 0],
      [8, 6],
      [4, 7],
      [0, 6],
    ] as const;
    const { tools, building, pull } = holding(site(house({ outline })));
    pull(corner(3), [[0, 6, 0]]);
    tools.release();
    expect(building().outline).toHaveLength(4);
  });
});

describe('an edge', () => {
  test('slides parallel and takes its neighbours along', () => {
    const { tools, building, pull } = holding(site(house()));
    pull(edge(1), [[10.25, 3, 0]]);
    tools.release();
    expect(building().outline).toEqual([
      [0, 0],
      [10.25, 0],
      [10.25, 6],
      [0, 6],
    ]);
  });

  test('stops where a window in the next wall needs it, and says so', () => {
    const { tools, building, pull, state } = holding(site(house({ openings: [window('w')] })));
    // 1.00 from the corner and 1.00 wide, with a centimetre of wall left: 2.01.
    pull(edge(1), [[0.5, 3, 0]]);
    expect(building().outline[1]?.[0]).toBeCloseTo(2.01, 9);
    expect(state().strip?.text).toMatch(/^Stops here: .Window. needs 2\.01 m/);
    expect(state().strip?.trouble).toBe(true);
    tools.release();
    expect(building().openings[0]?.along).toBe(1);
    expect(building().outline[1]?.[0]).toBeCloseTo(2.01, 9);
  });

  test('stops at a camera that is measured from the corner that stays', () => {
    const plan = site(house());
    const mount = {
      kind: 'flush',
      ...bare,
      host: 'house',
      face: 0,
      corner: 'start',
      distance: 3.4,
      height: 2.4,
      standOff: 0.1,
    } as const;
    const withCamera = addCamera(plan, newCamera(plan, mount, { pan: 180, tilt: 20 }));
    const { building, pull, state, now } = holding(withCamera);
    pull(edge(1), [[1, 3, 0]]);
    expect(building().outline[1]?.[0]).toBeCloseTo(3.4, 3);
    expect(state().strip?.text).toContain('C1');
    expect(now().plan.cameras['C1']?.mount).toEqual(mount);
  });

  test('lies in line with a corner of another thing within reach', () => {
    const { tools, building, pull, state } = holding(
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
    );
    pull(edge(2), [[4, 7.02, 0]], { free: false });
    expect(state().strip?.text).toContain('in line with a corner of Garage');
    tools.release();
    expect(building().outline[2]?.[1]).toBe(7);
  });
});

describe('turning', () => {
  test('a house about its middle, drawn to fifteen degrees', () => {
    const { tools, building, pull } = holding(site(house()));
    const turned = (degrees: number): Vec3 => {
      const rad = (degrees * Math.PI) / 180;
      return [4 + 5 * Math.sin(rad), 3 + 5 * Math.cos(rad), 0];
    };
    pull({ part: 'turn' }, [turned(29)], { free: false });
    tools.release();
    // The first corner lies 4 west and 3 south of the middle; clockwise seen from above by 30°.
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    expect(building().outline[0]?.[0]).toBeCloseTo(4 + -4 * c + -3 * s, 6);
    expect(building().outline[0]?.[1]).toBeCloseTo(3 - -4 * s + -3 * c, 6);
  });

  test('it is drawn parallel to a neighbour', () => {
    const slanted = garage({
      outline: [
        [13, 0],
        [16, 1],
        [14, 7],
        [11, 6],
      ],
    });
    const { tools, building, pull, state } = holding(site(house(), slanted));
    // Its south wall runs 18.43° north of east: turned anticlockwise.
    const rad = (-19.5 * Math.PI) / 180;
    pull({ part: 'turn' }, [[4 + 5 * Math.sin(rad), 3 + 5 * Math.cos(rad), 0]], { free: false });
    expect(state().strip?.text).toContain('parallel to Garage');
    tools.release();
    const [a, b] = building().outline;
    if (!a || !b) throw new Error('corners');
    expect((b[1] - a[1]) / (b[0] - a[0])).toBeCloseTo(1 / 3, 6);
  });
});

describe('holding on', () => {
  test('undo in mid-drag calls it off, and the rest of the movement does nothing', () => {
    const { editor, tools, now, building, pull, placeOf } = holding(site(house()));
    editor.run('Rename', (plan) => ({ ...plan, name: 'Other' }));
    const from = { ...pointing(now().plan, placeOf(edge(1))), grip: edge(1) };
    tools.drag(from, pointing(now().plan, [9, 3, 0], { free: true }));
    expect(building().outline[1]?.[0]).toBe(9);
    editor.undo();
    expect(building().outline[1]?.[0]).toBe(8);
    expect(now().plan.name).toBe('Other');
    tools.drag(from, pointing(now().plan, [10, 3, 0], { free: true }));
    tools.release();
    expect(building().outline[1]?.[0]).toBe(8);
    expect(now().undoName).toBe('Rename');
    // The next drag is a drag again.
    pull(edge(1), [[9, 3, 0]]);
    tools.release();
    expect(building().outline[1]?.[0]).toBe(9);
  });

  test('Esc restores', () => {
    const { tools, now, building, pull } = holding(site(house()));
    pull(edge(1), [[9, 3, 0]]);
    tools.escape();
    expect(building().outline[1]?.[0]).toBe(8);
    expect(now().undoName).toBeNull();
  });

  test('what is locked is not pulled and says so', () => {
    const { tools, now, building, pull } = holding(site(house({ locked: true })));
    pull(edge(1), [[9, 3, 0]]);
    tools.release();
    expect(building().outline[1]?.[0]).toBe(8);
    expect(now().notice?.text).toContain('House is locked');
    expect(now().undoName).toBeNull();
  });

  test('a click on a handle puts its number in the strip, where it is typed and stepped', () => {
    const { tools, now, building, state, placeOf } = holding(site(house({ openings: [window('w')] })));
    const grip = plain('height');
    tools.click({ ...pointing(now().plan, placeOf(grip)), grip });
    expect(state().strip?.fields).toEqual([
      { key: 'value', label: 'Wall height', value: 2.7, measure: 'length' },
    ]);
    tools.type('value', 2.71);
    expect(building().height).toBe(2.71);
    expect(tools.typed('value', '1.5', 'enter')).toContain('Stops here');
    expect(building().height).toBe(2.71);
    expect(tools.typed('value', '3', 'enter')).toBeNull();
    expect(building().height).toBe(3);
    expect(building().got.height).toBe('measured');
    expect(state().name).toBe('rest');
  });
});
