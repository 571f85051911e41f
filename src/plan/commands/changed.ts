/**
 * A record with some of its keys set anew: the same object where they hold already, so that no step of history is made
 * and no cache is dropped. Keys that are undefined in `change` stay as they are.
 * @throws RangeError on a number that is not finite
 */
export function changed<T extends object>(record: T, change: Partial<NoInfer<T>>): T {
  const entries = Object.entries(change).filter(([, value]: [string, unknown]) => value !== undefined);
  for (const [key, value] of entries)
    if (typeof value === 'number' && !Number.isFinite(value))
      throw new RangeError(`${key} must be a finite number, got ${value}`);
  const differs = entries.some(([key, value]) => !Object.is(Reflect.get(record, key), value));
  return differs ? { ...record, ...Object.fromEntries(entries) } : record;
}
