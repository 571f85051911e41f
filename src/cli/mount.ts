import { bearing } from '../base/angle.ts';
import { addCamera, newCamera } from '../plan/commands/addCamera.ts';
import { takenIds } from '../plan/commands/freshId.ts';
import { checkPlan } from '../plan/checkPlan.ts';
import type { Plan, PlanCamera } from '../plan/plan.ts';
import { planText } from '../plan/write.ts';
import { json, type Command } from './command.ts';
import { numberOf, numbersOf, oneFile, required, typed, type Typed } from './options.ts';
import { faultLines, planOf, writeFile } from './planFile.ts';
import { BadInput } from './terminal.ts';

const NAMES = ['id', 'eye', 'pan', 'tilt', 'roll', 'focal', 'k', 'sensor', 'frame', 'range', 'out'];

export const mount: Command = {
  name: 'mount',
  help: `soffit mount PLAN --id ID --eye X,Y,Z --pan P --tilt T [--roll R] --focal F [--k K]
             --sensor WxH --frame WxH [--range R] --out FILE [--json]

Adds a free-standing camera to a plan and writes the result, for scripts.

  --eye X,Y,Z     the lens, metres in the site frame
  --pan, --tilt   bearing of the axis, and down from the horizon, degrees
  --roll          clockwise seen from behind, degrees; 0 without it
  --focal         focal length, mm
  --k             the lens law, -1 to 1; 1 (rectilinear) without it
  --sensor WxH    active area, mm
  --frame WxH     pixels across and down
  --range R       metres; 30 without it`,
  run: (words, terminal) => {
    const options = typed(words, NAMES);
    const plan = planOf(oneFile(options, 'mount', 'a plan'), terminal);
    const camera = cameraFrom(plan, options);
    const out = required(options, 'mount', 'out');
    if (takenIds(plan).has(camera.id))
      throw new BadInput(`The id “${camera.id}” is taken in this plan. Give another with --id.`);
    const checked = checkPlan(addCamera(plan, camera));
    if (!checked.ok) throw new BadInput(faultLines(checked.faults));
    writeFile(out, planText(checked.value));
    terminal.out(
      options.flag('json')
        ? json({ plan: out, camera: camera.id })
        : `${camera.id} mounted, written to ${out}\n`,
    );
  },
};

function cameraFrom(plan: Plan, options: Typed): PlanCamera {
  const need = (name: string) => required(options, 'mount', name);
  const id = need('id');
  const [x = 0, y = 0, z = 0] = numbersOf(need('eye'), 'eye', /,/, 'X,Y,Z');
  const pan = numberOf(need('pan'), 'pan');
  const tilt = numberOf(need('tilt'), 'tilt', -90, 90);
  const focalLength = numberOf(need('focal'), 'focal', 0.1);
  const sensor = extentOf(need('sensor'), 'sensor');
  const frame = extentOf(need('frame'), 'frame');
  const k = numberOf(options.text('k') ?? '1', 'k', -1, 1);
  const camera = newCamera(plan, { kind: 'loose', eye: [x, y, z] }, { pan: bearing(pan), tilt });
  const range = options.text('range');
  const [mode] = camera.device.modes;
  if (!mode) throw new Error('a new camera has no picture mode');
  const lens = {
    shortest: focalLength,
    longest: focalLength,
    focalLength,
    statedHfov: null,
    statedVfov: null,
    statedIn: null,
    fNumber: null,
  };
  return {
    ...camera,
    id,
    name: id,
    roll: numberOf(options.text('roll') ?? '0', 'roll', -180, 180),
    device: {
      sensor,
      modes: [{ ...mode, frame }],
      recorded: mode.id,
      lens: k === 1 ? lens : { ...lens, law: k },
    },
    range: range === undefined ? camera.range : numberOf(range, 'range', 0.1, 5000),
  };
}

function extentOf(text: string, name: string): { readonly width: number; readonly height: number } {
  const [width = 0, height = 0] = numbersOf(text, name, /[x×]/i, 'WxH');
  return { width, height };
}
