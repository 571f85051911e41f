import path from 'node:path';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { buildIfStale } from '../house/build.mjs';
import { findBrowser } from '../house/findBrowser.ts';
import { root } from '../house/install.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the served build, with a slash at its end. */
    address: string;
    /** File of the Chromium to drive. */
    chromium: string;
  }
}

/** Before all browser tests: a browser, a fresh build, and its server on a free port. */
export default async (project: TestProject): Promise<() => Promise<void>> => {
  project.provide('chromium', findBrowser());
  await buildIfStale('app');
  const server = await preview({
    root,
    configFile: path.join(root, 'vite.config.ts'),
    logLevel: 'warn',
    preview: { port: 0, host: '127.0.0.1' },
  });
  const bound = server.httpServer.address();
  if (bound === null || typeof bound === 'string') throw new Error('the preview server has no port');
  project.provide('address', `http://127.0.0.1:${bound.port}/`);
  return () => server.close();
};
