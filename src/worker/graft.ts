/**
 * The same value as `next`, with every part that equals its counterpart in `former` replaced by it: a plan that came
 * across as a copy keeps the identity of what did not change, by which the session's cache knows it.
 * Plain data only: records, lists, strings, numbers, booleans, null.
 */
export function graft<T>(former: unknown, next: T): T {
  return grafted(former, next) as T;
}

function grafted(former: unknown, next: unknown): unknown {
  if (Object.is(former, next)) return former;
  if (typeof former !== 'object' || typeof next !== 'object' || former === null || next === null) return next;
  if (Array.isArray(former) !== Array.isArray(next)) return next;
  const old = new Map<string, unknown>(Object.entries(former));
  const entries = Object.entries(next).map(([key, value]: [string, unknown]) => {
    const part = old.has(key) ? grafted(old.get(key), value) : value;
    return { key, part, kept: old.has(key) && part === old.get(key) };
  });
  if (entries.length === old.size && entries.every(({ kept }) => kept)) return former;
  if (Array.isArray(next)) return entries.map(({ part }) => part);
  return Object.fromEntries(entries.map(({ key, part }) => [key, part]));
}
