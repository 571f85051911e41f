import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { changing, frames, visiting } from './driver.ts';
import { openFile, select } from './gestures.ts';

const found = z.array(z.string());

/** What axe-core finds to be serious or critical, a sentence each. */
async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return found.parse(
    await page.evaluate(`axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) =>
      violations
        .filter(({ impact }) => impact === 'serious' || impact === 'critical')
        .flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) =>
          id + ': ' + html.slice(0, 120) + ' ' + failureSummary.replace(/\\s+/g, ' '))))`),
  );
}

test.for(['light', 'dark'] as const)(
  'no serious fault of access: the demo plan, %s, with everything that may lie open',
  (colorScheme) =>
    visiting(async (open) => {
      const page = await open({ colorScheme });
      expect(await violations(page), 'the plan').toEqual([]);
      await select(page, 'C1');
      expect(await violations(page), 'a camera').toEqual([]);
      await select(page, 'House');
      expect(await violations(page), 'a structure').toEqual([]);
      await select(page, 'Door lamp');
      expect(await violations(page), 'a lamp').toEqual([]);
      await select(page, 'Night');
      await changing(page, () => page.getByRole('button', { name: 'Judge in these' }).click());
      expect(await violations(page), 'conditions, at night').toEqual([]);
      await changing(page, () => page.getByText('Face 1.6 m').click());
      await changing(page, () => page.getByLabel('Faces look').selectOption('place'));
      expect(await violations(page), 'faces that look to a place').toEqual([]);
      await page.getByRole('button', { name: 'North, and views' }).click();
      await page.getByRole('button', { name: 'Keys', exact: true }).click();
      await page.getByText('Other', { exact: true }).click();
      await page.getByRole('application').press('c');
      await page.getByRole('application').hover();
      await frames(page);
      expect(await violations(page), 'keys, views, a tool').toEqual([]);
    })(),
);

test(
  'no serious fault of access: faults, the ways in, an empty plan, a report',
  visiting(async (open) => {
    const page = await open();
    await openFile(page, { name: 'page.html', text: '<p>' });
    await page.getByRole('button', { name: 'Put away' }).waitFor();
    expect(await violations(page), 'a fault').toEqual([]);
    await changing(page, () => page.getByRole('button', { name: 'New, empty plan' }).click());
    expect(await violations(page), 'an empty plan').toEqual([]);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page
      .getByRole('button', { name: /^Forget/ })
      .first()
      .waitFor();
    expect(await violations(page), 'the ways in').toEqual([]);
    await changing(page, () => openFile(page, 'tests/inputs/osm/bristol-terraces.geojson'));
    await page.getByRole('heading', { name: 'What was read' }).waitFor();
    expect(await violations(page), 'a report').toEqual([]);
  }),
);

test(
  'no serious fault of access on a phone',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    expect(await violations(page), 'the plan').toEqual([]);
    await select(page, 'C1');
    await page.getByRole('button', { name: 'Settings' }).tap();
    await frames(page);
    expect(await violations(page), 'a camera').toEqual([]);
    await changing(page, async () => {
      await page.getByRole('button', { name: 'Open', exact: true }).tap();
      await page.getByRole('button', { name: 'New, empty plan' }).tap();
    });
    expect(await violations(page), 'an empty plan').toEqual([]);
  }),
);
