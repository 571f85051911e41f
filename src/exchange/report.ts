/** What became of some things of a file: a word of `reportText`, how many, and the names of the first of them. */
export interface ReportLine {
  readonly code: string;
  readonly count: number;
  readonly names: readonly string[];
}

/** What an import took, what it left out and what it had to assume, most first. Worded once, in `reportText`. */
export interface ImportReport {
  readonly taken: readonly ReportLine[];
  readonly left: readonly ReportLine[];
  readonly assumed: readonly ReportLine[];
}

/** The most names that a line keeps. */
const NAMES = 3;

/** Counts things as a file is read. */
export class Tally {
  private readonly lines = new Map<string, { count: number; names: string[] }>();

  add(code: string, name?: string): void {
    const line = this.lines.get(code) ?? { count: 0, names: [] };
    line.count += 1;
    if (name !== undefined && line.names.length < NAMES) line.names.push(name);
    this.lines.set(code, line);
  }

  /** The lines, largest first. */
  report(): readonly ReportLine[] {
    return [...this.lines]
      .map(([code, { count, names }]) => ({ code, count, names }))
      .toSorted((a, b) => b.count - a.count);
  }
}
