/** Between two places of unlike sign, by halving with an exponential through the three values (Ridders), to a tenth of a nanometre. */
export function root(f: (x: number) => number, a: number, fa: number, b: number, fb: number): number {
  let last = Infinity;
  for (let step = 0; step < 60 && Math.abs(b - a) > 1e-10; step += 1) {
    const middle = (a + b) / 2;
    const fm = f(middle);
    const under = Math.sqrt(fm * fm - fa * fb);
    if (fm === 0 || under === 0) return middle;
    const x = middle + ((middle - a) * (fa >= fb ? 1 : -1) * fm) / under;
    const fx = f(x);
    // Where a condition jumps, such places may stand still far from it.
    if (fx === 0 || (Math.abs(fx) < 1e-7 && Math.abs(x - last) < 1e-10)) return x;
    last = x;
    if (fm >= 0 !== fx >= 0) [a, fa, b, fb] = [middle, fm, x, fx];
    else if (fa >= 0 !== fx >= 0) [b, fb] = [x, fx];
    else [a, fa] = [x, fx];
  }
  return (a + b) / 2;
}

/** The least of sense·f between two places, by golden sections. */
export function nearestToZero(f: (x: number) => number, a: number, b: number, sense: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [a, b];
  let [one, two] = [high - golden * (high - low), low + golden * (high - low)];
  let [f1, f2] = [sense * f(one), sense * f(two)];
  for (let step = 0; step < 24; step += 1)
    if (f1 < f2) {
      [high, two, f2] = [two, one, f1];
      one = high - golden * (high - low);
      f1 = sense * f(one);
    } else {
      [low, one, f1] = [one, two, f2];
      two = low + golden * (high - low);
      f2 = sense * f(two);
    }
  return (low + high) / 2;
}
