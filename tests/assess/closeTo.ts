/** What two answers may differ by, m or m²: parts of a sum may come in another order. */
const ROUNDING = 1e-9;

type Numbers = Uint8Array | Int32Array | Uint32Array | Float32Array | Float64Array;

const isNumbers = (value: unknown): value is Numbers => ArrayBuffer.isView(value) && 'length' in value;

/**
 * Where two answers differ, as paths; empty where they are the same. Whole numbers, words and cells must be the very same,
 * other numbers to rounding.
 */
export function differences(one: unknown, two: unknown, path = ''): readonly string[] {
  if (Object.is(one, two)) return [];
  if (typeof one === 'number' && typeof two === 'number') {
    const near = Math.abs(one - two) <= ROUNDING * Math.max(1, Math.abs(one));
    return near && !(Number.isInteger(one) && Number.isInteger(two)) ? [] : [`${path}: ${one} ≠ ${two}`];
  }
  if (isNumbers(one) && isNumbers(two)) return arrays(one, two, path);
  if (typeof one !== 'object' || typeof two !== 'object' || one === null || two === null)
    return [`${path}: ${String(one)} ≠ ${String(two)}`];
  const [a, b] = [
    new Map<string, unknown>(Object.entries(one)),
    new Map<string, unknown>(Object.entries(two)),
  ];
  const keys = [...new Set([...a.keys(), ...b.keys()])];
  return keys.flatMap((key) => differences(a.get(key), b.get(key), `${path}.${key}`));
}

function arrays(one: Numbers, two: Numbers, path: string): readonly string[] {
  if (one.constructor !== two.constructor || one.length !== two.length) return [`${path}: other arrays`];
  const isReal = one instanceof Float64Array;
  let found = 0;
  for (let at = 0; at < one.length; at += 1) {
    const [x, y] = [one[at] ?? 0, two[at] ?? 0];
    if (x !== y && !(isReal && Math.abs(x - y) <= ROUNDING * Math.max(1, Math.abs(x)))) found += 1;
  }
  return found === 0 ? [] : [`${path}: ${found} of ${one.length} differ`];
}
