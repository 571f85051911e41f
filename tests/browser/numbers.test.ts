import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { changing, frames, visiting } from './driver.ts';
import { bandRows, dragLabel, field, figure, savedText, select, typeField, undo } from './gestures.ts';
import { assessed, demoText, isTenthOf, planFrom } from './demo.ts';
import { scratch, soffitJson } from '../cli/ran.ts';
import { planText } from '../../src/plan/write.ts';
import { writeFileSync } from 'node:fs';
import { z } from 'zod';

const camera = z.object({
  id: z.string(),
  byBand: z.array(z.object({ band: z.string(), value: z.number() })),
  nearBlindDistance: z.number().nullable(),
  reach: z.array(z.object({ band: z.string(), distance: z.number().nullable() })),
});
const cover = z.object({ cameras: z.array(camera) });

/** What the command line says of a camera in a plan's text. */
const saidOf = (text: string, id: string): z.infer<typeof camera> => {
  const folder = scratch();
  try {
    const file = folder.file('saved.plan.json');
    writeFileSync(file, text);
    const found = cover.parse(soffitJson('cover', file)).cameras.find((one) => one.id === id);
    if (found === undefined) throw new Error(`the command line says nothing of ${id}`);
    return found;
  } finally {
    folder.clear();
  }
};

/** Areas and reaches of the sheet, finest band first. */
const sheetRows = async (page: Page): Promise<(number | undefined)[][]> =>
  [...(await bandRows(page, 'Area and reach by band')).values()].map((cells) =>
    cells.map((cell) => cell?.value),
  );

test(
  'a typed tilt changes the numbers, which are those of the engine and of the command line',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    const before = await sheetRows(page);
    await typeField(page, 'Tilt', '41.5');
    const after = await sheetRows(page);
    expect(after).not.toEqual(before);
    expect(await field(page, 'Tilt').inputValue()).toBe('41.5');

    const text = await savedText(page);
    const plan = planFrom(text);
    expect(plan.cameras['C1']?.tilt).toBe(41.5);
    const { cameras } = assessed(plan);
    const engine = cameras.find((one) => one.camera.id === 'C1');
    const told = saidOf(text, 'C1');
    const finestFirst = <T>(list: readonly T[] | undefined): T[] => (list ?? []).toReversed();
    finestFirst(engine?.areas.byBand).forEach(({ value }, at) => {
      expect(isTenthOf(after[at]?.[0], value), `area ${at}: ${after[at]?.[0]}, engine ${value}`).toBe(true);
      expect(finestFirst(told.byBand)[at]?.value).toBeCloseTo(value, 9);
    });
    finestFirst(engine?.reach.byBand).forEach((distance, at) => {
      expect(distance === null ? after[at]?.[1] === undefined : isTenthOf(after[at]?.[1], distance)).toBe(
        true,
      );
      expect(finestFirst(told.reach)[at]?.distance).toBe(distance);
    });
    const blind = await figure(page, 'Nothing seen nearer than');
    expect(blind?.value).toBeCloseTo(told.nearBlindDistance ?? -1, 2);

    await undo(page);
    expect(await sheetRows(page)).toEqual(before);
  }),
);

test(
  'a label dragged sideways changes tilt and numbers on the way; it is one step',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    const before = await sheetRows(page);
    await dragLabel(page, 'Tilt', 30);
    // The button is still down.
    expect(await field(page, 'Tilt').inputValue()).toBe('29.0');
    expect(await sheetRows(page)).not.toEqual(before);
    await page.mouse.up();
    await frames(page);
    expect(await field(page, 'Tilt').inputValue()).toBe('29.0');
    await undo(page);
    expect(await sheetRows(page)).toEqual(before);
    expect(await savedText(page)).toBe(planText(planFrom(demoText)));
  }),
);

test(
  'what cannot be a tilt is told in words, and the former is kept',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    for (const text of ['steep', '91', '']) {
      await field(page, 'Tilt').fill(text);
      await field(page, 'Tilt').press('Enter');
      const words = page.getByRole('alert');
      expect(await words.innerText(), `of “${text}”`).toMatch(/.+\.$/);
      await field(page, 'Tilt').press('Escape');
      expect(await field(page, 'Tilt').inputValue()).toBe('26.0');
      expect(await words.count()).toBe(0);
    }
  }),
);

test(
  'what coverage is asked for changes picture and numbers alike',
  visiting(async (open) => {
    const page = await open();
    await changing(page, () => page.getByText('Face 1.6 m').click());
    const { site } = assessed(planFrom(demoText), { kind: 'face', height: 1.6 });
    const rows = [...(await bandRows(page, 'Area by best band')).values()];
    site.byBand.toReversed().forEach(({ value }, at) => {
      const shown = rows[at]?.[0]?.value;
      expect(isTenthOf(shown, value), `${shown}, engine ${value}`).toBe(true);
    });
    await page.getByText('Other', { exact: true }).click();
    await typeField(page, 'Above ground', '250 cm');
    expect(await page.getByText(/^Height, 2\.50 m$/).count()).toBe(1);
  }),
);
