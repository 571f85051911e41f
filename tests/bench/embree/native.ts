import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import type { Facets } from '../../../src/sight/facets.ts';
import type { FramedCells } from '../framedCells.ts';

/** One ray at a time, or packets with and without Embree's flag for rays that keep together. */
export const PACKETS = ['packet8', 'packet16', 'packet8coherent', 'packet16coherent'] as const;
type Mode = 'single' | (typeof PACKETS)[number];

export interface NativeRays {
  /** Every ray of every camera once: ms. */
  run(mode: Mode): Promise<number>;
  /** 1 for each cell that the last run found hidden, camera after camera. */
  hidden(): Promise<Uint8Array>;
  close(): void;
}

// Benches run at the root of the project.
const SOURCE = 'tests/bench/embree/rays.cpp';
const PROGRAM = `node_modules/.cache/soffit-bench-native/rays`;

/** Compiles the program where it is missing or older than its source; the reason why there is none, or null. */
export function nativeMissing(): string | null {
  if (existsSync(PROGRAM) && statSync(PROGRAM).mtimeMs > statSync(SOURCE).mtimeMs) return null;
  mkdirSync(path.dirname(PROGRAM), { recursive: true });
  const words = ['-std=c++17', '-O3', '-march=native', '-o', PROGRAM, SOURCE, '-lembree3'];
  const built = spawnSync('g++', words, { encoding: 'utf8' });
  if (built.error) return 'g++ is not installed';
  if (built.stderr.includes('embree3/rtcore.h')) return 'Embree 3 is not installed (Debian: libembree-dev)';
  return built.status === 0 ? null : `g++ failed: ${built.stderr.split('\n')[0] ?? ''}`;
}

/** Embree with the scene laid out in its tree, waiting for words. */
export async function startNative(facets: Facets, cells: readonly FramedCells[]): Promise<NativeRays> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'soffit-bench-'));
  const scene = path.join(folder, 'scene');
  const answers = path.join(folder, 'answers');
  const counts = [facets.count, cells.length, ...cells.map(({ hidden }) => hidden.length)];
  const head = Int32Array.from(counts.length % 2 === 0 ? counts : [...counts, 0]);
  const eyes = Float64Array.from(cells.flatMap(({ camera }) => camera.eye));
  const parts = [head, facets.corners, eyes, ...cells.map(({ targets }) => targets)];
  writeFileSync(
    scene,
    Buffer.concat(
      parts.map(({ buffer, byteOffset, byteLength }) => Buffer.from(buffer, byteOffset, byteLength)),
    ),
  );
  const program = spawn(PROGRAM, [scene], { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = createInterface({ input: program.stdout })[Symbol.asyncIterator]();
  const ask = async (words: string | null): Promise<string> => {
    if (words !== null) program.stdin.write(`${words}\n`);
    const answer: IteratorResult<string, unknown> = await lines.next();
    if (answer.done === true) throw new Error('the native program ended early');
    return answer.value;
  };
  await ask(null);
  return {
    run: async (mode) => Number(await ask(mode)),
    hidden: async () => {
      await ask(`answers ${answers}`);
      return new Uint8Array(readFileSync(answers));
    },
    close: () => {
      program.stdin.end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
