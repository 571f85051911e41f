import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { frames, settled, changing, visiting } from './driver.ts';
import {
  A_PIXEL,
  F_PIXEL,
  PICTURE,
  play,
  playByKeys,
  savedPlan,
  SCRIPT,
  sheetNow,
  type Counts,
} from './tenMinutes.ts';

/** Opens a new plan and lays the picture to be traced; the press of Trace counts as a click, or as a key. */
async function trace(page: Page, counts: Counts, by: 'pointer' | 'keys' = 'pointer'): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await changing(page, () => page.getByRole('button', { name: 'New, empty plan' }).click());
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    by === 'keys'
      ? page.getByRole('button', { name: /^Trace a drawing/ }).press('Enter')
      : page.getByRole('button', { name: /^Trace a drawing/ }).click(),
  ]);
  if (by === 'keys') counts.keys += 1;
  else counts.clicks += 1;
  await chooser.setFiles(PICTURE);
  await page
    .getByText(/Click two points/)
    .first()
    .waitFor();
  await frames(page);
}

/** A picture of 500 px is shown 30 m wide, its upper left corner at the origin, until it has a scale. */
const onPicture = ([u, v]: Vec2): Vec2 => [(u * 30) / 500, (-v * 30) / 500];

const cornersOf = (plan: Plan, name: string): readonly Vec2[] => {
  const found = Object.values(plan.structures).find((structure) => structure.name === name);
  if (!found)
    throw new Error(
      `no ${name}: ${Object.values(plan.structures)
        .map((one) => one.name)
        .join(', ')}`,
    );
  if (found.kind === 'barrier') return found.line;
  if ('outline' in found) return found.outline;
  throw new Error(`${name} has no outline`);
};

function expectCorners(plan: Plan, name: string, table: readonly Vec2[]): void {
  const corners = cornersOf(plan, name);
  expect(corners, name).toHaveLength(table.length);
  for (const [x, y] of table) {
    const off = Math.min(...corners.map(([a, b]) => Math.hypot(a - x, b - y)));
    expect(off, `${name}: corner ${x}, ${y}`).toBeLessThan(0.01);
  }
}

const box = (x0: number, y0: number, x1: number, y1: number): readonly Vec2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

/** The table's plan, corner by corner within 10 mm. */
function expectTheHouse(plan: Plan): void {
  expectCorners(plan, 'House', [
    [0, 0],
    [4.2, 0],
    [4.2, -1.6],
    [9, -1.6],
    [9, 0],
    [12, 0],
    [12, 7.2],
    [0, 7.2],
  ]);
  const kinds = Object.values(plan.structures).map(({ kind }) => kind);
  expect(kinds.toSorted()).toEqual([
    'barrier',
    'barrier',
    'building',
    'building',
    'building',
    'building',
    'canopy',
  ]);
  const buildings = Object.values(plan.structures).filter(({ kind }) => kind === 'building');
  const tables = [box(13, -0.5, 16.2, 5.5), box(-15, -1, -8, 8), box(22, -1, 30, 7)];
  const heights = [2.4, 5, 5.4];
  tables.forEach((table, index) => {
    const found = buildings.find(
      (one) =>
        one.kind === 'building' &&
        table.every(([x, y]) => one.outline.some(([a, b]) => Math.hypot(a - x, b - y) < 0.01)),
    );
    expect(found, `the building at ${table.join(' ')}`).toMatchObject({ height: heights[index] });
  });
  const [house] = buildings;
  expect(house).toMatchObject({ height: 2.7, roof: { kind: 'hip', pitch: 35, overhang: 0.45 } });
  expect((plan.boundary ?? []).length).toBe(4);
  for (const [x, y] of box(-6, -8, 20, 12))
    expect(Math.min(...(plan.boundary ?? []).map(([a, b]) => Math.hypot(a - x, b - y)))).toBeLessThan(0.01);
  const canopy = Object.values(plan.structures).find(({ kind }) => kind === 'canopy');
  expect(canopy).toMatchObject({ top: 2.5 });
  expectCorners(plan, canopy?.name ?? '', box(9, -1.4, 11.4, 0));
  const hedge = Object.values(plan.structures).find((one) => one.kind === 'barrier' && one.sort === 'hedge');
  expect(hedge).toMatchObject({ height: 1.6 });
  expectCorners(plan, hedge?.name ?? '', [
    [-6, -8],
    [13, -8],
  ]);
  const [gate] = hedge?.kind === 'barrier' ? hedge.openings : [];
  expect(gate).toMatchObject({ along: 11, width: 1.2 });
  const fence = Object.values(plan.structures).find((one) => one.kind === 'barrier' && one.sort === 'fence');
  expect(fence).toMatchObject({ height: 1.8 });
  expectCorners(plan, fence?.name ?? '', box(-6, -8, 20, 12));
}

test(
  'the ten-minute house stands within 10 mm, by no more than 14 clicks and 136 keys; 25 undos empty the plan',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 1280, height: 720 } });
    const counts: Counts = { clicks: 0, keys: 0 };
    await trace(page, counts);
    await play(page, 'click A click F 12→', counts, { A: onPicture(A_PIXEL), F: onPicture(F_PIXEL) });
    for (const row of SCRIPT) await play(page, row, counts);
    process.stdout.write(`ten-minute house in the browser: ${counts.clicks} clicks, ${counts.keys} keys\n`);
    await settled(page);
    expectTheHouse(await savedPlan(page));
    expect(counts.clicks).toBeLessThanOrEqual(14);
    expect(counts.keys).toBeLessThanOrEqual(136);

    await page.getByRole('application').focus();
    for (let step = 0; step < 25; step += 1) {
      expect(await page.getByRole('button', { name: /^Undo: / }).count(), `before undo ${step + 1}`).toBe(1);
      await page.keyboard.press('Control+z');
      await frames(page);
    }
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).count()).toBe(1);
    const emptied = await savedPlan(page);
    expect(emptied.structureOrder).toEqual([]);
    expect(emptied.pictureOrder).toEqual([]);
    expect(emptied.boundary).toBeNull();
    expect((await sheetNow(page)).sheet.width).toBeGreaterThan(100);
  }),
);

test(
  'the ten-minute house once more, by keys alone',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 1280, height: 720 } });
    const counts: Counts = { clicks: 0, keys: 0 };
    await trace(page, counts, 'keys');
    const onIt = { A: onPicture(A_PIXEL), F: onPicture(F_PIXEL) };
    await playByKeys(page, 'click A click F 12→', counts, onIt);
    const [first = '', ...rest] = SCRIPT;
    // Nothing is drawn yet that A could be called by; the origin is where the picture's first point was put.
    await playByKeys(page, first, counts, { A: [0, 0] });
    for (const row of rest) await playByKeys(page, row, counts);
    process.stdout.write(`ten-minute house by keys alone: ${counts.keys} keys\n`);
    await settled(page);
    expectTheHouse(await savedPlan(page));
    expect(counts.clicks).toBe(0);
  }),
);
