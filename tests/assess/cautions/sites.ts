import { expect } from 'vitest';
import { createCautioner } from '../../../src/assess/cautions/cautioner.ts';
import type { Caution } from '../../../src/assess/cautions/caution.ts';
import { ROWS } from '../../../src/assess/cautions/registry.ts';
import type { ThresholdId } from '../../../src/assess/cautions/thresholds.ts';
import { runSteps } from '../../../src/assess/session.ts';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import type { Barrier, Block, Building, Opening, Structure } from '../../../src/model/structure.ts';
import type { Device } from '../../../src/optics/device.ts';
import { addCamera, newCamera } from '../../../src/plan/commands/addCamera.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import type { Plan, PlanCamera, Situation } from '../../../src/plan/plan.ts';

type Requirement = Plan['requirements'][string];

/** 8 × 4.5 mm behind 4 mm, rectilinear: 90° across, 1280 px for each metre a metre away; 58.7° up and down. */
export const square: Device = {
  sensor: { width: 8, height: 4.5 },
  modes: [
    {
      id: 'main',
      name: 'Main',
      use: 'recorded',
      frame: { width: 2560, height: 1440 },
      crop: { x: 0, y: 0, width: 1, height: 1 },
      cropKnown: true,
    },
  ],
  recorded: 'main',
  lens: {
    shortest: 4,
    longest: 4,
    focalLength: 4,
    statedHfov: null,
    statedVfov: null,
    statedIn: null,
    fNumber: null,
  },
};

/** A site with one camera, C1, 1.6 m up at the origin, level and looking north, and what else is given. */
export interface Site {
  readonly eye?: Vec3;
  readonly camera?: Partial<PlanCamera>;
  readonly structures?: readonly Structure[];
  readonly asked?: readonly Requirement[];
  readonly situations?: readonly Situation[];
  readonly cautions?: Partial<Record<ThresholdId, number>>;
  readonly plan?: Partial<Plan>;
}

export function siteOf({
  eye = [0, 0, 1.6],
  camera,
  structures = [],
  asked = [],
  situations = [],
  cautions = {},
  plan,
}: Site): Plan {
  const empty = emptyPlan('site', 'Site');
  const stood: Plan = {
    ...empty,
    structures: Object.fromEntries(structures.map((one) => [one.id, one])),
    structureOrder: structures.map(({ id }) => id),
    requirements: Object.fromEntries(asked.map((one) => [one.id, one])),
    requirementOrder: asked.map(({ id }) => id),
    situations: { ...empty.situations, ...Object.fromEntries(situations.map((one) => [one.id, one])) },
    situationOrder: [...empty.situationOrder, ...situations.map(({ id }) => id)],
    settings: { ...empty.settings, cautions },
    ...plan,
  };
  const made = newCamera(stood, { kind: 'loose', eye }, { pan: 0, tilt: 0 });
  return addCamera(stood, { ...made, range: 100, device: square, ...camera });
}

/** What one row says about C1. */
export function said(row: number, site: Site | Plan): readonly Caution[] {
  const plan = 'version' in site ? site : siteOf(site);
  const find = ROWS[row];
  if (find === undefined) throw new RangeError(`no row ${row}`);
  return runSteps(createCautioner({ [row]: find }).steps(plan, 'C1'))?.cautions ?? [];
}

/** The severities that a row gives, worst first. */
export const severities = (row: number, site: Site | Plan): string =>
  said(row, site)
    .map(({ severity }) => severity)
    .join(' ');

/** A face at a point, recognise, looking any way, unless it is said otherwise. */
export const face = (at: readonly Vec2[], more: Partial<Requirement> = {}): Requirement => ({
  id: 'face',
  name: 'the gate',
  shape: 'point',
  at,
  targetHeight: 1.6,
  target: 'face',
  band: 'recognise',
  looks: null,
  ...more,
});

export const plate = (at: Vec2, more: Partial<Requirement> = {}): Requirement =>
  face([at], { id: 'plate', name: 'the drive', targetHeight: 1.6, target: 'plate', band: 'detect', ...more });

export const infrared = { infrared: { range: 30, beam: 80 } } as const;

const named = (id: string) => ({ id, name: id, hidden: false, locked: false });
const measured = { outline: 'measured', base: 'measured', height: 'measured' } as const;

export const ringOf = (left: number, bottom: number, right: number, top: number): readonly Vec2[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

/** A block over a rectangle of the ground, from a height to another. */
export const block = (
  [left, bottom, right, top]: readonly [number, number, number, number],
  [base, height]: readonly [number, number],
  more: Partial<Block> = {},
): Block => ({
  kind: 'block',
  ...named('block'),
  outline: ringOf(left, bottom, right, top),
  base,
  height,
  passage: 'solid',
  got: measured,
  ...more,
});

/** A hedge, wall or fence from one point to another, 0.4 m thick. */
export const barrier = (line: readonly Vec2[], more: Partial<Barrier> = {}): Barrier => ({
  kind: 'barrier',
  sort: 'hedge',
  ...named('hedge'),
  line,
  closed: false,
  base: 0,
  height: 3,
  thickness: 0.4,
  passage: 'solid',
  openings: [],
  got: { line: 'measured', height: 'measured', thickness: 'measured' },
  ...more,
});

/** A house of 10 by 10 m with its south wall along y = 0, 5 m high under a flat roof; hollow with walls of 0.3 m. */
export const house = (more: Partial<Building> = {}): Building => ({
  kind: 'building',
  ...named('house'),
  outline: ringOf(0, 0, 10, 10),
  holes: [],
  base: 0,
  height: 5,
  roof: { kind: 'flat', pitch: 0, overhang: 0, ridge: null, parapet: 0 },
  wallThickness: 0.3,
  openings: [],
  services: [],
  floors: [],
  yearBuilt: null,
  got: { ...measured, roof: 'measured' },
  ...more,
});

/** A window 1.2 by 1.2 m, its sill 0.9 m up, from 3 m along the south wall. */
export const window = (more: Partial<Opening> = {}): Opening => ({
  id: 'window',
  name: 'Window',
  kind: 'window',
  face: 0,
  along: 3,
  width: 1.2,
  height: 1.2,
  sill: 0.9,
  setBack: 0.1,
  leaf: 'closed',
  passage: 'solid',
  got: 'measured',
  ...more,
});

/** Flush on the south wall of the house, the hole at so many metres along and up, looking south. */
export const onWall = (along: number, height: number): Partial<PlanCamera> => ({
  mount: {
    kind: 'flush',
    host: 'house',
    face: 0,
    corner: 'start',
    distance: along,
    height,
    standOff: 0.1,
    plate: { width: 0.1, height: 0.1, right: 0, up: 0 },
    limits: { pan: null, tilt: null, roll: null },
  },
  pan: 180,
});

export const night: Situation = {
  id: 'night',
  name: 'Night',
  night: true,
  away: [],
  leaves: {},
  treesInLeaf: null,
};

/** The house with a camera on its south wall. */
export const wall = (along: number, height: number, more: Partial<Building> = {}): Site => ({
  structures: [house(more)],
  camera: onWall(along, height),
});

/** A figure to so many digits after the point, within an object that is matched. */
export const nearly = (value: number, digits: number): unknown => expect.closeTo(value, digits);
