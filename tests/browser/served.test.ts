import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launch, visit } from './driver.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

test('the served page answers, and its title names the tool', async () => {
  const { page, close } = await visit(browser);
  expect(await page.title()).toContain('Soffit');
  await close();
});

test('the page is isolated, so that workers may share memory', async () => {
  const { page, close } = await visit(browser);
  expect(await page.evaluate(() => globalThis.crossOriginIsolated)).toBe(true);
  await close();
});

test('the content policy lets nothing in from elsewhere', async () => {
  const { headers } = await fetch(inject('address'));
  const policy = headers.get('content-security-policy') ?? '';
  expect(policy).toContain("default-src 'self'");
  expect(policy).not.toMatch(/https?:|\*/);
});
