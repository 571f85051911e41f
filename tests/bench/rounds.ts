import type { Chance } from '../house/seeded.ts';

/**
 * Runs every job once a round, in another order each time, since what follows on the same buffers looks faster. A job that
 * answers a promise tells its own time, ms.
 */
export async function timesOf<Name extends string>(
  jobs: Readonly<Record<Name, () => void | Promise<number>>>,
  rounds: number,
  chance: Chance,
): Promise<(name: Name) => readonly number[]> {
  const names = Object.keys(jobs).filter((name): name is Name => name in jobs);
  const times = new Map(names.map((name) => [name, new Array<number>()]));
  for (let round = 0; round < rounds; round += 1) {
    const order = names.map((name) => ({ name, at: chance.next() })).sort((one, two) => one.at - two.at);
    for (const { name } of order) {
      const start = performance.now();
      const running = jobs[name]();
      const spent = performance.now() - start;
      times.get(name)?.push(running === undefined ? spent : await running);
    }
  }
  return (name) => times.get(name) ?? [];
}

/** How many times longer one job took than another, a round against the same round: the median. */
export const ratio = (slow: readonly number[], fast: readonly number[]): number =>
  median(slow.map((time, round) => time / (fast[round] ?? Number.NaN)));

/** The value below which a share of the list lies. Throws RangeError on an empty list. */
export function quantile(list: readonly number[], share: number): number {
  const sorted = list.toSorted((one, two) => one - two);
  const found = sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  if (found === undefined) throw new RangeError('quantile: the list is empty');
  return found;
}

export const median = (list: readonly number[]): number => quantile(list, 0.5);

/** A table in Markdown, a line a row. */
export const table = (
  head: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): readonly string[] => [
  `| ${head.join(' | ')} |`,
  `|${head.map(() => ' --- ').join('|')}|`,
  ...rows.map((row) => `| ${row.join(' | ')} |`),
];
