import { writeFileSync } from 'node:fs';
import os from 'node:os';
import { parseArgs } from 'node:util';

/** One measured case, for other programs to read; ratios are the other's time ÷ ours, null where the other is absent. */
export interface Row {
  readonly scene: string;
  readonly cells: number;
  readonly path: 'typescript';
  readonly ms: number;
  readonly overBvh: number | null;
  readonly overEmbreeSingle: number | null;
  readonly overEmbreePacket: number | null;
}

/**
 * One measured thing, the default export of a file `tests/bench/<name>.bench.ts`.
 * It makes its cases from a seed, measures a reference in the same run, and
 * gives lines to print; it throws when a bar is missed.
 */
export interface Bench {
  readonly title: string;
  run(record: (row: Row) => void): readonly string[] | Promise<readonly string[]>;
}

// The folder is the registry: a new file is found by its name.
const found = import.meta.glob<Bench>('./*.bench.ts', { import: 'default' });

const { values, positionals: words } = parseArgs({
  options: { json: { type: 'string' } },
  allowPositionals: true,
});
const chosen = Object.entries(found).filter(
  ([file]) => words.length === 0 || words.some((word) => file.includes(word)),
);
if (chosen.length === 0) {
  console.error(`No bench is named so. There are: ${Object.keys(found).join(', ') || 'none yet'}`);
  process.exitCode = 1;
}
const rows: Row[] = [];
for (const [file, load] of chosen) {
  const bench = await load();
  // Other work on the machine stretches times more than ratios.
  const busy = `${os.loadavg()[0]?.toFixed(1)} busy on ${os.cpus().length} cores`;
  console.log(`\n${bench.title}  (${file.slice(2)}; ${busy})`);
  try {
    for (const line of await bench.run((row) => rows.push(row))) console.log(`  ${line}`);
  } catch (error) {
    console.error(`  ${error instanceof Error ? error.message : String(error)}`);
    process.exitCode = 1;
  }
}
if (values.json !== undefined) writeFileSync(values.json, `${JSON.stringify({ rows }, null, 2)}\n`);
