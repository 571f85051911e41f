import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { z } from 'zod';
import { isThorough } from '../house/seeded.ts';

const found = z.array(z.string());

/** All that axe-core finds, however slight, a sentence each. */
export async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return found.parse(
    await page.evaluate(`axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) =>
      violations
        .flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) =>
          id + ': ' + html.slice(0, 120) + ' ' + failureSummary.replace(/\\s+/g, ' '))))`),
  );
}

/** The themes to look at: both in the thorough run, else one. */
export const schemes = (one: 'light' | 'dark'): readonly ('light' | 'dark')[] =>
  isThorough ? ['light', 'dark'] : [one];
