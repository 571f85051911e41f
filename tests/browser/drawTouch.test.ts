import type { CDPSession, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changing, frames, visiting } from './driver.ts';
import { model, savedText, select } from './gestures.ts';
import { demoText, planFrom } from './demo.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Fingers on the screen, one event at a time. */
async function fingers(page: Page): Promise<{
  down(...spots: readonly Spot[]): Promise<void>;
  move(...spots: readonly Spot[]): Promise<void>;
  up(): Promise<void>;
  tap(spot: Spot): Promise<void>;
}> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const send = async (type: 'touchStart' | 'touchMove' | 'touchEnd', spots: readonly Spot[]) => {
    await session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })),
    });
    await frames(page);
  };
  return {
    down: (...spots) => send('touchStart', spots),
    move: (...spots) => send('touchMove', spots),
    up: () => send('touchEnd', []),
    tap: async (spot) => {
      await send('touchStart', [spot]);
      await send('touchEnd', []);
    },
  };
}

async function spot(page: Page, across: number, down: number): Promise<Spot> {
  const box = await model(page).boundingBox();
  if (!box) throw new Error('the Model is not in view');
  return { x: box.x + across * box.width, y: box.y + down * box.height };
}

const TOUCH = { hasTouch: true };

test(
  'a finger draws: taps put corners, the bar’s pad types lengths with arrows, Done finishes',
  visiting(async (open) => {
    const page = await open(TOUCH);
    const finger = await fingers(page);
    await model(page).press('p');
    await page.getByRole('button', { name: 'Build' }).click();
    await page.getByRole('menuitemradio', { name: /^Fence/ }).click();
    const bar = page.getByRole('toolbar', { name: 'Touch' });
    expect(await bar.count()).toBe(0);
    await finger.tap(await spot(page, 0.3, 0.3));
    await bar.waitFor();
    const pad = page.getByRole('group', { name: 'Type' });
    await bar.getByRole('button', { name: 'Type' }).click();
    const press = (name: string) => pad.getByRole('button', { name, exact: true }).click();
    for (const name of ['3', '.', '5', 'Right']) await press(name);
    for (const name of ['2', 'Down']) await press(name);
    await changing(page, () => bar.getByRole('button', { name: 'Done' }).click());
    const { structures, structureOrder } = planFrom(await savedText(page));
    const fence = structures[structureOrder.at(-1) ?? ''];
    if (fence?.kind !== 'barrier') throw new Error('no fence was drawn');
    const [a, b, c] = fence.line;
    expect(fence.line).toHaveLength(3);
    expect([(b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0)]).toEqual([
      expect.closeTo(3.5, 3),
      expect.closeTo(0, 3),
    ]);
    expect([(c?.[0] ?? 0) - (b?.[0] ?? 0), (c?.[1] ?? 0) - (b?.[1] ?? 0)]).toEqual([
      expect.closeTo(0, 3),
      expect.closeTo(-2, 3),
    ]);
  }),
);

test(
  'a tap places a corner and presses nothing that comes up under the finger',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    await model(page).press('p');
    await model(page).press('f');
    const strip = page.getByRole('form', { name: 'What is being changed' });
    await strip.waitFor();
    for (const down of [0.2, 0.35, 0.5]) {
      const { x, y } = await spot(page, 0.5, down);
      await page.touchscreen.tap(x, y);
      await frames(page);
      expect(await page.locator('input:focus').count(), `at ${down} of the height`).toBe(0);
      expect(await model(page).evaluate((element) => element === document.activeElement)).toBe(true);
    }
    // The strip lies beside the tools, not over them.
    const [over, tools] = [
      await strip.boundingBox(),
      await page.getByRole('button', { name: 'Build' }).boundingBox(),
    ];
    expect(over?.x).toBeGreaterThanOrEqual((tools?.x ?? 0) + (tools?.width ?? 0));
  }),
);

test(
  'a finger that rests with a tool in hand gets the loupe, and places where it is lifted',
  visiting(async (open) => {
    const page = await open(TOUCH);
    const finger = await fingers(page);
    await model(page).press('p');
    await model(page).press('f');
    const at = await spot(page, 0.3, 0.3);
    const loupe = model(page).locator('.loupe');
    await finger.down(at);
    expect(await loupe.isVisible()).toBe(false);
    await loupe.waitFor({ state: 'visible' });
    await finger.move({ x: at.x + 4, y: at.y + 3 });
    const box = await loupe.boundingBox();
    expect(box?.width).toBe(96);
    // Its middle is 72 px above the finger.
    expect((box?.y ?? 0) + 48).toBeCloseTo(at.y + 3 - 72, 0);
    await finger.up();
    expect(await loupe.isVisible()).toBe(false);
    expect(await model(page).locator('[data-sign="fixed"]').count()).toBe(1);
  }),
);

test(
  'a finger that rests with nothing in hand opens the menu, and its release does nothing more',
  visiting(async (open) => {
    const page = await open(TOUCH);
    const finger = await fingers(page);
    await model(page).press('p');
    await frames(page);
    await finger.down(await spot(page, 0.5, 0.45));
    const menu = page.getByRole('menu', { name: 'House' });
    await menu.waitFor();
    await finger.up();
    expect(await menu.count()).toBe(1);
    expect(await model(page).getAttribute('aria-label')).toContain('nothing selected');
  }),
);

test(
  'a second finger freezes a drag while the view moves; lifting both places it',
  visiting(async (open) => {
    const page = await open(TOUCH);
    const finger = await fingers(page);
    await select(page, 'Garage');
    await model(page).press('p');
    await model(page).press('z');
    await frames(page);
    const handle = await model(page).locator('[data-grip="Corner 1 of Garage"]').boundingBox();
    if (!handle) throw new Error('there is no handle');
    const at = { x: handle.x + handle.width / 2, y: handle.y + handle.height / 2 };
    const away = { x: at.x - 30, y: at.y + 30 };
    await finger.down(at);
    await finger.move({ x: at.x - 15, y: at.y + 15 });
    await finger.move(away);
    const held = await sizeShown(page);
    // Clear of the strip, which lies between.
    const other = { x: away.x + 120, y: away.y - 220 };
    await finger.down(away, other);
    await finger.move({ x: away.x + 40, y: away.y }, { x: other.x + 40, y: other.y });
    expect(await sizeShown(page)).toBe(held);
    expect(await model(page).locator('[data-held="true"]').count()).toBe(1);
    await finger.up();
    expect(await model(page).locator('[data-held="true"]').count()).toBe(0);
    expect(await sizeShown(page)).toBe(held);
    const before = planFrom(demoText).structures['garage'];
    const after = planFrom(await savedText(page)).structures['garage'];
    expect(after).not.toEqual(before);
  }),
);

/** How large the garage is said to be in the list, which follows a drag. */
const sizeShown = (page: Page): Promise<string> =>
  page
    .getByRole('tree', { name: 'Site' })
    .getByRole('treeitem', { name: /^Garage ?,/ })
    .innerText();
