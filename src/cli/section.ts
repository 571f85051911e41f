import type { Assessment } from '../assess/assessment.ts';
import type { Section, Stretch } from '../assess/section/section.ts';
import { sceneOf } from '../assess/sceneOf.ts';
import { drawSection } from '../draw/section/sectionDrawing.ts';
import { sectionSvg } from '../draw/section/sectionSvg.ts';
import { firstView } from '../draw/section/sectionView.ts';
import { lineName, personWords, stretchWords } from '../draw/section/sectionWords.ts';
import { createShowSection, namedIn, sectionTitle, sheetWords } from '../draw/section/shownSection.ts';
import type { Plan } from '../plan/plan.ts';
import { assessed, checkCamera } from './assessed.ts';
import { json, type Command } from './command.ts';
import { numberOf, typed } from './options.ts';
import { planOf, situationOf, writeFile } from './planFile.ts';
import { TARGET_HELP, TARGET_OPTIONS, targetOf } from './target.ts';
import { BadInput, type Terminal } from './terminal.ts';

/** The drawing's size where none is typed, px. */
const [WIDTH, HEIGHT] = [1180, 236];
/** Where the person stands where it is not typed, m ahead. */
const PERSON = 4;

export const section: Command = {
  name: 'section',
  help: `soffit section PLAN CAMERA [--height H] [--person D] [--json | --svg FILE] [--situation ID]

The cut along a camera's axis: what it sees along the ground, at the target and
at face height, from where to where in metres from the point below the lens;
and what it makes of a person who stands there.

${TARGET_HELP}
  --height H    another height to be told, metres above the ground
  --person D    where the person stands, metres ahead of the lens; 4 without it
  --svg FILE    the drawing, with what it rests on
  --width PX    of the drawing; 1180 without it`,
  run: (words, terminal) => {
    const options = typed(words, [...TARGET_OPTIONS, 'height', 'person', 'svg', 'situation', 'width']);
    const [file, id, ...others] = options.files;
    if (file === undefined || id === undefined || others.length > 0)
      throw new BadInput('section needs a plan and a camera. See soffit section --help.');
    const [height, person, width, svg] = ['height', 'person', 'width', 'svg'].map((name) =>
      options.text(name),
    );
    if (svg !== undefined && options.flag('json')) throw new BadInput('Give one of --json and --svg.');
    const plan = planOf(file, terminal);
    checkCamera(plan, id);
    const situation = situationOf(plan, options.text('situation'));
    const target = targetOf(plan, sceneOf(plan, situation).solids, options);
    const assessment = assessed(plan, target, id, terminal, situation?.id ?? null);
    const made = createShowSection()(
      assessment,
      plan,
      id,
      person === undefined ? PERSON : numberOf(person, 'person', -1000, 1000),
      height === undefined ? undefined : numberOf(height, 'height', 0, 1000),
    );
    if (made === null) throw new BadInput(`The camera “${id}” is fixed to nothing and has no section.`);
    if (options.flag('json')) terminal.out(json(told(made, assessment)));
    else if (svg === undefined) print(made, assessment, plan, terminal);
    else {
      const wide = width === undefined ? WIDTH : numberOf(width, 'width', 320, 10_000);
      const named = namedIn(assessment, plan);
      const drawing = drawSection(made, firstView(made, wide, HEIGHT, wide < 600), named);
      writeFile(svg, sectionSvg(drawing, sheetWords(assessment, plan, made), 'light'));
      terminal.out(`Written: ${svg}\n`);
    }
  },
};

/** The section in names instead of indices. */
function told(made: Section, { scene, edition }: Assessment) {
  const stretch = ({ from, to, state, band, hider, lost }: Stretch) => ({
    from,
    to,
    state,
    band: edition.bands[band - 1]?.key ?? null,
    hidden_by: hider === null ? null : (scene.solids[hider]?.id ?? null),
    lost,
  });
  const { camera, cuts, lines, person, hidden: _, ...rest } = made;
  return {
    ...rest,
    camera: camera.id,
    pan: camera.pan,
    tilt: camera.tilt,
    edition: edition.name,
    cuts: cuts.map(({ id, name, passage, rings, closed }) => ({
      id,
      name,
      passage,
      closed,
      rings: rings.map((ring) => [...ring]),
    })),
    lines: lines.map(({ target, stretches, nearest }) => ({
      target,
      nearest,
      stretches: stretches.map(stretch),
    })),
    person: { ...person, face: stretch(person.face) },
  };
}

function print(made: Section, assessment: Assessment, plan: Plan, { out }: Terminal): void {
  const named = namedIn(assessment, plan);
  out(`${sectionTitle(made)}; ${assessment.edition.name}\n`);
  out(`lens ${made.mountingHeight.toFixed(2)} m up, tilt ${made.camera.tilt.toFixed(1)}°\n`);
  for (const line of made.lines) {
    const near =
      line.nearest === null ? 'nothing covered' : `nothing seen nearer than ${line.nearest.toFixed(2)} m`;
    out(`${lineName(line)}: ${near}\n`);
    for (const one of line.stretches) {
      const [what = one.state] = stretchWords(one, named);
      out(
        `  ${one.from.toFixed(3).padStart(9)} to ${one.to.toFixed(3).padStart(9)} m  ${what.toLowerCase()}\n`,
      );
    }
  }
  out(`person ${made.person.distance.toFixed(2)} m away: ${personWords(made.person, named).join('; ')}\n`);
}
