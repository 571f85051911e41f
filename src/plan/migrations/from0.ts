import type { Draft } from './draft.ts';

/** Version 0 had no settings and no credits: it was judged by what are the default settings of version 1. */
export const from0 = (draft: Draft): Draft => ({
  ...draft,
  version: 1,
  settings: firstSettings,
  credits: [],
});

// Written out, not `defaultSettings`: a default that changes later must not change what an old file meant.
const firstSettings = {
  edition: 'iec-62676-4-2014',
  units: 'metres',
  stature: 1.7,
  walkingSpeed: 1.4,
  faceHeight: 1.6,
  plateHeight: 0.5,
  faceLimits: { identify: { above: 20, side: 45 }, recognise: { above: 30, side: 60 } },
  tolerances: { pan: 2, tilt: 1, place: 0.05, focalLengthPercent: 3 },
};
