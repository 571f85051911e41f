import { chromium } from 'playwright-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { inject } from 'vitest';

/** A software renderer, and no traffic of the browser's own. */
const flags = [
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Starts the Chromium that the global set-up found; the caller closes it. */
export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: inject('chromium'),
    // Chromium refuses its sandbox to root.
    chromiumSandbox: process.getuid?.() !== 0 && process.platform !== 'win32',
    args: flags,
  });

/** The app in a fresh profile, and what it complained of meanwhile. */
export interface Visit {
  readonly page: Page;
  /** Errors that were thrown or logged, violations of the content policy among them. */
  readonly complaints: string[];
  close(): Promise<void>;
}

/** Opens the served app, without waiting for more than the page's own `load`. */
export const visit = async (browser: Browser, options: BrowserContextOptions = {}): Promise<Visit> => {
  const context = await browser.newContext({
    baseURL: inject('address'),
    viewport: { width: 640, height: 400 },
    deviceScaleFactor: 1,
    locale: 'en-GB',
    ...options,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto('./');
  return { page, complaints, close: () => context.close() };
};
