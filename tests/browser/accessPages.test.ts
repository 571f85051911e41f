import { expect, test } from 'vitest';
import { frames, visiting } from './driver.ts';
import { select } from './gestures.ts';
import { schemes, violations } from './violations.ts';

test.for(schemes('dark'))('no fault of access: the views and pages of a camera, %s', (colorScheme) =>
  visiting(async (open) => {
    const page = await open({ colorScheme, viewport: { width: 1280, height: 800 } });
    const goTo = (name: string) =>
      page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name }).click();
    await select(page, 'C1');
    await page.locator('[data-cautions]:not([data-cautions="looking"])').waitFor();
    await page.getByText('Both', { exact: true }).click();
    await page.getByRole('heading', { name: /^What C1 sees/ }).waitFor();
    await frames(page);
    expect(await violations(page), 'view and cautions').toEqual([]);
    await page.getByText('Person at true pixels', { exact: true }).click();
    await page.getByRole('heading', { name: 'The person at true pixels' }).waitFor();
    await frames(page);
    expect(await violations(page), 'person').toEqual([]);
    await goTo('Lens trial');
    await page.getByRole('button', { name: 'Another lens' }).click();
    await page.getByRole('slider').first().waitFor();
    await frames(page);
    expect(await violations(page), 'trial').toEqual([]);
    await goTo('Drill cards');
    await page.getByRole('button', { name: 'Save PDF' }).waitFor();
    await frames(page);
    expect(await violations(page), 'cards').toEqual([]);
    await goTo('Quick sum');
    await page.getByRole('button', { name: 'Copy picture' }).waitFor();
    await frames(page);
    expect(await violations(page), 'sum').toEqual([]);
  })(),
);
