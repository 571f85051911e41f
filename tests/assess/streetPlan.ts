import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Building } from '../../src/model/structure.ts';
import { NO_LIMITS } from '../../src/optics/mount.ts';

/** Metres from one building of a row to the next, and from row to row. */
const [PITCH, ROW] = [16, 30];

function building(id: string, [x, y]: readonly [number, number]): Building {
  return {
    kind: 'building',
    id,
    name: id,
    hidden: false,
    locked: false,
    outline: [
      [x, y],
      [x + 10, y],
      [x + 10, y + 8],
      [x, y + 8],
    ],
    holes: [],
    base: 0,
    height: 5,
    roof: { kind: 'gable', pitch: 35, overhang: 0.4, ridge: null, parapet: 0 },
    wallThickness: null,
    openings: [],
    services: [],
    floors: [],
    yearBuilt: null,
    got: { outline: 'measured', base: 'measured', height: 'measured', roof: 'measured' },
  };
}

/**
 * Rows of houses along two streets, with cameras on poles spread along them.
 * @param houses in rows of a quarter of them
 * @param tilt   of the cameras, °: with less than 40 they look past the horizon and have much of the street in the frame
 */
export function streetPlan(houses: number, cameras: number, tilt = 18): Plan {
  const row = Math.ceil(houses / 4);
  const all = Array.from({ length: houses }, (_, at) =>
    building(`H${at}`, [(at % row) * PITCH, Math.floor(at / row) * ROW]),
  );
  const plan: Plan = {
    ...emptyPlan('street', 'Street'),
    structures: Object.fromEntries(all.map((one) => [one.id, one])),
    structureOrder: all.map(({ id }) => id),
  };
  return Array.from({ length: cameras }, (_, at) => at).reduce((built, at) => {
    const x = ((at + 0.5) * row * PITCH) / cameras;
    const y = (at % 3) * ROW + 15;
    const mount = {
      kind: 'pole',
      at: [x, y],
      height: 4,
      reach: 0.2,
      facing: 90,
      diameter: 0.1,
      limits: NO_LIMITS,
    } as const;
    return addCamera(built, newCamera(built, mount, { pan: 25 + 130 * (at % 3), tilt }));
  }, plan);
}
