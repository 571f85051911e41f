// npm start: from a bare clone to the served app, with nothing installed before.
import path from 'node:path';
import { buildIfStale } from './build.mjs';
import { install, root } from './install.mjs';
import { portFrom } from './port.mjs';

/** @param {{ port: number, chosen: boolean }} asked */
const serve = async ({ port, chosen }) => {
  const vite = await import('vite');
  const server = await vite.preview({
    root,
    configFile: path.join(root, 'vite.config.ts'),
    logLevel: 'warn',
    preview: { port, strictPort: chosen },
  });
  const address = server.resolvedUrls?.local[0] ?? `http://localhost:${port}/`;
  console.log(`\nSoffit is served at ${address}\nCtrl+C ends it.`);
};

try {
  const asked = portFrom(process.argv.slice(2));
  install();
  await buildIfStale('app');
  await buildIfStale('cli');
  await serve(asked);
} catch (error) {
  const message = error instanceof Error ? error.message : String(error);
  const taken = /port \d+ is already in use/i.test(message);
  console.error(taken ? `${message}. Choose another: npm start -- --port 5000` : message);
  process.exitCode = 1;
}
