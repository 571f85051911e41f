import { sceneOf } from '../assess/sceneOf.ts';
import type { Camera } from '../optics/camera.ts';
import { json, type Command } from './command.ts';
import { oneFile, typed } from './options.ts';
import { planOf, situationOf, tell } from './planFile.ts';

export const cameras: Command = {
  name: 'cameras',
  help: `soffit cameras PLAN [--json] [--situation ID]

Where each camera's lens is and how it looks, worked out from its mount: eye in
metres, angles in degrees, lens and sensor in millimetres, frame in pixels.`,
  run: (words, terminal) => {
    const options = typed(words, ['situation']);
    const plan = planOf(oneFile(options, 'cameras', 'a plan'), terminal);
    const situation = situationOf(plan, options.text('situation'));
    const scene = sceneOf(plan, situation);
    tell(scene.faults, terminal);
    const list = scene.cameras.map(listed);
    if (options.flag('json')) return terminal.out(json({ cameras: list }));
    for (const { id, eye, pan, tilt, focalLength, range } of list)
      terminal.out(
        `${id}\teye ${eye.map((value) => value.toFixed(3)).join(', ')} m\tpan ${pan.toFixed(1)}°\ttilt ${tilt.toFixed(1)}°\t${focalLength} mm\trange ${range} m\n`,
      );
  },
};

/** Key by key, so that what the contract names is what is printed. */
const listed = (camera: Camera): Camera => ({
  id: camera.id,
  name: camera.name,
  eye: camera.eye,
  pan: camera.pan,
  tilt: camera.tilt,
  roll: camera.roll,
  focalLength: camera.focalLength,
  k: camera.k,
  sensor: { width: camera.sensor.width, height: camera.sensor.height },
  frame: { width: camera.frame.width, height: camera.frame.height },
  range: camera.range,
});
