import type { Draft } from './draft.ts';

/**
 * Version 1 had flat ground only, no patches, no lamps, and nothing of the light that a camera throws. Its one way to
 * say that trees stand as drawn was to say that they are in leaf: that was judged as drawn, and means so here.
 */
export const from1 = (draft: Draft): Draft => ({
  ...draft,
  version: 2,
  patches: {},
  patchOrder: [],
  lamps: {},
  lampOrder: [],
  cameras: each(draft['cameras'], (camera) => ({ ...camera, infrared: null, exposure: null })),
  requirements: each(draft['requirements'], (requirement) => ({ ...requirement, looks: null })),
  situations: each(draft['situations'], (situation) =>
    situation['treesInLeaf'] === true ? { ...situation, treesInLeaf: null } : situation,
  ),
  settings: isRecord(draft['settings'])
    ? { ...draft['settings'], leastLux: 1, screenClosing: 30 }
    : draft['settings'],
});

const isRecord = (value: unknown): value is Draft =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Each record of records changed; what is no record stays for the schema to refuse. */
const each = (records: unknown, change: (record: Draft) => Draft): unknown =>
  isRecord(records)
    ? Object.fromEntries(
        Object.entries(records).map(([key, record]) => [key, isRecord(record) ? change(record) : record]),
      )
    : records;
