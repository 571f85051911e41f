/** A plan file as JSON gives it, before any schema has seen it. */
export type Draft = Readonly<Record<string, unknown>>;

export const isRecord = (value: unknown): value is Draft =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Each record of records changed; what is no record stays for the schema to refuse. */
export const each = (records: unknown, change: (record: Draft) => Draft): unknown =>
  isRecord(records)
    ? Object.fromEntries(
        Object.entries(records).map(([key, record]) => [key, isRecord(record) ? change(record) : record]),
      )
    : records;
