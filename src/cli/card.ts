import { createSession, runSteps } from '../assess/session.ts';
import { createCardMaker } from '../draw/card/cardOf.ts';
import type { PaperName } from '../draw/card/sheets.ts';
import type { Page } from '../exchange/paper/page.ts';
import { pageSvg } from '../exchange/paper/pageSvg.ts';
import type { Plan } from '../plan/plan.ts';
import { checkCamera } from './assessed.ts';
import type { Command } from './command.ts';
import { oneFile, required, typed } from './options.ts';
import { planOf, situationOf, tell, writeFile } from './planFile.ts';
import { BadInput } from './terminal.ts';

export const card: Command = {
  name: 'card',
  help: `soffit card PLAN --out FILE.pdf|FILE.svg [--camera ID] [--paper a4|letter] [--courses] [--situation ID]

Drill cards: where the hole goes, taped from real edges; where it comes out; how
the camera is aimed and set. A page a camera. A card says NOT READY until every
stop on it has been ticked in the app.

  --out FILE     a PDF, of one camera or of all; or an SVG, of one camera
  --camera ID    the camera; all of them without it
  --paper NAME   a4 (without it) or letter
  --courses      heights also by courses of brick, 75 mm each
  --date TEXT    the date that stands on it; today without it`,
  run: (words, terminal) => {
    const options = typed(words, ['out', 'camera', 'paper', 'situation', 'date'], ['courses']);
    const file = oneFile(options, 'card', 'a plan');
    const out = required(options, 'card', 'out');
    const isSvg = /\.svg$/iu.test(out);
    if (!isSvg && !/\.pdf$/iu.test(out))
      throw new BadInput(`--out is “${out}”. Give a file that ends in .pdf or .svg.`);
    const paper = paperNamed(options.text('paper') ?? 'a4');
    const plan = planOf(file, terminal);
    const ids = camerasOf(plan, options.text('camera'));
    if (isSvg && ids.length !== 1)
      throw new BadInput('An SVG holds one card. Name its --camera, or write a .pdf.');
    const situation = situationOf(plan, options.text('situation'));
    const question = {
      target: { kind: 'ground', height: 0 },
      alone: null,
      situation: situation?.id ?? null,
      causes: 'quick',
    } as const;
    const assessment = runSteps(createSession().steps(plan, question, 1));
    tell(assessment.scene.faults, terminal);
    const make = createCardMaker();
    const asked = {
      paper,
      courses: options.flag('courses'),
      date:
        options.text('date') ?? new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(new Date()),
    };
    const pages: Page[] = [];
    for (const id of ids) {
      const made = runSteps(make.steps(plan, assessment, id, asked));
      if (made.page === null) terminal.err(`Note: ${made.why}\n`);
      else {
        pages.push(made.page);
        if (made.lacking !== null)
          terminal.out(`${plan.cameras[id]?.name ?? id} is not ready. ${made.lacking}\n`);
      }
    }
    const [first] = pages;
    if (first === undefined) throw new BadInput('There is no card to write.');
    const done = () => terminal.out(`Written: ${out}\n`);
    if (isSvg) {
      writeFile(out, pageSvg(first));
      return done();
    }
    return writePdf(out, pages, done);
  },
};

async function writePdf(file: string, pages: readonly Page[], done: () => void): Promise<void> {
  const { pagesPdf } = await import('../exchange/paper/pagePdf.ts');
  writeFile(file, await pagesPdf(pages));
  done();
}

function paperNamed(name: string): PaperName {
  if (name === 'a4' || name === 'letter') return name;
  throw new BadInput(`--paper is “${name}”. Write a4 or letter.`);
}

function camerasOf(plan: Plan, id: string | undefined): readonly string[] {
  if (id === undefined) return plan.cameraOrder;
  checkCamera(plan, id);
  return [id];
}
