import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

/** What the served app may load and run: itself, nothing from elsewhere. */
const policy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "worker-src 'self' blob:",
  "connect-src 'self' blob: data:",
  "object-src 'none'",
  "base-uri 'none'",
].join('; ');

const commandLine = {
  ssr: true,
  target: 'node20',
  outDir: 'dist/cli',
  emptyOutDir: true,
  copyPublicDir: false,
  rolldownOptions: {
    input: { soffit: 'src/cli/soffit.ts' },
    output: { entryFileNames: '[name].js' },
  },
};

const workerEntry = path.join(import.meta.dirname, 'src/worker/entry.ts');

/**
 * The address of the worker's script as a module. Vite would build a worker as a program of its own; as a further entry of
 * this one it shares the engine with the window, which is then fetched once.
 */
const sharedWorker = (): Plugin => {
  let building = false;
  return {
    name: 'shared-worker',
    configResolved: ({ command }) => {
      building = command === 'build';
    },
    resolveId: (id) => (id === 'virtual:worker' ? `\0${id}` : null),
    load(id) {
      if (id !== '\0virtual:worker') return null;
      if (!building) return `export { default } from ${JSON.stringify(`${workerEntry}?worker&url`)};`;
      const entry = this.emitFile({ type: 'chunk', id: workerEntry, name: 'worker' });
      return `export default import.meta.ROLLUP_FILE_URL_${entry};`;
    },
  };
};

const app = {
  target: 'es2022',
  modulePreload: {
    // A worker has no page to announce them in.
    resolveDependencies: (_: string, files: string[], { hostId }: { hostId: string }) =>
      /worker/.test(hostId) ? [] : files,
  },
  outDir: 'dist/app',
  emptyOutDir: true,
};

// `vite build` makes the app, `vite build --mode cli` the command line.
export default defineConfig(({ mode }) => ({
  plugins: [react(), sharedWorker()],
  base: './',
  publicDir: 'assets',
  worker: { format: 'es' },
  server: { headers: isolation },
  preview: { headers: { ...isolation, 'Content-Security-Policy': policy } },
  ...(mode === 'cli' ? { build: commandLine, ssr: { noExternal: true } } : { build: app }),
}));
