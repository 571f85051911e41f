import { figuresOf, type CameraFigure } from '../assess/figures.ts';
import { sceneOf } from '../assess/sceneOf.ts';
import type { Area } from '../coverage/area.ts';
import { PARTS } from '../coverage/figure.ts';
import { checkCamera } from './assessed.ts';
import { areaRow } from './areaRow.ts';
import { json, type Command } from './command.ts';
import { numberOf, oneFile, typed } from './options.ts';
import { planOf, situationOf, tell } from './planFile.ts';
import type { Terminal } from './terminal.ts';

export const figure: Command = {
  name: 'figure',
  help: `soffit figure PLAN [--camera ID] [--cell S] [--json] [--situation ID]

Where feet, waist and face of a person of the plan's stature are seen, standing
anywhere on the ground: nothing in the way, at any number of pixels. With a ± that
surely holds; at night and over uneven ground counted from cells, about (≈).

  --camera ID   this camera alone
  --cell S      side of a cell, metres; without it as the app has it`,
  run: (words, terminal) => {
    const options = typed(words, ['camera', 'cell', 'situation']);
    const plan = planOf(oneFile(options, 'figure', 'a plan'), terminal);
    const alone = options.text('camera');
    if (alone !== undefined) checkCamera(plan, alone);
    const size = options.text('cell');
    const cell = size === undefined ? undefined : numberOf(size, 'cell', 0.01, 1000);
    const scene = sceneOf(plan, situationOf(plan, options.text('situation')));
    tell(scene.faults, terminal);
    const asked = scene.cameras.filter(({ id }) => alone === undefined || id === alone);
    const told = figuresOf(plan, { ...scene, cameras: asked }, cell).map(figureTold);
    if (options.flag('json')) terminal.out(json({ stature: plan.settings.stature, cameras: told }));
    else for (const one of told) print(one, terminal);
  },
};

const figureTold = ({ camera, figure: { whole, inPart, byPart } }: CameraFigure) => ({
  id: camera.id,
  name: camera.name,
  whole,
  inPart,
  byPart,
});

function print({ id, whole, inPart, byPart }: ReturnType<typeof figureTold>, { out }: Terminal): void {
  const row = (label: string, area: Area) => out(areaRow(label, 20, area));
  out(`${id}\n`);
  row('whole person', whole);
  row('in part', inPart);
  for (const part of PARTS) row(`  ${part}`, byPart[part]);
}
