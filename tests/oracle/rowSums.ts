/** Rows are at most this far apart; where what is on them changes no closer than FINE, or FINEST where that changes much, m. */
const [COARSE, FINE, FINEST] = [0.15, 2e-4, 1e-8];
/** What rows FINE apart may leave open, m². */
const MUCH = 1e-6;
/** Simpson's halving test must pass to this, m² per m of rows. */
const TOLERANCE = 3e-7;

/** What lies on a row, as so many lengths. */
export interface Row {
  readonly size: number;
  at(y: number): Lengths;
}

/** Lengths on rows put together into areas, from the first break to the last. */
export function sumOfRows(row: Row, breaks: readonly number[]): number[] {
  const sums = new Array<number>(row.size).fill(0);
  for (let at = 0; at + 1 < breaks.length; at += 1) {
    const [low, high] = [breaks[at] ?? 0, breaks[at + 1] ?? 0];
    const parts = Math.max(1, Math.ceil((high - low) / COARSE));
    const hair = (high - low) * 1e-9;
    let before = row.at(low + hair);
    for (let part = 0; part < parts; part += 1) {
      const [from, to] = [
        low + (part * (high - low)) / parts,
        low + ((part + 1) * (high - low)) / parts - (part + 1 === parts ? hair : 0),
      ];
      const after = row.at(to);
      halve(row, from, before, (from + to) / 2, row.at((from + to) / 2), to, after, sums);
      before = after;
    }
  }
  return sums;
}

export interface Lengths {
  readonly lengths: readonly number[];
  /** Tells rows apart on which other things lie, or the same in another order. */
  readonly sign: string;
}

function halve(
  row: Row,
  from: number,
  first: Lengths,
  middle: number,
  half: Lengths,
  to: number,
  last: Lengths,
  sums: number[],
): void {
  const size = to - from;
  const [one, two] = [row.at((from + middle) / 2), row.at((middle + to) / 2)];
  const same = [half, last, one, two].every(({ sign }) => sign === first.sign);
  const f = (lengths: Lengths, i: number) => lengths.lengths[i] ?? 0;
  let worst = 0;
  const finer = sums.map((_, i) => {
    const coarse = (size / 6) * (f(first, i) + 4 * f(half, i) + f(last, i));
    const fine = (size / 12) * (f(first, i) + 4 * f(one, i) + 2 * f(half, i) + 4 * f(two, i) + f(last, i));
    worst = Math.max(worst, Math.abs(fine - coarse));
    return fine + (same ? (fine - coarse) / 15 : 0);
  });
  const isFine = size <= FINEST || (size <= FINE && worst <= MUCH);
  if ((same && worst <= TOLERANCE * size) || isFine) {
    finer.forEach((area, i) => (sums[i] = (sums[i] ?? 0) + area));
    return;
  }
  halve(row, from, first, (from + middle) / 2, one, middle, half, sums);
  halve(row, middle, half, (middle + to) / 2, two, to, last, sums);
}
