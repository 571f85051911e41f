import { readdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { planText } from '../../src/plan/write.ts';
import { assessed, demoText, GROUND, isTenthOf, planFrom } from './demo.ts';
import { changing, frames, visiting } from './driver.ts';
import { bandRows, field, model, openPlan, row, savedText, select, typeField, undo } from './gestures.ts';

const demo = planFrom(demoText);

/** The sample with no light of its own. */
const unlit: Plan = {
  ...demo,
  lamps: {},
  lampOrder: [],
  cameras: Object.fromEntries(
    Object.entries(demo.cameras).map(([id, camera]) => [id, { ...camera, infrared: null }]),
  ),
};

const LIGHT = 'tests/inputs/ies/';
const file = readdirSync(LIGHT).find((name) => name.endsWith('.ies')) ?? '';

const areas = async (page: Page): Promise<(number | undefined)[]> =>
  [...(await bandRows(page, 'Area and reach by band')).values()].map(([area]) => area?.value);

/** The areas of C1 at night are those that the engine finds in the plan as it is saved. */
const expectEngine = async (page: Page): Promise<number> => {
  const { cameras } = assessed(planFrom(await savedText(page)), GROUND, 'night');
  const byBand = cameras.find(({ camera }) => camera.id === 'C1')?.areas.byBand.toReversed() ?? [];
  const shown = await areas(page);
  byBand.forEach(({ value }, at) => expect(isTenthOf(shown[at], value), `${shown[at]}, ${value}`).toBe(true));
  return byBand.reduce((sum, { value }) => sum + value, 0);
};

test(
  'a lamp is placed by keys, lights the ground at night, and shines as a light file says',
  visiting(async (open) => {
    const page = await open();
    await openPlan(page, planText(unlit));
    await changing(page, () =>
      page.getByRole('combobox', { name: 'Conditions' }).selectOption({ label: 'Night' }),
    );
    await select(page, 'C1');
    expect(await areas(page)).toEqual([0, 0, 0, 0]);

    await model(page).press('u');
    await model(page).press('Enter');
    await frames(page);
    await changing(page, () => model(page).press('Enter'));
    expect(await field(page, 'Height').inputValue()).toBe('2.40');
    expect(await row(page, 'L1').count()).toBe(1);
    await select(page, 'C1');
    const near = await expectEngine(page);
    expect(near).toBeGreaterThan(5);

    await select(page, 'L1');
    await typeField(page, 'Lights as far as', '9');
    await select(page, 'C1');
    expect(await expectEngine(page)).toBeGreaterThan(near + 5);

    await select(page, 'L1');
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Open a light file (.ies)' }).click(),
    ]);
    await changing(page, () => chooser.setFiles(LIGHT + file));
    const { light } = planFrom(await savedText(page)).lamps['L1'] ?? {};
    expect(light).toMatchObject({ kind: 'photometric', source: file });
    await select(page, 'C1');
    await expectEngine(page);
    await undo(page);
    await undo(page);
    await select(page, 'C1');
    expect(await expectEngine(page)).toBeCloseTo(near, 6);
  }),
);

test(
  'a file that is no light file leaves the lamp as it was, and says why',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'Door lamp');
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Open a light file (.ies)' }).click(),
    ]);
    await chooser.setFiles({ name: 'wrong.ies', mimeType: 'text/plain', buffer: Buffer.from('no light') });
    await page.getByText('“wrong.ies” was not opened. The lamp is as it was.').first().waitFor();
    expect(planFrom(await savedText(page)).lamps).toEqual(demo.lamps);
  }),
);
