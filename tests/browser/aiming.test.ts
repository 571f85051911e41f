import { expect, test } from 'vitest';
import { frames, revisionOf, visiting } from './driver.ts';
import { bodySpot, crossSpot, field, pull, redo, savedText, select, undo } from './gestures.ts';
import { difference, pictureOf } from './picture.ts';
import { demoText, planFrom } from './demo.ts';
import { planText } from '../../src/plan/write.ts';

const untouched = planText(planFrom(demoText));

test(
  'the cross dragged over the ground aims the camera; one undo takes all of it back',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    const before = await pictureOf(page);
    const from = await crossSpot(page);
    const revision = await revisionOf(page);

    await pull(page, from, { x: 60, y: 12 });
    // While it is held, the sheet and the ground follow.
    const held = { pan: await field(page, 'Pan').inputValue(), tilt: await field(page, 'Tilt').inputValue() };
    expect(held.pan).not.toBe('236.0');
    expect(held.tilt).not.toBe('26.0');
    expect(await revisionOf(page)).toBeGreaterThan(revision);
    const there = await crossSpot(page);
    expect(Math.hypot(there.x - from.x - 60, there.y - from.y - 12)).toBeLessThan(3);
    await page.mouse.up();
    await frames(page);
    expect(difference(before, await pictureOf(page))).toBeGreaterThan(1000);
    const aimed = planFrom(await savedText(page)).cameras['C1'];
    expect(aimed?.pan.toFixed(1)).toBe(held.pan);
    expect(aimed?.tilt.toFixed(1)).toBe(held.tilt);

    await undo(page);
    expect(await savedText(page)).toBe(untouched);
    expect(difference(before, await pictureOf(page))).toBe(0);
    await redo(page);
    expect(planFrom(await savedText(page)).cameras['C1']).toEqual(aimed);
  }),
);

test(
  'Esc in mid-drag puts the aim back and leaves nothing to undo',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    await pull(page, await crossSpot(page), { x: -50, y: 20 });
    expect(await field(page, 'Pan').inputValue()).not.toBe('236.0');
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await frames(page);
    expect(await savedText(page)).toBe(untouched);
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).getAttribute('aria-disabled')).toBe(
      'true',
    );
  }),
);

test(
  'the body dragged along its wall slides the camera, and stays on the wall',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C2');
    await pull(page, await bodySpot(page), { x: -25, y: -12 });
    await page.mouse.up();
    await frames(page);
    const { mount } = planFrom(await savedText(page)).cameras['C2'] ?? {};
    expect(mount).toMatchObject({ kind: 'arm', host: 'garage' });
    expect(mount).not.toEqual(planFrom(demoText).cameras['C2']?.mount);
    await undo(page);
    expect(await savedText(page)).toBe(untouched);
  }),
);

test(
  'a drag elsewhere turns the view and changes nothing of the plan',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    const before = await pictureOf(page);
    const cross = await crossSpot(page);
    await pull(page, { x: cross.x, y: cross.y + 170 }, { x: 80, y: -30 });
    await page.mouse.up();
    await frames(page);
    expect(difference(before, await pictureOf(page))).toBeGreaterThan(5000);
    expect(await savedText(page)).toBe(untouched);
  }),
);
