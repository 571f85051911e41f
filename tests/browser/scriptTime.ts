import type { CDPSession, Page } from 'playwright-core';
import { z } from 'zod';

/** Sums from within the page how long its scripts spend in calls of the renderer, ms. Runs before any script of the page. */
export function countDrawing(): void {
  const count = { spent: 0 };
  const isCall = (value: unknown): value is (...given: unknown[]) => unknown => typeof value === 'function';
  const context = WebGL2RenderingContext.prototype;
  for (const name of Object.getOwnPropertyNames(context)) {
    const value: unknown = Object.getOwnPropertyDescriptor(context, name)?.value;
    if (!isCall(value)) continue;
    Reflect.set(context, name, function (this: unknown, ...given: unknown[]): unknown {
      const start = performance.now();
      const result: unknown = Reflect.apply(value, this, given);
      count.spent += performance.now() - start;
      return result;
    });
  }
  Reflect.set(globalThis, 'drawingTime', count);
}

/** How long the scripts of a page have run until now, and how much of that in calls of the renderer, ms. */
export interface Spent {
  readonly script: number;
  readonly drawing: number;
}

const counted = z.object({ spent: z.number() });

export async function spent(page: Page, session: CDPSession): Promise<Spent> {
  const { metrics } = await session.send('Performance.getMetrics');
  const script = (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? 0) * 1000;
  const count = await page.evaluate((): unknown => Reflect.get(globalThis, 'drawingTime'));
  const { spent: drawing } = counted.parse(count);
  return { script, drawing };
}
