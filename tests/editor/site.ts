import type { Building, Opening, Structure } from '../../src/model/structure.ts';
import { addStructures } from '../../src/plan/commands/addStructures.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import type { Plan } from '../../src/plan/plan.ts';

/** A window 1.00 wide and high, 1.00 from the first corner of a wall, 0.90 up. */
export const window = (id: string, change: Partial<Opening> = {}): Opening => ({
  id,
  name: 'Window',
  kind: 'window',
  face: 0,
  along: 1,
  width: 1,
  height: 1,
  sill: 0.9,
  setBack: 0.1,
  leaf: 'glazed',
  passage: 'solid',
  got: 'guessed',
  ...change,
});

/** A house of 8 by 6, its first corner at the origin and its first wall to the south; walls 2.70 high. */
export const house = (change: Partial<Building> = {}): Building => ({
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
  height: 2.7,
  roof: { kind: 'flat', pitch: 35, overhang: 0, ridge: null, parapet: 0.3 },
  wallThickness: null,
  openings: [],
  services: [],
  floors: [],
  yearBuilt: null,
  got: { outline: 'guessed', base: 'guessed', height: 'guessed', roof: 'guessed' },
  ...change,
});

/** A garage of 3 by 6, five metres east of the house. */
export const garage = (change: Partial<Building> = {}): Building =>
  house({
    id: 'garage',
    name: 'Garage',
    outline: [
      [13, 0],
      [16, 0],
      [16, 6],
      [13, 6],
    ],
    height: 2.4,
    ...change,
  });

/** A plan with these structures and nothing else. */
export const site = (...structures: readonly Structure[]): Plan =>
  addStructures(emptyPlan('site', 'Site'), { structures, origin: null, credits: [] });
