import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/base/vector.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { addPicture } from '../../../src/plan/commands/addPicture.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { siteFromPicture } from '../../../src/plan/sitePicture.ts';
import { Player } from './planView.ts';

/** The table of the gestures, section 11: script, clicks, keys. */
const ROWS = [
  ['eight walls', 'click A 4.2→ 1.6↓ 4.8→ 1.6↑ 3→ 7.2↑ 12← Enter 2.7 Enter', 1, 30],
  ['hip, pitch, eaves', 'click Hip 35 Tab .45 Enter', 1, 7],
  ['porch', 'BB click E 2.4x-1.4 Enter 2.5 Enter', 1, 15],
  ['garage', 'W hover F 1→ .5↓ Space 3.2x6 Enter 2.4 Enter', 0, 17],
  ['boundary', 'G hover A 6← 8↓ Space 26x20 Enter', 0, 12],
  ['fence', 'F click SW click NW click NE click SE Enter 1.8 Enter', 4, 6],
  ['hedge', 'FFF click SW 19→ Enter 1.6 Enter', 1, 11],
  ['gate in hedge', 'O click hedge 11 Tab 1.2 Enter', 1, 8],
  ['west neighbour', 'W hover A 8← 1↓ Space -7x9 Enter 5 Enter click Gable', 1, 13],
  ['east neighbour', 'W hover SE 2→ 7↑ Space 8x8 Enter 5.4 Enter click Hip', 1, 14],
] as const;

const PLACES: Readonly<Record<string, Vec2>> = {
  A: [0, 0],
  E: [9, 0],
  F: [12, 0],
  SW: [-6, -8],
  NW: [-6, 12],
  NE: [20, 12],
  SE: [20, -8],
  hedge: [2.3, -8],
};

/** Where A and F are in the picture that is traced, px; it was scanned a little askew. */
const A_PIXEL: Vec2 = [240, 560];
const F_PIXEL: Vec2 = [720, 588];

const empty = emptyPlan('ten', 'Ten minutes');

function trace() {
  const editor = createEditor(empty);
  const tools = createToolbox(editor, LATER_TOOLS);
  // The app does this once the file is chosen: one step, then the scale tool in hand.
  const file = { sha: 'a'.repeat(64), type: 'image/png', width: 1200, height: 900 } as const;
  const use = { kind: 'site', at: [0, 0], metresPerPixel: null, turn: 0, strength: 0.35 } as const;
  let id = '';
  editor.run('Lay Sheet under the plan', (plan) => {
    const next = addPicture(plan, { name: 'Sheet', file, use });
    if (!next.ok) throw new Error('the picture was refused');
    ({ id } = next.value);
    return next.value.plan;
  });
  editor.select({ kind: 'picture', id });
  editor.hold('scale');
  const picture = () => {
    const found = editor.store.getState().plan.pictures[id];
    if (found?.use.kind !== 'site') throw new Error('no picture');
    return { ...found, use: found.use };
  };
  const onPicture = { A: siteFromPicture(picture(), A_PIXEL), F: siteFromPicture(picture(), F_PIXEL) };
  const player = new Player(editor, tools, onPicture, { off: [0, 0] });
  return { editor, tools, picture, player };
}

function steps(editor: ReturnType<typeof createEditor>): string[] {
  const names: string[] = [];
  for (let name = editor.store.getState().undoName; name !== null; name = editor.store.getState().undoName) {
    names.push(name);
    editor.undo();
  }
  return names;
}

function house(off: Vec2 = [2, 2]) {
  const { editor, tools, player, picture } = trace();
  player.play('click A click F 12→');
  const scaling = { clicks: player.clicks + 1, keys: player.keys, tool: editor.store.getState().tool };
  const rest = new Player(editor, tools, PLACES, { off });
  const before = { clicks: 0, keys: 0, plan: editor.store.getState().plan };
  const rows = ROWS.map(([name, script]) => {
    rest.play(script);
    const row = { name, clicks: rest.clicks - before.clicks, keys: rest.keys - before.keys };
    Object.assign(before, { clicks: rest.clicks, keys: rest.keys });
    return row;
  });
  const { plan } = editor.store.getState();
  const counts = { clicks: rest.clicks + scaling.clicks, keys: rest.keys + scaling.keys };
  return { editor, plan, picture, scaling, rows, counts };
}

type Kind<K> = Extract<Structure, { kind: K }>;

function one<K extends Structure['kind']>(plan: Plan, name: string, kind: K): Kind<K> {
  const isKind = (structure: Structure): structure is Kind<K> => structure.kind === kind;
  const found = Object.values(plan.structures).find((structure) => structure.name === name);
  if (!found || !isKind(found)) throw new Error(`no ${kind} ${name}`);
  return found;
}

function expectCorners(corners: readonly Vec2[], table: readonly Vec2[]) {
  expect(corners).toHaveLength(table.length);
  for (const [x, y] of table) {
    const off = Math.min(...corners.map(([a, b]) => Math.hypot(a - x, b - y)));
    expect(off, `corner ${x}, ${y}`).toBeLessThan(0.01);
  }
}

const box = (x0: number, y0: number, x1: number, y1: number): Vec2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

describe('the ten-minute house', () => {
  test('takes no more clicks and keys than the table, row by row', () => {
    const { rows, counts, scaling } = house();
    expect(scaling).toEqual({ clicks: 3, keys: 3, tool: 'outline' });
    for (const [index, [name, , clicks, keys]] of ROWS.entries()) {
      const row = rows[index];
      if (!row) throw new Error('a row is missing');
      expect(row).toEqual({ name, clicks, keys });
    }
    process.stdout.write(`ten-minute house: ${counts.clicks} clicks, ${counts.keys} keys\n`);
    expect(counts.clicks).toBeLessThanOrEqual(14);
    expect(counts.keys).toBeLessThanOrEqual(136);
  });

  test('stands within 10 mm of the table, whichever way the hand is off', () => {
    for (const off of [
      [2, 2],
      [-3, 1],
      [0, 0],
      [4, -4],
      [-5, -5],
    ] as const) {
      const { plan } = house(off);
      const walls = one(plan, 'House', 'building');
      expectCorners(walls.outline, [
        [0, 0],
        [4.2, 0],
        [4.2, -1.6],
        [9, -1.6],
        [9, 0],
        [12, 0],
        [12, 7.2],
        [0, 7.2],
      ]);
      expectCorners(one(plan, 'Canopy', 'canopy').outline, box(9, -1.4, 11.4, 0));
      expectCorners(one(plan, 'Building', 'building').outline, box(13, -0.5, 16.2, 5.5));
      expectCorners(plan.boundary ?? [], box(-6, -8, 20, 12));
      expectCorners(one(plan, 'Building 2', 'building').outline, box(-15, -1, -8, 8));
      expectCorners(one(plan, 'Building 3', 'building').outline, box(22, -1, 30, 7));
      const fence = one(plan, 'Fence', 'barrier');
      expect(fence.line).toEqual([
        [-6, -8],
        [-6, 12],
        [20, 12],
        [20, -8],
      ]);
      const hedge = one(plan, 'Hedge', 'barrier');
      expect(hedge.line).toEqual([
        [-6, -8],
        [13, -8],
      ]);
      expect(hedge.openings).toHaveLength(1);
      expect(hedge.openings[0]).toMatchObject({ kind: 'gate', face: 0, along: 11, width: 1.2 });
    }
  });

  test('has the heights, roofs and thicknesses of the table', () => {
    const { plan } = house();
    expect(one(plan, 'House', 'building')).toMatchObject({
      height: 2.7,
      roof: { kind: 'hip', pitch: 35, overhang: 0.45 },
      got: { outline: 'measured', height: 'measured', roof: 'measured' },
    });
    expect(one(plan, 'Canopy', 'canopy')).toMatchObject({ top: 2.5, thickness: 0.15, posts: 2 });
    expect(one(plan, 'Building', 'building')).toMatchObject({ height: 2.4, roof: { kind: 'flat' } });
    expect(one(plan, 'Fence', 'barrier')).toMatchObject({ sort: 'fence', height: 1.8, closed: false });
    expect(one(plan, 'Hedge', 'barrier')).toMatchObject({ sort: 'hedge', height: 1.6, closed: false });
    expect(one(plan, 'Building 2', 'building')).toMatchObject({ height: 5, roof: { kind: 'gable' } });
    expect(one(plan, 'Building 3', 'building')).toMatchObject({ height: 5.4, roof: { kind: 'hip' } });
  });

  test('the ridge of the house is where the eaves, the pitch and the span put it', () => {
    const { solids, faults } = solidsOf(one(house().plan, 'House', 'building'));
    expect(faults).toEqual([]);
    const heights = solids.flatMap(({ positions }) => [...positions].filter((_, index) => index % 3 === 2));
    // 2.70 + 4.05 tan 35°: half the depth of 7.20 and the overhang, from the soffit's edge.
    expect(Math.max(...heights)).toBeCloseTo(5.536, 3);
  });

  test('the porch stands on its outer side', () => {
    const { outline } = one(house().plan, 'Canopy', 'canopy');
    expect(outline.slice(0, 2).map(([, y]) => y)).toEqual([-1.4, -1.4]);
  });

  test('the picture lies under what was traced', () => {
    const { picture } = house();
    expect(picture().locked).toBe(true);
    const [ax, ay] = siteFromPicture(picture(), A_PIXEL);
    const [fx, fy] = siteFromPicture(picture(), F_PIXEL);
    expect(Math.hypot(ax, ay)).toBeLessThan(1e-9);
    expect(Math.hypot(fx - 12, fy)).toBeLessThan(1e-9);
  });

  test('every step is its own: 25 undos empty the plan', () => {
    const { editor } = house();
    const names = steps(editor);
    expect(names).toHaveLength(25);
    expect(names.toReversed()).toEqual([
      'Lay Sheet under the plan',
      'Scale Sheet',
      'Draw House',
      'Height of House',
      'Roof of House',
      'Roof pitch of House',
      'Overhang of House',
      'Draw Canopy',
      'Height of Canopy',
      'Draw Building',
      'Height of Building',
      'Draw Site boundary',
      'Draw Fence',
      'Height of Fence',
      'Draw Hedge',
      'Height of Hedge',
      'Add Gate',
      'From the west end of Gate',
      'Width of Gate',
      'Draw Building 2',
      'Height of Building 2',
      'Roof of Building 2',
      'Draw Building 3',
      'Height of Building 3',
      'Roof of Building 3',
    ]);
    expect(editor.store.getState().plan).toEqual(empty);
  });
});
