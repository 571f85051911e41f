import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import type { Selected } from '../../../src/editor/editor.ts';
import type { Grip } from '../../../src/editor/grips/grip.ts';
import { gripsOf } from '../../../src/editor/grips/gripsOf.ts';
import { sameGrip } from '../../../src/editor/grips/pullOf.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import type { Building, Structure } from '../../../src/model/structure.ts';
import { addCamera, newCamera } from '../../../src/plan/commands/addCamera.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { pointing } from '../tools/pointing.ts';
import { garage, house, site, window } from '../site.ts';

function holding(plan: Plan, thing: Selected = { kind: 'structure', id: 'house' }) {
  const editor = createEditor(plan);
  const tools = createToolbox(editor);
  editor.select(thing);
  const now = () => editor.store.getState();
  const structure = (id = 'house'): Structure => {
    const found = now().plan.structures[id];
    if (!found) throw new Error(`no ${id}`);
    return found;
  };
  const building = (id = 'house'): Building => {
    const found = structure(id);
    if (found.kind !== 'building') throw new Error(`${id} is no building`);
    return found;
  };
  const placeOf = (grip: Grip): Vec3 => {
    const found = gripsOf(now().plan, now().selection).find((one) => sameGrip(one.grip, grip));
    if (!found) throw new Error(`no handle ${JSON.stringify(grip)}`);
    return found.at;
  };
  /** Seizes a handle where it is and pulls it to places one after the other. */
  const pull = (grip: Grip, places: readonly Vec3[], more: object = {}, viewer?: Vec3) => {
    const { plan: atPress } = now();
    const from = { ...pointing(atPress, placeOf(grip), {}, viewer), grip };
    expect(tools.takes(from)).toBe(true);
    for (const place of places) tools.drag(from, pointing(atPress, place, { free: true, ...more }, viewer));
  };
  const state = () => tools.store.getState().state;
  return { editor, tools, now, structure, building, pull, placeOf, state };
}

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

describe('heights', () => {
  test('the wall’s top goes up with the pointer and down as far as the window needs', () => {
    const { tools, building, pull, now, state } = holding(site(house({ openings: [window('w')] })));
    pull(plain('height'), [[8, 0, 3.25]]);
    tools.release();
    expect(building().height).toBeCloseTo(3.25, 3);
    expect(now().undoName).toBe('Wall height of House');
    pull(plain('height'), [[8, 0, 0.3]]);
    // Sill 0.90 and height 1.00, with a centimetre of wall above.
    expect(building().height).toBeCloseTo(1.91, 9);
    expect(state().strip?.text).toContain('Stops here');
    tools.release();
  });

  test('it is drawn to the height of another thing', () => {
    const { tools, building, pull, state } = holding(site(house(), garage()));
    pull(plain('height'), [[8, 0, 2.42]], { free: false });
    expect(state().strip?.text).toContain('height of Garage');
    tools.release();
    expect(building().height).toBeCloseTo(2.4, 9);
  });

  test('a ridge pulled up stands where it was pulled to', () => {
    const roof = { kind: 'gable', pitch: 30, overhang: 0.4, ridge: 90, parapet: 0.3 } as const;
    const { tools, building, pull } = holding(site(house({ roof })));
    pull(plain('ridge'), [[4, 3, 6.2]]);
    tools.release();
    const zs = solidsOf(building()).solids.flatMap(({ positions }) =>
      [...positions].filter((_, k) => k % 3 === 2),
    );
    expect(Math.max(...zs)).toBeCloseTo(6.2, 3);
    // Its eaves have stayed: 2.70 up and 0.40 out.
    expect(building().height).toBe(2.7);
    expect(building().roof.overhang).toBe(0.4);
  });

  test('an overhang grows outwards', () => {
    const roof = { kind: 'hip', pitch: 30, overhang: 0.4, ridge: null, parapet: 0.3 } as const;
    const { tools, building, pull, placeOf } = holding(site(house({ roof })));
    const [x, y, z] = placeOf(plain('overhang'));
    const out = y < 0 ? -1 : 1;
    pull(plain('overhang'), [[x, y + out * 0.2, z]]);
    tools.release();
    expect(building().roof.overhang).toBeCloseTo(0.6, 3);
  });

  test('straight from above a height is not dragged, and the strip says so', () => {
    const { pull, state, building } = holding(site(house()));
    pull(plain('height'), [[8, 0.001, 3]], {}, [8, 0, 60]);
    expect(state().strip?.text).toContain('edge-on');
    expect(building().height).toBe(2.7);
  });
});

describe('a tree, a canopy, spot heights', () => {
  const tree: Structure = {
    kind: 'tree',
    id: 'tree',
    name: 'Tree',
    hidden: false,
    locked: false,
    at: [3, -5],
    base: 0,
    height: 6,
    crownRadius: 2,
    clear: 2,
    trunkDiameter: 0.3,
    inLeaf: true,
    got: { at: 'guessed', height: 'measured', crown: 'guessed' },
  };

  test('crown and clear height', () => {
    const { tools, structure, pull } = holding(site(tree), { kind: 'structure', id: 'tree' });
    pull({ part: 'crown', structure: 'tree' }, [[5.5, -5, 4]]);
    tools.release();
    pull({ part: 'clear', structure: 'tree' }, [[3, -5, 2.4]]);
    tools.release();
    const after = structure('tree');
    expect(after.kind === 'tree' && after.crownRadius).toBeCloseTo(2.5, 3);
    expect(after.kind === 'tree' && after.clear).toBeCloseTo(2.4, 3);
    expect(after.got).toEqual(tree.got);
  });

  test('a canopy by its top', () => {
    const canopy: Structure = {
      kind: 'canopy',
      id: 'porch',
      name: 'Porch',
      hidden: false,
      locked: false,
      outline: [
        [9, -3],
        [11, -3],
        [11, -1],
        [9, -1],
      ],
      top: 2.5,
      thickness: 0.15,
      posts: 2,
      got: { outline: 'guessed', top: 'guessed', thickness: 'guessed' },
    };
    const { tools, structure, pull } = holding(site(canopy), { kind: 'structure', id: 'porch' });
    pull({ part: 'top', structure: 'porch' }, [[11, -3, 2.8]]);
    tools.release();
    const after = structure('porch');
    expect(after.kind === 'canopy' && after.top).toBeCloseTo(2.8, 3);
  });

  test('a spot height goes up and down', () => {
    const spots = [
      { at: [0, -5], height: 0, got: 'guessed' },
      { at: [9, -5], height: 0, got: 'guessed' },
      { at: [0, -9], height: 0, got: 'guessed' },
    ] as const;
    const plan: Plan = { ...site(), ground: { kind: 'spots', spots } };
    const { tools, now, pull } = holding(plan, { kind: 'ground' });
    pull({ part: 'spot', index: 1 }, [[9, -5, 0.35]]);
    tools.release();
    const { ground } = now().plan;
    expect(ground.kind === 'spots' && ground.spots.map(({ height }) => Math.round(height * 1000))).toEqual([
      0, 350, 0,
    ]);
  });
});

describe('an opening', () => {
  const on: Selected = { kind: 'opening', id: 'w', on: 'house' };
  const side = (name: 'body' | 'left' | 'right' | 'head' | 'sill'): Grip => ({
    part: 'opening',
    structure: 'house',
    opening: 'w',
    side: name,
  });
  const cases = [
    { name: 'drawn counter-clockwise', plan: site(house({ openings: [window('w')] })), west: 1, east: 2 },
    {
      name: 'drawn clockwise',
      plan: site(house({ outline: [...house().outline].reverse(), openings: [window('w', { face: 2 })] })),
      west: 6,
      east: 7,
    },
  ];

  /** From where to where it stands on the south wall, by the first corner of its edge as drawn. */
  const reach = ({ outline, openings }: Building): [number, number] => {
    const [opening] = openings;
    const a = opening && outline[opening.face];
    const b = opening && outline[(opening.face + 1) % outline.length];
    if (!opening || !a || !b) throw new Error('no window');
    const way = Math.sign(b[0] - a[0]);
    const ends = [a[0] + way * opening.along, a[0] + way * (opening.along + opening.width)];
    return [Math.min(...ends), Math.max(...ends)];
  };

  for (const { name, plan, west, east } of cases) {
    test(`${name}: a side moves alone`, () => {
      const { tools, building, pull } = holding(plan, on);
      pull(side('right'), [[east + 0.5, 0, 1.4]]);
      tools.release();
      expect(reach(building())[0]).toBeCloseTo(west, 6);
      expect(reach(building())[1]).toBeCloseTo(east + 0.5, 3);
      pull(side('left'), [[west - 0.25, 0, 1.4]]);
      tools.release();
      expect(reach(building())[0]).toBeCloseTo(west - 0.25, 3);
      expect(reach(building())[1]).toBeCloseTo(east + 0.5, 3);
    });

    test(`${name}: the body slides as it is`, () => {
      const { tools, building, pull } = holding(plan, on);
      pull(side('body'), [[(west + east) / 2 - 0.3, 0, 1.5]]);
      tools.release();
      expect(reach(building())[0]).toBeCloseTo(west - 0.3, 3);
      expect(reach(building())[1]).toBeCloseTo(east - 0.3, 3);
      expect(building().openings[0]?.sill).toBeCloseTo(1, 3);
    });
  }

  test('head and sill: the other stays', () => {
    const { tools, building, pull } = holding(site(house({ openings: [window('w')] })), on);
    pull(side('head'), [[1.5, 0, 2.2]]);
    tools.release();
    pull(side('sill'), [[1.5, 0, 0.6]]);
    tools.release();
    const [after] = building().openings;
    expect(after?.sill).toBeCloseTo(0.6, 3);
    expect((after?.sill ?? 0) + (after?.height ?? 0)).toBeCloseTo(2.2, 3);
  });

  test('slid past the end it stops at the last place that fits', () => {
    const { building, pull, state } = holding(site(house({ openings: [window('w')] })), on);
    pull(side('body'), [[9.5, 0, 1.4]]);
    expect(reach(building())[1]).toBeCloseTo(7.99, 6);
    expect(state().strip?.trouble).toBe(true);
  });

  test('it is drawn to the middle of the window beside it', () => {
    const openings = [window('w'), window('v', { along: 5, width: 2, name: 'Bay' })];
    const { building, pull, state } = holding(site(house({ openings })), on);
    pull(side('right'), [[3.02, 0, 1.4]], { free: false });
    expect(building().openings[0]?.width).toBe(2);
    expect(state().strip?.text).toContain('as wide as Bay');
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
