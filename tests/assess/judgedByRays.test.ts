import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Assessment } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { STATES } from '../../src/coverage/state.ts';
import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Solid } from '../../src/model/solid.ts';
import { readPlan } from '../../src/plan/read.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { isSettled, isWithin, nearestBlocker } from '../oracle/bruteCaster.ts';
import { plainDensity, plainImage } from '../oracle/plainCamera.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { openPath } from '../exchange/opened.ts';
import { NO_LIMITS } from '../../src/optics/mount.ts';

/** Nearer than this to an edge (m), a frame's side (px) or a band's limit (share) the oracle does not decide. */
const GRAZE = 0.002;

const demoPlan = (): Plan => {
  const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the demo plan does not open');
  return read.value;
};

/** The street with cameras on posts at random places, one in three with a wide bent lens. */
function streetPlan(chance: Chance): Plan {
  const opened = openPath('tests/inputs/osm/bristol-terraces.geojson');
  if (!opened.ok) throw new Error('the street does not open');
  let { plan } = opened.value;
  for (let at = 0; at < 6; at += 1) {
    const place = [chance.between(-60, 60), chance.between(-60, 60)] as const;
    const mount = {
      kind: 'pole',
      at: place,
      height: chance.between(2.5, 6),
      reach: 0.3,
      facing: 0,
      diameter: 0.1,
      limits: NO_LIMITS,
    } as const;
    const camera = newCamera(plan, mount, { pan: chance.between(0, 360), tilt: chance.between(5, 50) });
    const wide = { ...camera.device.lens, statedHfov: { atShortest: 100, atLongest: 100 } };
    const device = at % 3 === 0 ? { ...camera.device, lens: wide } : camera.device;
    plan = addCamera(plan, { ...camera, device, range: 60 });
  }
  return plan;
}

/** The nearest screen whose sheet the way meets at less than 30° to its face: mesh and railings close up. */
function closedBy(
  solids: readonly Solid[],
  eye: readonly number[],
  target: readonly number[],
): { owner: string; at: number } | null {
  const way = target.map((n, axis) => n - (eye[axis] ?? 0));
  const far = Math.hypot(...way);
  const met = solids.flatMap((one) => {
    const { sheets, positions, triangles, id } = one;
    if (one.passage !== 'screen' || !sheets) return [];
    return Array.from({ length: triangles.length / 3 }, (_, t) => {
      const normal = [0, 1, 2].map((axis) => sheets[3 * t + axis] ?? 0);
      const along = Math.abs(way.reduce((sum, n, axis) => sum + n * (normal[axis] ?? 0), 0)) / far;
      const corners = [0, 1, 2].flatMap((k) =>
        [0, 1, 2].map((axis) => positions[3 * (triangles[3 * t + k] ?? 0) + axis] ?? 0),
      );
      const closes = Math.hypot(...normal) > 0 && (Math.asin(along) * 180) / Math.PI < 30;
      return closes ? nearestBlocker({ corners, owner: [id] }, eye, target) : null;
    }).filter((hit) => hit !== null);
  });
  return met.sort((one, two) => one.at - two.at)[0] ?? null;
}

/** Judges random cells of an assessment anew; what differs, in words. */
function differences(
  assessment: Assessment,
  shots: number,
  chance: Chance,
): { wrong: string[]; byState: Map<string, number> } {
  const { scene, edition, faceCaps } = assessment;
  const solid = rawTriangles(scene.solids, ({ passage }) => passage === 'solid');
  const screen = rawTriangles(scene.solids, ({ passage }) => passage === 'screen');
  const all = rawTriangles(scene.solids);
  const wrong: string[] = [];
  const byState = new Map<string, number>();
  for (let shot = 0; shot < shots; shot += 1) {
    const one = assessment.cameras[chance.whole(0, assessment.cameras.length - 1)];
    if (one === undefined || isWithin(solid, one.camera.eye)) continue;
    const { camera, cells } = one;
    const { grid } = cells;
    const [column, row] = [chance.whole(0, grid.columns - 1), chance.whole(0, grid.rows - 1)];
    const cell = row * grid.columns + column;
    const target = [
      grid.left + (column + 0.5) * grid.cell,
      grid.bottom + (row + 0.5) * grid.cell,
      grid.plane.origin[2],
    ];
    const state = STATES[cells.state[cell] ?? 0] ?? '?';
    byState.set(state, (byState.get(state) ?? 0) + 1);
    const say = (expected: string) =>
      wrong.push(
        `${camera.name} at ${target.map((n) => n.toFixed(3)).join(' ')}: ${state}, by rays ${expected}`,
      );
    const image = plainImage(camera, target);
    const near = [0.002, -0.002].some(
      (d) =>
        isWithin(all, [(target[0] ?? 0) + d, target[1] ?? 0, target[2] ?? 0]) !== isWithin(all, target) ||
        isWithin(all, [target[0] ?? 0, (target[1] ?? 0) + d, target[2] ?? 0]) !== isWithin(all, target),
    );
    if (near) continue;
    // A ground target lies on the bottom of what stands there: a hair above it tells.
    if (isWithin(all, [target[0] ?? 0, target[1] ?? 0, (target[2] ?? 0) + 1e-6])) {
      if (state !== 'inside') say('inside');
      continue;
    }
    const edge =
      image === null
        ? 1
        : Math.min(image[0], image[1], camera.frame.width - image[0], camera.frame.height - image[1]);
    if (Math.abs(edge) < 0.01 && image !== null) continue;
    if (image === null || edge < 0) {
      if (state !== 'out of frame') say('out of frame');
      continue;
    }
    const blocker = nearestBlocker(solid, camera.eye, target) ?? closedBy(scene.solids, camera.eye, target);
    if (blocker !== null || state === 'hidden') {
      const same = state === 'hidden' && blocker !== null;
      if (
        !same &&
        isSettled(solid, camera.eye, target, GRAZE) &&
        isSettled(screen, camera.eye, target, GRAZE)
      )
        say(blocker === null ? 'not hidden' : `hidden by ${blocker.owner}`);
      if (
        same &&
        scene.solids[cells.hider[cell] ?? -1]?.id !== blocker.owner &&
        isSettled(solid, camera.eye, target, GRAZE)
      ) {
        const named = rawTriangles(
          scene.solids,
          ({ id }) => id === scene.solids[cells.hider[cell] ?? -1]?.id,
        );
        const at = nearestBlocker(named, camera.eye, target)?.at ?? Infinity;
        if (Math.abs(at - blocker.at) > GRAZE)
          say(`hidden by ${blocker.owner}, not ${scene.solids[cells.hider[cell] ?? -1]?.id}`);
      }
      continue;
    }
    const mesh = nearestBlocker(screen, camera.eye, target);
    if (mesh !== null || state === 'screened') {
      if ((mesh !== null) !== (state === 'screened') && isSettled(screen, camera.eye, target, GRAZE))
        say('screened or not');
      continue;
    }
    const density = plainDensity(camera, target);
    const far = Math.hypot(...target.map((n, axis) => n - (camera.eye[axis] ?? 0)));
    const depression = (Math.asin(((camera.eye[2] ?? 0) - (target[2] ?? 0)) / far) * 180) / Math.PI;
    if (edition.bands.some((band) => Math.abs(density / band.density - 1) < 1e-6)) continue;
    let band = edition.bands.filter((one_) => density >= one_.density).length;
    for (const cap of faceCaps) if (depression > cap.above) band = Math.min(band, cap.band);
    if (far > camera.range) band = 0;
    if ((cells.band[cell] ?? 0) !== band) say(`band ${band}, cell has ${cells.band[cell]}`);
    if (Math.abs((cells.density[cell] ?? 0) / density - 1) > 1e-4)
      say(`${density} px/m, cell has ${cells.density[cell]}`);
  }
  return { wrong, byState };
}

const targets = [
  { kind: 'ground', height: 0 },
  { kind: 'face', height: 1.6 },
  { kind: 'height', height: 0.5 },
] as const;

test('every state of the demo plan agrees with rays over all triangles', () => {
  const chance = chanceFrom(2026);
  const plan = demoPlan();
  for (const target of targets) {
    const assessment = runSteps(
      createSession().steps(plan, { target, alone: null, situation: null, causes: 'exact' }, 1),
    );
    const { wrong, byState } = differences(assessment, trials(1500, 20_000), chance);
    expect(wrong, `seed 2026, ${target.kind}`).toEqual([]);
    for (const state of ['inside', 'out of frame', 'hidden', 'covered'])
      expect(byState.get(state) ?? 0, `${state}`).toBeGreaterThan(20);
  }
});

test('every state of an imported street agrees with rays over all triangles', () => {
  const chance = chanceFrom(1847);
  const plan = streetPlan(chance);
  for (const target of targets) {
    const assessment = runSteps(
      createSession().steps(plan, { target, alone: null, situation: null, causes: 'exact' }, 1),
    );
    const { wrong, byState } = differences(assessment, trials(500, 20_000), chance);
    expect(wrong, `seed 1847, ${target.kind}`).toEqual([]);
    expect(byState.get('hidden') ?? 0).toBeGreaterThan(20);
  }
});
