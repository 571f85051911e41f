import type { Assessment } from '../assess/assessment.ts';
import type { Area } from '../coverage/area.ts';
import type { CameraCoverage } from '../coverage/coverage.ts';
import { STATES } from '../coverage/state.ts';
import { objIds } from '../exchange/obj.ts';
import type { Situation } from '../plan/plan.ts';
import { sceneOf } from '../assess/sceneOf.ts';
import { assessed } from './assessed.ts';
import { areaRow } from './areaRow.ts';
import { json, type Command } from './command.ts';
import { oneFile, typed } from './options.ts';
import { planOf, situationOf } from './planFile.ts';
import { TARGET_HELP, TARGET_OPTIONS, targetOf } from './target.ts';
import type { Terminal } from './terminal.ts';

export const cover: Command = {
  name: 'cover',
  help: `soffit cover PLAN [--camera ID] [--target-height H | --target ground|plate|face |
             --surface KEY] [--looks BEARING] [--json] [--situation ID]

Areas by state, by band and by what hides, each with its bound (none where cells only
count it: null in JSON), for every camera and for all of them together, and how far
each camera serves. Pixels per metre are enough pixels for a task, not a promise
that it succeeds.

  --camera ID         this camera alone
${TARGET_HELP}`,
  run: (words, terminal) => {
    const options = typed(words, ['camera', ...TARGET_OPTIONS, 'situation']);
    const plan = planOf(oneFile(options, 'cover', 'a plan'), terminal);
    const situation = situationOf(plan, options.text('situation'));
    const alone = options.text('camera');
    const target = targetOf(plan, sceneOf(plan, situation).solids, options);
    const assessment = assessed(plan, target, alone, terminal, situation?.id ?? null);
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
    seenTooSteep: areas.lost.tooSteep,
    seenFromTheSide: areas.lost.fromTheSide,
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
    site: {
      byBand: banded(site.byBand),
      byCount: site.byCount.map((area, index) => ({ cameras: index + 1, ...area })),
      unseen: site.unseen,
      open: site.open,
    },
  };
}

const NO_AREA: Area = { value: 0, bound: 0, how: 'exact' };

type Told = ReturnType<typeof coverOf>;

function print(told: Told, { out }: Terminal): void {
  const { target, within } = told;
  const what = target.kind === 'height' ? 'surface' : target.kind;
  const where =
    target.kind === 'surface' ? 'of the plan' : `at ${target.height} m, areas within the ${within}`;
  out(`${told.plan}: ${what} ${where}, bands of ${told.edition.name}\n`);
  for (const camera of told.cameras) {
    out(`\n${camera.id}${camera.name === camera.id ? '' : ` ${camera.name}`}\n`);
    for (const state of STATES) out(row(state, camera.byState[state]));
    for (const band of camera.byBand) out(row(`  ${band.band}, from ${band.density} px/m`, band));
    for (const hider of camera.byHider) out(row(`  hidden by ${hider.id}`, hider));
    if (target.kind === 'face') out(row('  face seen from too steep', camera.seenTooSteep));
    if (target.kind === 'face' && target.looks) out(row('  face seen from the side', camera.seenFromTheSide));
    if (target.kind === 'surface') continue;
    out(`  nothing seen nearer than ${distance(camera.nearBlindDistance)}\n`);
    for (const { band, distance: far } of camera.reach) out(`  ${band} to ${distance(far)}\n`);
  }
  out(`\nAll together\n`);
  for (const band of told.site.byBand) out(row(`  ${band.band}`, band));
  for (const { cameras, ...area } of told.site.byCount)
    if (cameras > 1) out(row(`  by ${cameras} cameras or more`, area));
  out(row('not covered', told.site.unseen));
  out(row('of open ground', told.site.open));
}

const row = (label: string, area: Area): string => areaRow(label, 32, area);

const distance = (metres: number | null): string => (metres === null ? 'nowhere' : `${metres.toFixed(2)} m`);
