import { sceneOf } from '../assess/sceneOf.ts';
import { objIds, objText } from '../exchange/obj.ts';
import { json, type Command } from './command.ts';
import { oneFile, typed } from './options.ts';
import { planOf, situationOf, tell, writeFile } from './planFile.ts';

export const solids: Command = {
  name: 'solids',
  help: `soffit solids PLAN [--obj FILE] [--json] [--situation ID]

Everything that can block a view, as closed triangle meshes in the site frame
(x east, y north, z up, metres).

  --obj FILE   writes Wavefront OBJ, each solid under a line "g ID PASSAGE"
               (PASSAGE: solid, screen or clear)
  --json       prints the list of solids as JSON`,
  run: (words, terminal) => {
    const options = typed(words, ['obj', 'situation']);
    const plan = planOf(oneFile(options, 'solids', 'a plan'), terminal);
    const situation = situationOf(plan, options.text('situation'));
    const scene = sceneOf(plan, situation);
    tell(scene.faults, terminal);
    const file = options.text('obj');
    if (file !== undefined) writeFile(file, objText(scene.solids));
    const ids = objIds(scene.solids);
    const list = scene.solids.map(({ structure, name, passage, triangles }, index) => ({
      id: ids[index] ?? '',
      structure,
      name,
      passage,
      triangles: triangles.length / 3,
    }));
    if (options.flag('json')) terminal.out(json({ solids: list }));
    else
      for (const { id, passage, triangles, name } of list)
        terminal.out(`${id}\t${passage}\t${triangles} triangles\t${name}\n`);
  },
};
