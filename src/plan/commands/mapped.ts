/** A record with its values changed; the same record where no value changed. */
export function mapped<T>(
  record: Readonly<Record<string, T>>,
  change: (value: T) => T,
): Readonly<Record<string, T>> {
  const entries = Object.entries(record).map(([key, value]) => [key, change(value)] as const);
  return entries.some(([key, value]) => value !== record[key]) ? Object.fromEntries(entries) : record;
}

/** A list with its items changed; the same list where no item changed. */
export function mappedList<T>(list: readonly T[], change: (item: T, index: number) => T): readonly T[] {
  const next = list.map(change);
  return next.every((item, index) => item === list[index]) ? list : next;
}
