type Records<T> = Readonly<Record<string, T>>;

/**
 * Records with one changed; the same records where the change leaves it the same object.
 * @param what the record is called
 * @throws     RangeError where there is no such record
 */
export function withRecord<T extends object>(
  records: Records<T>,
  id: string,
  what: string,
  change: (record: T) => T,
): Records<T> {
  const record = Object.hasOwn(records, id) ? records[id] : undefined;
  if (!record) throw new RangeError(`the plan has no ${what} ${id}`);
  const next = change(record);
  return next === record ? records : { ...records, [id]: next };
}

/** Records without one. */
export const withoutRecord = <T>(records: Records<T>, id: string): Records<T> =>
  Object.fromEntries(Object.entries(records).filter(([key]) => key !== id));
