import { createCautioner } from '../assess/cautions/cautioner.ts';
import type { CautionReport } from '../assess/cautions/caution.ts';
import { THRESHOLDS, thresholdOf } from '../assess/cautions/thresholds.ts';
import { runSteps } from '../assess/session.ts';
import { cautionWords, lacksWords, severityWord } from '../draw/cautions/cautionWords.ts';
import { statusWords } from '../draw/cautions/status.ts';
import { editionOf } from '../plan/editions.ts';
import type { Plan } from '../plan/plan.ts';
import { checkCamera } from './assessed.ts';
import { json, type Command } from './command.ts';
import { oneFile, typed } from './options.ts';
import { planOf } from './planFile.ts';
import { BadInput, type Terminal } from './terminal.ts';

export const cautions: Command = {
  name: 'cautions',
  help: `soffit cautions PLAN [--camera ID] [--json]

What to mind about each camera, worst first, with its figure and where the rule
comes from: what must be looked at before anyone drills, what cannot count,
what is tight, what is good to know. In every condition of the plan.

  --camera ID   one camera only`,
  run: (words, terminal) => {
    const options = typed(words, ['camera']);
    const plan = planOf(oneFile(options, 'cautions', 'a plan'), terminal);
    const id = options.text('camera');
    if (id !== undefined) checkCamera(plan, id);
    const cautioner = createCautioner();
    const reports = (id === undefined ? plan.cameraOrder : [id]).flatMap((one) => {
      const report = runSteps(cautioner.steps(plan, one));
      if (report === null && id !== undefined)
        throw new BadInput(`The camera “${id}” is fixed to nothing that stands. Fix it to a wall first.`);
      return report ?? [];
    });
    if (options.flag('json')) terminal.out(json(told(plan, reports)));
    else for (const report of reports) print(plan, report, terminal);
  },
};

/** Reports with their words and limits, as data. */
function told(plan: Plan, reports: readonly CautionReport[]) {
  return {
    edition: editionOf(plan.settings.edition).name,
    cameras: reports.map(({ camera, cautions: found, lacks }) => ({
      camera,
      cautions: found.map(({ thresholds, ...caution }) => ({
        ...caution,
        ...cautionWords(caution, plan.settings.units),
        status: statusWords(caution.row),
        thresholds: thresholds.map((key) => ({
          id: key,
          value: thresholdOf(plan.settings, key),
          usual: THRESHOLDS[key].value,
        })),
      })),
      lacks,
    })),
  };
}

function print(plan: Plan, { camera, cautions: found, lacks }: CautionReport, { out }: Terminal): void {
  out(`${plan.cameras[camera]?.name ?? camera}; ${editionOf(plan.settings.edition).name}\n`);
  if (found.length === 0) out('  Nothing found in the plan. That is no all-clear.\n');
  for (const caution of found) {
    const { said, advice } = cautionWords(caution, plan.settings.units);
    const where = caution.situations.map((id) => plan.situations[id]?.name ?? 'As drawn').join(', ');
    const looked = caution.ticked ? ' (looked at)' : '';
    out(`  ${severityWord(caution.severity)}${looked}: ${said} ${advice}\n`);
    out(`    row ${caution.row}; ${statusWords(caution.row)}${where === '' ? '' : `; in ${where}`}\n`);
  }
  const lacking = lacksWords(lacks);
  if (lacking !== null) out(`  ${lacking}\n`);
}
