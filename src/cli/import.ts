import { createHash } from 'node:crypto';
import path from 'node:path';
import { runSteps } from '../assess/session.ts';
import { IMPORTED, openFile } from '../exchange/openFile.ts';
import { reportText } from '../exchange/reportText.ts';
import { faultText } from '../plan/faultText.ts';
import { planText } from '../plan/write.ts';
import { json, type Command } from './command.ts';
import { oneFile, required, typed } from './options.ts';
import { faultLines, fileBytes, tell, writeFile } from './planFile.ts';
import { BadInput } from './terminal.ts';

const HEADS = { taken: 'Taken', left: 'Left out', assumed: 'Assumed' } as const;

export const importFile: Command = {
  name: 'import',
  help: `soffit import FILE --out PLAN [--json]

Makes a plan of any readable file (GeoJSON building footprints, or a plan of an
older version), with the report of what was taken, left out and assumed.`,
  run: (words, terminal) => {
    const options = typed(words, ['out']);
    const file = oneFile(options, 'import', 'a file');
    const out = required(options, 'import', 'out');
    const bytes = fileBytes(file);
    const opened = runSteps(openFile(path.basename(file), bytes));
    if (!opened.ok) throw new BadInput(faultLines(opened.faults));
    const { plan, report } = opened.value;
    // The same map gives the same plan, whoever imports it.
    const id =
      plan.id === IMPORTED ? `map-${createHash('sha256').update(bytes).digest('hex').slice(0, 12)}` : plan.id;
    writeFile(out, planText({ ...plan, id }));
    const sentences = report === null ? [] : reportText(report);
    if (options.flag('json')) {
      const { taken = [], left = [], assumed = [] } = report ?? {};
      const { origin, credits } = plan;
      terminal.out(
        json({ plan: out, origin, taken, left, assumed, notes: opened.notes.map(faultText), credits }),
      );
      return;
    }
    tell(opened.notes, terminal);
    for (const part of ['taken', 'left', 'assumed'] as const) {
      const lines = sentences.filter((sentence) => sentence.part === part);
      if (lines.length > 0)
        terminal.out(`${HEADS[part]}:\n${lines.map(({ text }) => `  ${text}\n`).join('')}`);
    }
    if (plan.credits.length > 0) terminal.out(`Credit: ${plan.credits.join('; ')}\n`);
    terminal.out(`Written to ${out}\n`);
  },
};
