import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { Builder } from '../../src/assess/builder.ts';
import { sceneOf } from '../../src/assess/sceneOf.ts';
import type { Scene } from '../../src/assess/scene.ts';
import type { Plan, Situation } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { asDrawn } from '../../src/plan/situations.ts';

const demo = (): Plan => {
  const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};
const plan = demo();

const situation = (change: Partial<Situation>): Situation => ({
  ...asDrawn,
  id: 'S1',
  name: 'S1',
  ...change,
});
const passages = (scene: Scene): ReadonlyMap<string, string> =>
  new Map(scene.solids.map(({ id, passage }) => [id, passage]));

describe('a plan in a situation', () => {
  test('that changes nothing is the plan as drawn but for its name', () => {
    const drawn = sceneOf(plan, null);
    expect(sceneOf(plan, situation({}))).toEqual({ ...drawn, situation: 'S1' });
    expect([drawn.situation, drawn.night]).toEqual([null, null]);
  });

  test('has trees and hedges in leaf or bare, whatever they are drawn', () => {
    const tree = plan.structures['tree'];
    const hedge = plan.structures['hedge'];
    if (tree?.kind !== 'tree' || hedge?.kind !== 'barrier') throw new Error('no tree, no hedge');
    for (const inLeaf of [true, false]) {
      const drawn: Plan = {
        ...plan,
        structures: {
          ...plan.structures,
          tree: { ...tree, inLeaf },
          hedge: { ...hedge, passage: inLeaf ? 'solid' : 'screen' },
        },
      };
      for (const treesInLeaf of [true, false, null]) {
        const found = passages(sceneOf(drawn, situation({ treesInLeaf })));
        const wanted = (treesInLeaf ?? inLeaf) ? 'solid' : 'screen';
        expect([found.get('tree.crown'), found.get('hedge'), found.get('tree.trunk')]).toEqual([
          wanted,
          wanted,
          'solid',
        ]);
        // Fences do not grow.
        expect([found.get('mesh-fence'), found.get('back-fence')]).toEqual(['screen', 'solid']);
      }
    }
  });

  test('lights its night: infrared by camera, lamps at their height above the ground, the least light', () => {
    const raised: Plan = { ...plan, ground: { kind: 'flat', height: 12 } };
    const { night } = sceneOf(raised, situation({ night: true }));
    expect(night?.leastLux).toBe(1);
    expect(night?.lamps).toEqual([
      { id: 'door-lamp', name: 'Door lamp', eye: [5.03, -0.15, 14.3], light: { kind: 'range', range: 6 } },
    ]);
    expect([...(night?.infrared ?? [])]).toEqual([
      ['C1', { range: 15, beam: 110 }],
      ['C2', { range: 20, beam: 80 }],
      ['C3', { range: 12, beam: 110 }],
    ]);
    const [first = 'C1'] = plan.cameraOrder;
    const camera = plan.cameras[first];
    if (!camera) throw new Error('no camera');
    const dark: Plan = { ...plan, cameras: { ...plan.cameras, [first]: { ...camera, infrared: null } } };
    expect([...(sceneOf(dark, situation({ night: true })).night?.infrared.keys() ?? [])]).toEqual([
      'C2',
      'C3',
    ]);
  });

  test('keeps the board of the drawing, even without what made it large', () => {
    const bounded: Plan = { ...plan, boundary: null };
    const away = [...plan.structureOrder];
    const scene = sceneOf(bounded, situation({ away }));
    expect(scene.board).toEqual(sceneOf(bounded, null).board);
    expect(scene.solids).toEqual([]);
    expect(scene.cameras).toEqual([]);
    expect(scene.faults.map(({ code, path }) => [code, path[1]])).toEqual([
      ['mount.away', 'C1'],
      ['mount.away', 'C2'],
      ['mount.away', 'C3'],
    ]);
  });

  test('has patches in the order of the plan, the very objects', () => {
    const patch = {
      outline: [
        [0, 0],
        [3, 0],
        [3, 5],
      ],
      base: 0,
      pitch: 6,
      rises: 0,
      got: 'mapped',
    } as const;
    const [drive, ramp] = [
      { ...patch, id: 'drive', name: 'Drive' },
      { ...patch, id: 'ramp', name: 'Ramp' },
    ];
    const scene = sceneOf({ ...plan, patches: { drive, ramp }, patchOrder: ['ramp', 'drive'] }, null);
    expect(scene.patches).toHaveLength(2);
    expect(scene.patches[0]).toBe(ramp);
    expect(scene.patches[1]).toBe(drive);
  });

  test('stands on the least height of spot heights', () => {
    const spot = (x: number, y: number, height: number) => ({ at: [x, y], height, got: 'mapped' }) as const;
    const ground = { kind: 'spots', spots: [spot(0, 0, 2), spot(9, 0, 1.5), spot(0, 9, 4)] } as const;
    expect(sceneOf({ ...plan, ground }, null).ground).toBe(1.5);
  });
});

describe('a hollow building', () => {
  const house = plan.structures['house'];
  if (house?.kind !== 'building') throw new Error('no house');
  const hollow: Plan = {
    ...plan,
    structures: { ...plan.structures, house: { ...house, wallThickness: 0.3 } },
  };
  const leaves = { 'front-door': 'open', 'window-1': 'closed' } as const;

  test('has the leaves that a situation sets', () => {
    const drawn = passages(sceneOf(hollow, null));
    const set = passages(sceneOf(hollow, situation({ leaves })));
    expect(drawn.get('house.front-door')).toBe('solid');
    expect(set.has('house.front-door')).toBe(false);
    const glazed = passages(sceneOf(hollow, situation({ leaves: { 'front-door': 'glazed' } })));
    expect(glazed.get('house.front-door')).toBe('clear');
  });

  test('that is one block has recesses without leaves, and stays the very same solid', () => {
    const builder = new Builder();
    const scenes = [null, situation({ leaves })].map((one) => sceneOf(plan, one, builder.build));
    const [one, two] = scenes.map(({ solids }) => solids.find(({ id }) => id === 'house'));
    expect(one).toBe(two);
  });
});

describe('a builder', () => {
  const bare = situation({ away: ['van'], treesInLeaf: false, leaves: { 'side-gate': 'open' } });
  const laid = (builder: Builder, which: Situation | null, from = plan): Scene => {
    for (const _ of builder.steps(from, which));
    return builder.settled(sceneOf(from, which, builder.build));
  };

  test('makes what it made without it', () => {
    const builder = new Builder();
    for (const which of [null, bare, null, bare]) expect(laid(builder, which)).toEqual(sceneOf(plan, which));
  });

  test('keeps the very solids that a situation leaves alone', () => {
    const builder = new Builder();
    const drawn = new Map(laid(builder, null).solids.map((solid) => [solid.id, solid]));
    const changed = laid(builder, bare).solids.filter((solid) => drawn.get(solid.id) !== solid);
    expect(changed.map(({ id }) => id)).toEqual([
      'hedge',
      'hedge.front-gate',
      'side-fence',
      'side-fence.side-gate',
      'tree.trunk',
      'tree.crown',
    ]);
  });

  test('finds both lists again when a situation is switched forth and back', () => {
    const builder = new Builder();
    const [drawn, changed] = [laid(builder, null).solids, laid(builder, bare).solids];
    expect(builder.unknown(plan, bare)).toBe(0);
    expect(laid(builder, null).solids).toBe(drawn);
    expect(laid(builder, bare).solids).toBe(changed);
    // Night alone changes no solid.
    expect(laid(builder, situation({ night: true })).solids).toBe(drawn);
  });

  test('builds only what a situation changes', () => {
    const builder = new Builder();
    laid(builder, null);
    expect(builder.unknown(plan, bare)).toBe(3);
    expect(builder.unknown(plan, situation({ night: true }))).toBe(0);
  });

  test('takes over solids of a situation as such, and builds the rest itself', () => {
    const [theirs, ours] = [new Builder(), new Builder()];
    const scene = laid(theirs, bare, { ...plan, situations: { S1: bare } });
    const known: Plan = { ...plan, situations: { S1: bare } };
    ours.adopt(known, scene);
    expect(laid(ours, bare, known).solids).toBe(scene.solids);
    expect(laid(ours, null, known)).toEqual(sceneOf(known, null));
  });

  test('forgets what stood on other ground', () => {
    const builder = new Builder();
    laid(builder, null);
    const raised: Plan = { ...plan, ground: { kind: 'flat', height: 1 } };
    expect(builder.unknown(raised, null)).toBe(plan.structureOrder.length);
  });
});
