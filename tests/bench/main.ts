/**
 * One measured thing, the default export of a file `tests/bench/<name>.bench.ts`.
 * It makes its cases from a seed, measures a reference in the same run, and
 * gives lines to print; it throws when a bar is missed.
 */
export interface Bench {
  readonly title: string;
  run(): readonly string[] | Promise<readonly string[]>;
}

// The folder is the registry: a new file is found by its name.
const found = import.meta.glob<Bench>('./*.bench.ts', { import: 'default' });

const words = process.argv.slice(2);
const chosen = Object.entries(found).filter(
  ([file]) => words.length === 0 || words.some((word) => file.includes(word)),
);
if (chosen.length === 0) {
  console.error(`No bench is named so. There are: ${Object.keys(found).join(', ') || 'none yet'}`);
  process.exitCode = 1;
}
for (const [file, load] of chosen) {
  const bench = await load();
  console.log(`\n${bench.title}  (${file.slice(2)})`);
  try {
    for (const line of await bench.run()) console.log(`  ${line}`);
  } catch (error) {
    console.error(`  ${error instanceof Error ? error.message : String(error)}`);
    process.exitCode = 1;
  }
}
