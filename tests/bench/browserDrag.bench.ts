import path from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { z } from 'zod';
import { findBrowser } from '../house/findBrowser.ts';
import type { Dragged } from './browser/drag.ts';
import type { Bench } from './main.ts';
import { median, quantile, table } from './rounds.ts';

/** Steps in a row that are judged together: the machine may be shared, and the quietest of them counts. */
const BATCH = 20;
/** Greatest median of a step, ms. */
const BARS: Readonly<Record<string, number>> = {
  'demo plan': 4,
  'S1 house': 4,
  'S2 street': 8,
  'S3 town': 8,
};

const answers = z.array(
  z.object({
    scene: z.string(),
    camera: z.string(),
    target: z.enum(['ground', 'plate', 'height', 'face', 'surface']),
    cells: z.number(),
    steps: z.array(z.number()),
  }),
);

/** The page's script in one piece. */
async function script(): Promise<string> {
  const made = await build({
    root: process.cwd(),
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2022',
      rolldownOptions: {
        input: path.resolve('tests/bench/browser/drag.ts'),
        output: { format: 'iife', codeSplitting: false },
      },
    },
  });
  const [bundle] = Array.isArray(made) ? made : [made];
  const code = bundle && 'output' in bundle ? bundle.output[0].code : '';
  if (code === '') throw new Error('the page was not bundled');
  return code;
}

async function inChromium(): Promise<{ readonly version: string; readonly found: readonly Dragged[] }> {
  const browser = await chromium.launch({
    executablePath: findBrowser(),
    // Chromium refuses its sandbox to root.
    chromiumSandbox: process.getuid?.() !== 0 && process.platform !== 'win32',
    args: ['--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--disable-background-networking'],
  });
  try {
    const page = await browser.newPage();
    page.setDefaultTimeout(600_000);
    await page.addScriptTag({ content: await script() });
    const found: unknown = await page.evaluate(async () => {
      const run: unknown = Reflect.get(globalThis, 'dragged');
      const answer: unknown = typeof run === 'function' ? await Reflect.apply(run, undefined, []) : null;
      return answer;
    });
    return { version: browser.version(), found: answers.parse(found) };
  } finally {
    await browser.close();
  }
}

/** The median of the quietest batch. */
function quietest(steps: readonly number[]): number {
  const batches = Array.from({ length: Math.floor(steps.length / BATCH) }, (_, at) =>
    median(steps.slice(at * BATCH, (at + 1) * BATCH)),
  );
  return Math.min(...batches);
}

const bench: Bench = {
  title:
    'One step of one camera that is dragged, in Chromium: cells, outline, bands, quick causes, reach, upload',
  async run() {
    const { version, found } = await inChromium();
    const rows = Object.keys(BARS).map((scene) => {
      const own = found.filter((one) => one.scene === scene);
      const all = own.flatMap(({ steps }) => steps);
      const slowest = own.toSorted((one, two) => quietest(two.steps) - quietest(one.steps))[0];
      const quiet = median(own.map(({ steps }) => quietest(steps)));
      return { scene, own, all, quiet, slowest, bar: BARS[scene] ?? 0 };
    });
    const lines = [
      `Chromium ${version}, a step a frame`,
      ...table(
        [
          'scene',
          'cells',
          'cameras',
          'step, median of the quietest batch, ms',
          'of all steps, ms',
          '95th, ms',
          'slowest camera, quietest batch, ms',
          'bar, ms',
        ],
        rows.map(({ scene, own, all, quiet, slowest, bar }) => [
          scene,
          Math.max(...own.map(({ cells }) => cells)),
          new Set(own.map(({ camera }) => camera)).size,
          quiet.toFixed(2),
          median(all).toFixed(2),
          quantile(all, 0.95).toFixed(2),
          slowest === undefined
            ? ''
            : `${quietest(slowest.steps).toFixed(2)} (${slowest.camera}, ${slowest.target})`,
          bar,
        ]),
      ),
    ];
    if (rows.some(({ quiet, bar }) => quiet >= bar))
      throw new Error(`a bar is missed:\n  ${lines.join('\n  ')}`);
    return lines;
  },
};

export default bench;
