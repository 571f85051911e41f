import type { Assessment } from '../assess/assessment.ts';
import type { Area } from '../coverage/area.ts';
import type { CameraCoverage } from '../coverage/coverage.ts';
import { STATES } from '../coverage/state.ts';
import { objIds } from '../exchange/obj.ts';
import type { Situation } from '../plan/plan.ts';
import { assessed, targetOf } from './assessed.ts';
import { json, type Command } from './command.ts';
import { oneFile, typed } from './options.ts';
import { planOf, situationOf } from './planFile.ts';
import type { Terminal } from './terminal.ts';

export const cover: Command = {
  name: 'cover',
  help: `soffit cover PLAN [--camera ID] [--target-height H | --target ground|plate|face]
             [--json] [--situation ID]

Areas by state, by band and by what hides, each with its bound, for every
camera and for all of them together, and how far each camera serves. Pixels per
metre are enough pixels for a task, not a promise that it succeeds.

  --camera ID         this camera alone
  --target-height H   metres above the ground; 0 without it
  --target face       face height, with its limits on the angle from above`,
  run: (words, terminal) => {
    const options = typed(words, ['camera', 'target-height', 'target', 'situation']);
    const plan = planOf(oneFile(options, 'cover', 'a plan'), terminal);
    const situation = situationOf(plan, options.text('situation'));
    const alone = options.text('camera');
    const assessment = assessed(plan, targetOf(plan, options), alone, terminal, situation?.id ?? null);
    const told = coverOf(assessment, plan.name, situation, alone);
    if (options.flag('json')) terminal.out(json(told));
    else print(told, terminal);
  },
};

/** The assessment as it is printed: ids instead of indices. */
function coverOf(
  assessment: Assessment,
  name: string,
  situation: Situation | null,
  alone: string | undefined,
) {
  const { edition, question, scene, site } = assessment;
  const ids = objIds(scene.solids);
  const banded = (areas: readonly Area[]) =>
    edition.bands.map(({ key, density }, index) => ({ band: key, density, ...(areas[index] ?? NO_AREA) }));
  const cameraOf = ({ camera, areas, reach }: CameraCoverage) => ({
    id: camera.id,
    name: camera.name,
    byState: areas.byState,
    byBand: banded(areas.byBand),
    byHider: areas.byHider.map(({ solid, area }) => ({
      id: ids[solid] ?? '',
      name: scene.solids[solid]?.name ?? '',
      ...area,
    })),
    nearBlindDistance: reach.nearBlindDistance,
    reach: edition.bands.map(({ key }, index) => ({ band: key, distance: reach.byBand[index] ?? null })),
  });
  return {
    plan: name,
    edition: { key: edition.key, name: edition.name },
    situation: situation?.id ?? null,
    target: question.target,
    within: assessment.within,
    cell: site.grid.cell,
    cameras: assessment.cameras
      .filter(({ camera }) => alone === undefined || camera.id === alone)
      .map(cameraOf),
    site: { byBand: banded(site.byBand), unseen: site.unseen, open: site.open },
  };
}

const NO_AREA: Area = { value: 0, bound: 0, how: 'exact' };

type Told = ReturnType<typeof coverOf>;

function print(told: Told, { out }: Terminal): void {
  const { target, within } = told;
  out(
    `${told.plan}: ${target.kind === 'height' ? 'surface' : target.kind} at ${target.height} m, bands of ${told.edition.name}, areas within the ${within}\n`,
  );
  for (const camera of told.cameras) {
    out(`\n${camera.id}${camera.name === camera.id ? '' : ` ${camera.name}`}\n`);
    for (const state of STATES) out(row(state, camera.byState[state]));
    for (const band of camera.byBand) out(row(`  ${band.band}, from ${band.density} px/m`, band));
    for (const hider of camera.byHider) out(row(`  hidden by ${hider.id}`, hider));
    out(`  nothing seen nearer than ${distance(camera.nearBlindDistance)}\n`);
    for (const { band, distance: far } of camera.reach) out(`  ${band} to ${distance(far)}\n`);
  }
  out(`\nAll together\n`);
  for (const band of told.site.byBand) out(row(`  ${band.band}`, band));
  out(row('not covered', told.site.unseen));
  out(row('of open ground', told.site.open));
}

const row = (label: string, { value, bound }: Area): string =>
  `  ${label.padEnd(32)} ${value.toFixed(2).padStart(10)} m²${bound > 0 ? ` ± ${bound < 0.005 ? bound.toExponential(0) : bound.toFixed(2)}` : ''}\n`;

const distance = (metres: number | null): string => (metres === null ? 'nowhere' : `${metres.toFixed(2)} m`);
