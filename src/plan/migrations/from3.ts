import { each, isRecord, type Draft } from './draft.ts';

/**
 * Version 3 knew of a mount only where it is, of a data sheet only sensor, pictures and lens, and nothing of a drill card.
 * A picture of the whole sensor was what every mode began as, so that only another crop was surely meant.
 */
export const from3 = (draft: Draft): Draft => ({
  ...draft,
  version: 4,
  cameras: each(draft['cameras'], (camera) => ({
    ...camera,
    mount: mounted(camera['mount']),
    device: described(camera['device']),
    housing: null,
    sheet: {
      name: null,
      minimumIllumination: null,
      imagesPerSecond: null,
      bitRate: null,
      powerClass: null,
      focusDistance: null,
    },
    card: { ticked: [], asBuilt: {} },
  })),
  settings: isRecord(draft['settings']) ? { ...draft['settings'], cautions: {} } : draft['settings'],
});

// Written out: a plate or a limit that a new mount gets later must not change what an old file meant.
const limits = { pan: null, tilt: null, roll: null };
const plate = { width: 0.12, height: 0.12, right: 0, up: 0 };

function mounted(mount: unknown): unknown {
  if (!isRecord(mount) || mount['kind'] === 'loose') return mount;
  return mount['kind'] === 'pole' ? { ...mount, limits } : { ...mount, plate, limits };
}

function described(device: unknown): unknown {
  if (!isRecord(device)) return device;
  const { modes, lens, recorded } = device;
  return {
    ...device,
    modes: Array.isArray(modes) ? modes.map((mode: unknown) => moded(mode, recorded)) : modes,
    lens: isRecord(lens) ? { ...lens, statedVfov: null, statedIn: null } : lens,
  };
}

function moded(mode: unknown, recorded: unknown): unknown {
  if (!isRecord(mode)) return mode;
  const { crop } = mode;
  const isPart = isRecord(crop) && (crop['width'] !== 1 || crop['height'] !== 1);
  return { ...mode, use: mode['id'] === recorded ? 'recorded' : 'other', cropKnown: isPart };
}
