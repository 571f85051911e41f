import { cos, sin } from '../../../src/base/angle.ts';
import type { Vec2 } from '../../../src/base/vector.ts';
import { sceneOf } from '../../../src/assess/sceneOf.ts';
import { drillFacts, type DrillFacts } from '../../../src/assess/card/drillFacts.ts';
import type { Building, Opening, Service, Structure } from '../../../src/model/structure.ts';
import type { Mount } from '../../../src/optics/mount.ts';
import type { Plan, PlanCamera } from '../../../src/plan/plan.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import { bare, cameraOn, house } from '../../plan/wholePlan.ts';

export { bare };

/** A place turned about the origin, ° clockwise as bearings run. */
export const turned = ([x, y]: Vec2, by: number): Vec2 => [
  x * cos(by) + y * sin(by),
  y * cos(by) - x * sin(by),
];

const window: Opening = {
  id: 'window',
  name: 'Window',
  kind: 'window',
  face: 0,
  along: 5,
  width: 1.2,
  height: 1.2,
  sill: 0.9,
  setBack: 0.1,
  leaf: 'glazed',
  passage: 'clear',
  got: 'measured',
};

const socket: Service = {
  id: 'socket',
  name: 'Hall socket',
  kind: 'socket',
  face: 0,
  along: 3.5,
  height: 0.4,
  inside: true,
  got: 'measured',
};

/**
 * A house 8 m by 6 m, walls 3 m high and 0.3 m thick, eaves 0.4 m out. On its first wall, from the left: a door from 2.0 to
 * 2.9 m, 2.0 m high; a window from 5.0 to 6.2 m, 0.9 to 2.1 m up; a tap at 6.0 m; a socket inside at 3.5 m.
 * @param turn ° by which the whole house is turned clockwise about its south-west corner
 */
export function houseTurned(turn: number, change: Partial<Building> = {}): Building {
  return {
    ...house,
    outline: house.outline.map((corner) => turned(corner, turn)),
    wallThickness: 0.3,
    openings: [...house.openings, window],
    services: [...house.services, socket],
    floors: [
      { name: 'Ground floor', level: 0.15, ceiling: 2.4 },
      { name: 'First floor', level: 2.8, ceiling: 2.3 },
    ],
    got: { outline: 'measured', base: 'measured', height: 'measured', roof: 'measured' },
    ...change,
  };
}

/** The same house with its outline drawn the other way round, so that faces, openings and services count backwards. */
export function houseReversed(): Building {
  const own = houseTurned(0);
  return {
    ...own,
    // South wall: the edge from (8, 0) back to (0, 0), the third.
    outline: [
      [0, 0],
      [0, 6],
      [8, 6],
      [8, 0],
    ],
    openings: own.openings.map((one) => ({ ...one, face: 3, along: 8 - one.along - one.width })),
    services: own.services.map((one) => ({ ...one, face: 3, along: 8 - one.along })),
  };
}

/** A plan of structures and one camera C, with what else is said of it. */
export function siteOf(
  structures: readonly Structure[],
  mount: Mount,
  change: Partial<PlanCamera> = {},
): Plan {
  const camera: PlanCamera = { ...cameraOn('C', mount), ...change };
  return {
    ...emptyPlan('site', 'Card site'),
    structures: Object.fromEntries(structures.map((one) => [one.id, one])),
    structureOrder: structures.map(({ id }) => id),
    cameras: { C: camera },
    cameraOrder: ['C'],
  };
}

/** The facts of camera C's card; there must be one. */
export function factsOf(plan: Plan): DrillFacts {
  const facts = drillFacts(plan, sceneOf(plan, null), 'C');
  if (typeof facts === 'string') throw new Error(facts);
  return facts;
}
