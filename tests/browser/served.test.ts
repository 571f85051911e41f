import { expect, inject, test } from 'vitest';
import { visiting } from './driver.ts';

test(
  'the page is isolated, so that workers may share memory',
  visiting(async (open) => {
    const page = await open();
    expect(await page.evaluate(() => globalThis.crossOriginIsolated)).toBe(true);
  }),
);

test('the content policy lets nothing in from elsewhere', async () => {
  const { headers } = await fetch(inject('address'));
  const policy = headers.get('content-security-policy') ?? '';
  expect(policy).toContain("default-src 'self'");
  expect(policy).not.toMatch(/https?:|\*/);
});
