import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changing, frames, settled, visiting } from './driver.ts';
import { field, model, openFile, openPlan, row, savedText, select, typeField } from './gestures.ts';
import { demoText, planFrom } from './demo.ts';
import { planText } from '../../src/plan/write.ts';

const bar = (page: Page) => page.getByRole('banner');
const isKept = (page: Page) =>
  bar(page)
    .getByText(/^kept on this device, \d\d:\d\d$/)
    .waitFor();

test(
  'a reload in mid-edit brings back every finished step',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    await typeField(page, 'Tilt', '33');
    // Half typed, never taken; then a step in the very moment of the reload.
    await field(page, 'Pan').fill('12');
    await field(page, 'Pan').press('Escape');
    await field(page, 'Roll').fill('4');
    await field(page, 'Roll').press('Enter');
    await page.reload();
    await settled(page);
    await isKept(page);
    const plan = planFrom(await savedText(page));
    expect(plan.cameras['C1']).toMatchObject({ tilt: 33, roll: 4, pan: 236 });
  }),
);

test(
  'what the bar calls kept outlives a tab that is killed',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C2');
    await typeField(page, 'Tilt', '31');
    await isKept(page);
    const text = await savedText(page);
    // Without a word to the page: neither unload nor pagehide is sent.
    await page.close();
    const next = await page.context().newPage();
    await next.goto('./');
    await settled(next);
    expect(await savedText(next)).toBe(text);
    expect(planFrom(text).cameras['C2']?.tilt).toBe(31);
  }),
);

test(
  'a second tab is told so and reads only; “Edit here instead” moves the pen',
  visiting(async (open) => {
    const first = await open();
    await select(first, 'C1');
    await typeField(first, 'Tilt', '33');
    await isKept(first);

    const second = await first.context().newPage();
    await second.goto('./');
    await settled(second);
    await bar(second).getByText('read only, open in another tab').waitFor();
    await select(second, 'C1');
    expect(await field(second, 'Tilt').inputValue()).toBe('33.0');
    expect(await field(second, 'Tilt').evaluate((input: HTMLInputElement) => input.readOnly)).toBe(true);
    await model(second).press('Delete');
    await frames(second);
    expect(await row(second, 'C1').count()).toBe(1);
    expect(await bar(first).getByText('read only').count()).toBe(0);

    await second.getByRole('button', { name: 'Edit here instead' }).click();
    await bar(first).getByText('read only, open in another tab').waitFor();
    await typeField(second, 'Tilt', '35');
    expect(await field(first, 'Tilt').evaluate((input: HTMLInputElement) => input.readOnly)).toBe(true);

    // And back, with what the other tab made of it.
    await first.bringToFront();
    await first.getByRole('button', { name: 'Edit here instead' }).click();
    await bar(second).getByText('read only, open in another tab').waitFor();
    await select(first, 'C1');
    expect(await field(first, 'Tilt').inputValue()).toBe('35.0');
    await typeField(first, 'Tilt', '36');
  }),
);

test(
  'opening another plan keeps the former on the device, where it opens again',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    await typeField(page, 'Tilt', '33');
    const text = await savedText(page);
    await openPlan(page, planText({ ...planFrom(demoText), id: 'other', name: 'Another place' }));
    expect(await page.getByRole('textbox', { name: 'Name of the plan' }).inputValue()).toBe('Another place');

    // The same plan from its file, older than what is kept: neither goes lost.
    await openFile(page, { name: 'kiln.plan.json', text: demoText });
    await page.getByText('Opened “Kiln Cottage”.').first().waitFor();
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    const kept = page.getByRole('button', { name: /^Open Kiln Cottage of/ });
    await kept.nth(1).waitFor();
    expect(await kept.count()).toBe(2);
    await changing(page, () => kept.nth(1).click());
    expect(await savedText(page)).toBe(text);
  }),
);
