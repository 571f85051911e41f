import type { Building, Structure } from '../../src/model/structure.ts';
import { NO_LIMITS, type Mount } from '../../src/optics/mount.ts';
import { defaultDevice, unknownSheet } from '../../src/plan/defaultDevice.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import type { Lamp, Patch, Picture, Plan, PlanCamera } from '../../src/plan/plan.ts';

export const house: Building = {
  kind: 'building',
  id: 'house',
  name: 'House',
  hidden: false,
  locked: false,
  outline: [
    [0, 0],
    [8, 0],
    [8, 6],
    [0, 6],
  ],
  holes: [],
  base: 0,
  height: 3,
  roof: { kind: 'gable', pitch: 40, overhang: 0.4, ridge: null, parapet: 0 },
  wallThickness: null,
  openings: [
    {
      id: 'door',
      name: 'Door',
      kind: 'door',
      face: 0,
      along: 2,
      width: 0.9,
      height: 2,
      sill: 0,
      setBack: 0.1,
      leaf: 'closed',
      passage: 'solid',
      got: 'measured',
    },
  ],
  services: [
    {
      id: 'tap',
      name: 'Garden tap',
      kind: 'tap',
      face: 0,
      along: 6,
      height: 0.5,
      inside: false,
      got: 'guessed',
    },
  ],
  floors: [{ name: 'Ground floor', level: 0.15, ceiling: 2.4 }],
  yearBuilt: null,
  got: { outline: 'measured', base: 'measured', height: 'mapped', roof: 'guessed' },
};

export const hedge: Structure = {
  kind: 'barrier',
  sort: 'hedge',
  id: 'hedge',
  name: 'Hedge',
  hidden: false,
  locked: false,
  line: [
    [-2, -6],
    [10, -6],
  ],
  closed: false,
  base: 0,
  height: 1.5,
  thickness: 0.6,
  passage: 'solid',
  openings: [],
  got: { line: 'measured', height: 'measured', thickness: 'guessed' },
};

/** What a mount has besides its place, where a test asks nothing of it. */
export const bare = { plate: { width: 0.12, height: 0.12, right: 0, up: 0 }, limits: NO_LIMITS } as const;

export const cameraOn = (id: string, mount: Mount): PlanCamera => ({
  id,
  name: id,
  mount,
  pan: 180,
  tilt: 20,
  roll: 0,
  device: defaultDevice,
  housing: null,
  sheet: unknownSheet,
  range: 30,
  infrared: null,
  exposure: null,
  card: { ticked: [], asBuilt: {} },
  hidden: false,
  locked: false,
});

const drive: Patch = {
  id: 'drive',
  name: 'Drive',
  outline: [
    [9, -5],
    [12, -5],
    [12, 2],
    [9, 2],
  ],
  base: 0,
  pitch: 6,
  rises: 0,
  got: 'mapped',
};

const porchLamp: Lamp = {
  id: 'porch-lamp',
  name: 'Porch lamp',
  at: [3, -0.1],
  height: 2.3,
  light: { kind: 'range', range: 6 },
  got: 'measured',
};

const picture = (id: string, name: string, use: Picture['use']): Picture => ({
  id,
  name,
  file: { sha: id.padEnd(64, '0'), type: 'image/png', width: 1200, height: 900 },
  hidden: false,
  locked: true,
  use,
});

/** A picture of each use; their ids begin like hashes. */
const pictures = {
  deed: picture('deed', 'Deed plan', {
    kind: 'site',
    at: [-10, 12],
    metresPerPixel: 0.025,
    turn: 4,
    strength: 0.6,
  }),
  face: picture('face', 'South front', {
    kind: 'wall',
    structure: 'house',
    face: 0,
    corners: [
      [100, 800],
      [1100, 820],
      [1080, 120],
      [110, 100],
    ],
    along: 0,
    sill: 0,
    width: 8,
    height: 3,
    strength: 0.8,
  }),
  cafe: picture('cafe', 'From the gate', { kind: 'photo', at: [4, -6, 1.6], heading: 350 }),
};

/** A small plan with something in every record. */
export const wholePlan = (): Plan => ({
  ...emptyPlan('whole', 'Whole'),
  structures: { house, hedge },
  structureOrder: ['house', 'hedge'],
  cameras: {
    C1: cameraOn('C1', {
      kind: 'arm',
      host: 'house',
      face: 0,
      corner: 'end',
      distance: 2,
      height: 2.7,
      reach: 0.3,
      drop: 0.05,
      ...bare,
    }),
    C2: cameraOn('C2', { kind: 'loose', eye: [4, -5, 3] }),
  },
  cameraOrder: ['C1', 'C2'],
  patches: { drive },
  patchOrder: ['drive'],
  lamps: { 'porch-lamp': porchLamp },
  lampOrder: ['porch-lamp'],
  requirements: {
    path: {
      id: 'path',
      name: 'Path',
      shape: 'approach',
      at: [
        [4, -6],
        [2.4, -1],
      ],
      targetHeight: 1.6,
      target: 'face',
      band: 'identify',
      looks: { kind: 'along' },
    },
  },
  requirementOrder: ['path'],
  groups: { front: { id: 'front', name: 'Front', members: ['hedge', 'C2', 'porch-lamp'] } },
  groupOrder: ['front'],
  pictures,
  pictureOrder: ['deed', 'face', 'cafe'],
});
