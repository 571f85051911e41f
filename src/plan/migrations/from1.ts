import { each, isRecord, type Draft } from './draft.ts';

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
