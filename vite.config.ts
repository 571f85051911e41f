import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

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

const app = {
  target: 'es2022',
  outDir: 'dist/app',
  emptyOutDir: true,
};

// `vite build` makes the app, `vite build --mode cli` the command line.
export default defineConfig(({ mode }) => ({
  plugins: [react()],
  base: './',
  publicDir: 'assets',
  worker: { format: 'es' },
  server: { headers: isolation },
  preview: { headers: { ...isolation, 'Content-Security-Policy': policy } },
  ...(mode === 'cli' ? { build: commandLine, ssr: { noExternal: true } } : { build: app }),
}));
