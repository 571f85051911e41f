import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { demoText, planFrom } from './demo.ts';
import { changing, frames, visiting } from './driver.ts';
import { bandRows, crossSpot, discSpot, field, model, savedText, select, undo } from './gestures.ts';
import type { Spot } from './gestures.ts';
import { difference, pictureOf } from './picture.ts';
import { planText } from '../../src/plan/write.ts';

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

type Touches = readonly Spot[];

/** Fingers on the glass: each entry is where they are at one moment; the first puts them down, the last lifts them. */
async function touch(page: Page, moments: readonly Touches[]): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const send = async (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: Touches): Promise<void> => {
    await session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: fingers.map(({ x, y }, id) => ({ x, y, id })),
    });
    await frames(page);
  };
  for (const [at, fingers] of moments.entries()) await send(at === 0 ? 'touchStart' : 'touchMove', fingers);
  await send('touchEnd', []);
  await session.detach();
}

const needle = (page: Page): Promise<string | null> =>
  page.getByRole('button', { name: 'North, and views' }).locator('g').getAttribute('transform');

const scale = (page: Page): Promise<string> => page.getByRole('img', { name: /^The bar is/ }).innerHTML();

test(
  'a tap selects, the tab shows its sheet, and everything lies within the width',
  visiting(async (open) => {
    const page = await open(phone);
    const disc = await discSpot(page, 'C2');
    await page.touchscreen.tap(disc.x, disc.y);
    await frames(page);
    expect(await model(page).getAttribute('aria-label')).toBe('Model of Kiln Cottage, C2 selected');
    expect(await field(page, 'Tilt').count()).toBe(0);
    await page.getByRole('button', { name: 'Settings' }).tap();
    expect((await bandRows(page, 'Area and reach by band')).size).toBe(4);
    await changing(page, async () => {
      await field(page, 'Tilt').fill('30');
      await field(page, 'Tilt').press('Enter');
    });
    expect(planFrom(await savedText(page)).cameras['C2']?.tilt).toBe(30);
    const { wide, shown } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      shown: document.documentElement.clientWidth,
    }));
    expect(wide).toBeLessThanOrEqual(shown);
    // Whatever is pressed is large enough for a finger (WCAG 2.5.8: 24 px).
    const small = await page.getByRole('button').evaluateAll((buttons) =>
      buttons.flatMap((button) => {
        const { width, height } = button.getBoundingClientRect();
        return width > 0 && Math.min(width, height) < 24 ? [button.textContent] : [];
      }),
    );
    expect(small).toEqual([]);
  }),
);

test(
  'two taps mount a camera: where it hangs, then what it looks at; the Model stays in view',
  visiting(async (open) => {
    const page = await open(phone);
    await page.getByRole('button', { name: 'Add a camera' }).tap();
    const strip = page.getByRole('form', { name: 'What is being changed' }).getByRole('status');
    const { x, y } = await discSpot(page, 'C1');
    // Beside C1, on the south wall of the house.
    await changing(page, () => page.touchscreen.tap(x - 26, y + 51));
    expect(await strip.innerText()).toBe('Now point at what it should look at.');
    expect(await page.evaluate(() => scrollY)).toBe(0);
    const fixed = await pictureOf(page);
    await changing(page, () => page.touchscreen.tap(x - 50, y + 90));
    const { mount, tilt } = planFrom(await savedText(page)).cameras['C4'] ?? {};
    expect(mount).toMatchObject({ host: 'house' });
    expect(tilt).toBeGreaterThan(5);
    expect(tilt).not.toBe(20);
    expect(difference(fixed, await pictureOf(page))).toBeGreaterThan(100);
  }),
);

test(
  'one finger turns the view, two slide and zoom it; none changes the plan',
  visiting(async (open) => {
    const page = await open(phone);
    const box = await model(page).boundingBox();
    const [x, y] = [195, (box?.y ?? 0) + 190];
    const north = await needle(page);
    const before = await pictureOf(page);
    await touch(page, [[{ x, y }], [{ x: x + 15, y }], [{ x: x + 50, y: y + 10 }]]);
    expect(await needle(page)).not.toBe(north);
    expect(difference(before, await pictureOf(page))).toBeGreaterThan(2000);

    const size = await scale(page);
    const apart = (by: number): Touches => [
      { x: x - by, y },
      { x: x + by, y },
    ];
    await touch(page, [apart(30), apart(45), apart(70), apart(90)]);
    expect(await scale(page)).not.toBe(size);
    expect(await savedText(page)).toBe(planText(planFrom(demoText)));
  }),
);

test(
  'a finger on the cross aims the selected camera',
  visiting(async (open) => {
    const page = await open(phone);
    await select(page, 'C1');
    await model(page).evaluate((element) => element.scrollIntoView({ block: 'center' }));
    await frames(page);
    const { x, y } = await crossSpot(page);
    await changing(page, () => touch(page, [[{ x, y }], [{ x: x + 15, y }], [{ x: x + 30, y: y + 5 }]]));
    const aimed = planFrom(await savedText(page)).cameras['C1'];
    expect(aimed?.pan).not.toBe(236);
    await undo(page);
    expect(await savedText(page)).toBe(planText(planFrom(demoText)));
  }),
);
