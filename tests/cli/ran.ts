import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { run } from '../../src/cli/run.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';

export const DEMO = 'shared/plans/demo.plan.json';

/** What a command said, and its exit code. */
export interface Said {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export function soffit(...words: string[]): Said {
  let [out, err] = ['', ''];
  const code = run(words, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  if (typeof code !== 'number') throw new Error(`soffit ${words.join(' ')} takes its time: await it`);
  return { code, out, err };
}

/** The same of a command that takes its time. */
export async function soffitLater(...words: string[]): Promise<Said> {
  let [out, err] = ['', ''];
  const code = await run(words, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}

/** What a command printed as JSON; it must have succeeded. */
export function soffitJson(...words: string[]): unknown {
  const { code, out, err } = soffit(...words, '--json');
  if (code !== 0) throw new Error(err);
  return JSON.parse(out);
}

/** A folder of its own for a test's files. */
export function scratch(): { file(name: string): string; clear(): void } {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'soffit-cli-'));
  return { file: (name) => path.join(folder, name), clear: () => rmSync(folder, { recursive: true }) };
}

/** The plan in a file, which must be one. */
export const planAt = (file: string): Plan => {
  const read = readPlan(readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};
