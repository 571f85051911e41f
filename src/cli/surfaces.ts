import { sceneOf } from '../assess/sceneOf.ts';
import { surfaceArea, surfacesOf } from '../assess/surfaces.ts';
import { json, type Command } from './command.ts';
import { oneFile, typed } from './options.ts';
import { planOf, situationOf, tell } from './planFile.ts';
import { surfaceText } from './target.ts';

export const surfaces: Command = {
  name: 'surfaces',
  help: `soffit surfaces PLAN [--json] [--situation ID]

The walls, roof faces and patches that coverage can be asked for: the key that
--surface takes, its name and its area.`,
  run: (words, terminal) => {
    const options = typed(words, ['situation']);
    const plan = planOf(oneFile(options, 'surfaces', 'a plan'), terminal);
    const scene = sceneOf(plan, situationOf(plan, options.text('situation')));
    tell(scene.faults, terminal);
    const rows = surfacesOf(plan, scene.solids).map((surface) => ({
      key: surfaceText(surface),
      of: plan.structures[surface.owner]?.name ?? surface.name,
      name: surface.name,
      area: surfaceArea(surface),
    }));
    if (options.flag('json')) terminal.out(json({ surfaces: rows }));
    else
      for (const { key, of, name, area } of rows)
        terminal.out(`${key.padEnd(24)} ${`${of}: ${name}`.padEnd(44)} ${area.toFixed(2).padStart(8)} m²\n`);
  },
};
