import { chromium } from 'playwright-core';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, expect, inject } from 'vitest';

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

/** Starts the Chromium that the global set-up found. */
export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: inject('chromium'),
    // Chromium refuses its sandbox to root.
    chromiumSandbox: process.getuid?.() !== 0 && process.platform !== 'win32',
    args: flags,
  });

/**
 * A fresh profile in which nothing is kept yet. Where the browser would open a window of the system to choose a file, the app
 * is made to take the way of browsers that have none: that window cannot be pressed by a test.
 */
const profile = async (browser: Browser, options: BrowserContextOptions = {}): Promise<BrowserContext> => {
  const context = await browser.newContext({
    baseURL: inject('address'),
    viewport: { width: 1120, height: 620 },
    deviceScaleFactor: 1,
    locale: 'en-GB',
    reducedMotion: 'reduce',
    ...options,
  });
  await context.addInitScript(() => {
    Reflect.deleteProperty(globalThis, 'showOpenFilePicker');
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
  });
  return context;
};

/** Opens the app in a fresh profile, on which `prepare` is called before, and waits for its first coverage. */
export type Open = (
  options?: BrowserContextOptions,
  prepare?: (context: BrowserContext) => Promise<void>,
) => Promise<Page>;

// One browser a test file; its profiles share nothing.
let browser: Promise<Browser> | null = null;
afterAll(async () => (await browser)?.close());

/**
 * The body of a test that drives the app. At its end everything is closed, and it fails if a page threw, or logged an error
 * or a warning: a violation of the content policy among them.
 */
export const visiting = (body: (open: Open) => Promise<void>) => async (): Promise<void> => {
  const complaints: string[] = [];
  const contexts: BrowserContext[] = [];
  const open: Open = async (options, prepare) => {
    browser ??= launch();
    const context = await profile(await browser, options);
    contexts.push(context);
    context.on('weberror', (error) => complaints.push(error.error().message));
    context.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    await prepare?.(context);
    const page = await context.newPage();
    await page.goto('./');
    await settled(page);
    return page;
  };
  try {
    await body(open);
  } finally {
    for (const context of contexts) await context.close();
  }
  expect(complaints).toEqual([]);
};

/** The revision of the plan that is shown; 0 before the first coverage. */
export const revisionOf = (page: Page): Promise<number> =>
  page.locator('[data-revision]').evaluate((app) => Number(app.getAttribute('data-revision')));

/** Waits until coverage newer than a revision is shown and nothing more is being worked out. */
export const settled = async (page: Page, than = 0): Promise<void> => {
  await page.waitForFunction((least) => {
    const app = document.querySelector('[data-revision]');
    return (
      app !== null &&
      Number(app.getAttribute('data-revision')) > least &&
      app.getAttribute('data-computing') === 'false'
    );
  }, than);
  await frames(page);
};

/** Does something that changes the plan or the question, and waits for its coverage. */
export const changing = async (page: Page, act: () => Promise<unknown>): Promise<void> => {
  const before = await revisionOf(page);
  await act();
  await settled(page, before);
};

/** Waits until what was asked of the page is painted: a frame that takes it up, and the next. */
export const frames = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );
