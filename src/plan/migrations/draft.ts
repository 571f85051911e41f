/** A plan file as JSON gives it, before any schema has seen it. */
export type Draft = Readonly<Record<string, unknown>>;
