import type { Vec2 } from '../../src/base/vector.ts';
import type { Structure } from '../../src/model/structure.ts';
import type { Lens } from '../../src/optics/device.ts';
import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import { defaultDevice } from '../../src/plan/defaultDevice.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Chance } from '../house/seeded.ts';
import { NO_LIMITS } from '../../src/optics/mount.ts';

/** Half of the site's width and depth, m: its boundary holds all that stands there, so that the board stays. */
const [HALF_X, HALF_Y] = [14, 11];

const LENSES: readonly Partial<Lens>[] = [
  { statedHfov: null },
  { statedHfov: null, focalLength: 6, shortest: 6, longest: 6 },
  {},
  // Reaches past 90° off its axis: no pyramid holds its frame.
  { law: 0, statedHfov: null, focalLength: 1.2, shortest: 1.2, longest: 1.2 },
];

/** A structure of any kind somewhere on the site. */
function randomStructure(chance: Chance, id: string): Structure {
  const at: Vec2 = [chance.between(-HALF_X + 5, HALF_X - 5), chance.between(-HALF_Y + 5, HALF_Y - 5)];
  const size: Vec2 = [chance.between(1, 3.5), chance.between(1, 3.5)];
  const outline: readonly Vec2[] = [
    [at[0] - size[0], at[1] - size[1]],
    [at[0] + size[0], at[1] - size[1]],
    [at[0] + size[0], at[1] + size[1]],
    [at[0] - size[0], at[1] + size[1]],
  ];
  const named = { id, name: id, hidden: false, locked: false };
  const [base, height] = [chance.pick([0, 0, 1]), chance.between(0.3, 6)];
  const got = 'measured' as const;
  switch (chance.whole(0, 5)) {
    case 0:
      return {
        ...named,
        kind: 'building',
        outline,
        holes: [],
        base: 0,
        height,
        roof: {
          kind: chance.pick(['flat', 'gable', 'hip']),
          pitch: 30,
          overhang: 0.3,
          ridge: null,
          parapet: 0,
        },
        wallThickness: null,
        openings: [],
        services: [],
        floors: [],
        yearBuilt: null,
        got: { outline: got, base: got, height: got, roof: got },
      };
    case 1:
      return {
        ...named,
        kind: 'barrier',
        sort: 'fence',
        line: [outline[0] ?? at, outline[1] ?? at, outline[2] ?? at],
        closed: false,
        base: 0,
        height: chance.between(0.8, 2.2),
        thickness: 0.05,
        passage: chance.pick(['screen', 'screen', 'solid', 'clear']),
        openings: [],
        got: { line: got, height: got, thickness: got },
      };
    case 2:
      return {
        ...named,
        kind: 'tree',
        at,
        base: 0,
        height: 3 + height,
        crownRadius: 1.2,
        clear: 1.5,
        trunkDiameter: 0.3,
        inLeaf: chance.pick([true, false]),
        got: { at: got, height: got, crown: got },
      };
    case 3:
      return {
        ...named,
        kind: 'canopy',
        outline,
        top: chance.between(2, 5),
        thickness: 0.2,
        posts: 0,
        got: { outline: got, top: got, thickness: got },
      };
    default:
      return {
        ...named,
        kind: 'block',
        outline,
        base,
        height,
        passage: chance.pick(['solid', 'solid', 'solid', 'screen', 'clear']),
        got: { outline: got, base: got, height: got },
      };
  }
}

const withStructure = (plan: Plan, structure: Structure): Plan => ({
  ...plan,
  structures: { ...plan.structures, [structure.id]: structure },
  structureOrder: plan.structureOrder.includes(structure.id)
    ? plan.structureOrder
    : [...plan.structureOrder, structure.id],
});

function withCamera(plan: Plan, chance: Chance): Plan {
  const at: Vec2 = [chance.between(-HALF_X, HALF_X), chance.between(-HALF_Y, HALF_Y)];
  const height = chance.between(0.4, 6);
  const mount = chance.pick([
    {
      kind: 'pole',
      at,
      height,
      reach: 0.2,
      facing: chance.between(0, 360),
      diameter: 0.1,
      limits: NO_LIMITS,
    },
    { kind: 'loose', eye: [at[0], at[1], height] },
  ] as const);
  const camera = newCamera(plan, mount, { pan: chance.between(0, 360), tilt: chance.between(-15, 75) });
  const lens = { ...defaultDevice.lens, ...chance.pick(LENSES) };
  return addCamera(plan, {
    ...camera,
    roll: chance.pick([0, 0, 30]),
    range: chance.pick([2, 8, 30]),
    device: { ...defaultDevice, lens },
  });
}

/** A site with things of all kinds and cameras with lenses of all kinds. */
export function randomSite(chance: Chance, structures: number, cameras: number): Plan {
  const boundary: readonly Vec2[] = [
    [-HALF_X, -HALF_Y],
    [HALF_X, -HALF_Y],
    [HALF_X, HALF_Y],
    [-HALF_X, HALF_Y],
  ];
  let plan: Plan = { ...emptyPlan('site', 'Site'), boundary };
  for (let at = 0; at < structures; at += 1) plan = withStructure(plan, randomStructure(chance, `S${at}`));
  for (let at = 0; at < cameras; at += 1) plan = withCamera(plan, chance);
  return plan;
}

/** The plan with one thing moved, added, changed or taken away, mostly a structure. */
export function edited(plan: Plan, chance: Chance, step: number): Plan {
  const id = plan.structureOrder.length === 0 ? null : chance.pick(plan.structureOrder);
  const what = chance.whole(0, 9);
  if (id === null || what === 0) return withStructure(plan, randomStructure(chance, `N${step}`));
  if (what === 1) {
    const structures = Object.fromEntries(Object.entries(plan.structures).filter(([other]) => other !== id));
    return { ...plan, structures, structureOrder: plan.structureOrder.filter((other) => other !== id) };
  }
  const turned = plan.cameraOrder.length === 0 ? null : chance.pick(plan.cameraOrder);
  const camera = turned === null ? undefined : plan.cameras[turned];
  if (what === 2 && camera)
    return { ...plan, cameras: { ...plan.cameras, [camera.id]: { ...camera, pan: chance.between(0, 360) } } };
  if (what === 3 && camera)
    return {
      ...plan,
      cameras: Object.fromEntries(Object.entries(plan.cameras).filter(([other]) => other !== camera.id)),
      cameraOrder: plan.cameraOrder.filter((other) => other !== camera.id),
    };
  if (what === 4) return withCamera(plan, chance);
  if (what === 5) return { ...plan, structureOrder: plan.structureOrder.toReversed() };
  return withStructure(plan, { ...randomStructure(chance, id) });
}
