/** What a value at the end of the search may be for it to count as found. */
const FOUND = 1e-7;
const STEPS = 6;
const HALVINGS = 40;

/**
 * How far a curve on which a function is 0 lies from the middle of one of its chords, m: positive to the right of the way
 * from the first end to the second. The function is ≥ 0 to the left of the curve.
 * By secants, and where those fail (the function jumps) by halving; 0 where no curve is found within a chord.
 */
export function sagittaOf(
  value: (p: number, q: number) => number,
  p0: number,
  q0: number,
  p1: number,
  q1: number,
): number {
  const chord = Math.hypot(p1 - p0, q1 - q0);
  if (chord < 1e-9) return 0;
  const [mp, mq] = [(p0 + p1) / 2, (q0 + q1) / 2];
  const [np, nq] = [(q1 - q0) / chord, (p0 - p1) / chord];
  const at = (out: number) => value(mp + out * np, mq + out * nq);
  const here = at(0);
  let [s0, f0] = [0, here];
  let s1 = (here >= 0 ? 1 : -1) * chord * 1e-3;
  for (let step = 0; step < STEPS; step += 1) {
    const f1 = at(s1);
    if (Math.abs(f1) < FOUND && Math.abs(s1) <= chord / 2) return s1;
    const onward = s1 - (f1 * (s1 - s0)) / (f1 - f0);
    if (!(Math.abs(onward) <= chord)) break;
    [s0, f0, s1] = [s1, f1, onward];
  }
  return halved(at, here >= 0, chord);
}

function halved(at: (out: number) => number, holds: boolean, chord: number): number {
  const sense = holds ? 1 : -1;
  let within = 0;
  let beyond = chord / 64;
  while (at(sense * beyond) >= 0 === holds) {
    within = beyond;
    beyond *= 2;
    if (beyond > chord) return 0;
  }
  for (let step = 0; step < HALVINGS && beyond - within > 1e-10; step += 1) {
    const middle = (within + beyond) / 2;
    if (at(sense * middle) >= 0 === holds) within = middle;
    else beyond = middle;
  }
  return (sense * (within + beyond)) / 2;
}
