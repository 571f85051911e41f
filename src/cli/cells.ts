import { judgeCells } from '../assess/coverCamera.ts';
import { boardAround, Obstacles } from '../assess/ground.ts';
import type { Board } from '../assess/scene.ts';
import { sceneOf } from '../assess/sceneOf.ts';
import { askedSurface } from '../assess/surfaces.ts';
import { targetGround } from '../assess/targetGround.ts';
import { Scratch } from '../coverage/cells.ts';
import { faceCapsOf } from '../coverage/rule.ts';
import { STATES } from '../coverage/state.ts';
import { cellsCsv } from '../exchange/cellsCsv.ts';
import { terrainOf } from '../model/terrain.ts';
import { editionOf } from '../plan/editions.ts';
import { checkCamera } from './assessed.ts';
import { json, type Command } from './command.ts';
import { numberOf, oneFile, required, typed } from './options.ts';
import { planOf, situationOf, tell, writeFile } from './planFile.ts';
import { TARGET_HELP, TARGET_OPTIONS, targetOf } from './target.ts';
import { BadInput } from './terminal.ts';

/** More cells than this are no file that anyone opens. */
const MOST_CELLS = 20_000_000;

/** @throws BadInput where cells of a size would be too many for a file */
function checkCells({ left, bottom, right, top }: Board, cell: number): void {
  if (((right - left) * (top - bottom)) / (cell * cell) > MOST_CELLS)
    throw new BadInput(
      `Cells of ${cell} m would be more than ${MOST_CELLS / 1e6} million on this site. Make them larger.`,
    );
}

export const cells: Command = {
  name: 'cells',
  help: `soffit cells PLAN --camera ID [--target-height H | --target ground|plate|face |
             --surface KEY] [--looks BEARING] [--cell S] [--csv FILE] [--json] [--situation ID]

What one camera makes of every cell of the board, as CSV:
x,y,z,state,band,density,depression,hidden_by for each cell centre. A wall,
roof face or patch has px/m along its own horizontal as a last column.

${TARGET_HELP}
  --cell S            side of a cell, metres; without it as the app has it
  --csv FILE          writes the cells there; without it they are printed
  --json              prints a summary as JSON (needs --csv)`,
  run: (words, terminal) => {
    const options = typed(words, ['camera', ...TARGET_OPTIONS, 'cell', 'csv', 'situation']);
    const plan = planOf(oneFile(options, 'cells', 'a plan'), terminal);
    const situation = situationOf(plan, options.text('situation'));
    const id = required(options, 'cells', 'camera');
    checkCamera(plan, id);
    const size = options.text('cell');
    const cell = size === undefined ? undefined : numberOf(size, 'cell', 0.001, 1000);
    const file = options.text('csv');
    if (options.flag('json') && file === undefined)
      throw new BadInput('--json prints a summary: say where the cells go with --csv FILE.');

    const scene = sceneOf(plan, situation);
    tell(scene.faults, terminal);
    const camera = scene.cameras.find((one) => one.id === id);
    if (!camera)
      throw new BadInput(`The camera “${id}” is fixed to nothing and sees nothing. Fix it to a wall first.`);
    const asked = targetOf(plan, scene.solids, options);
    const { surface, target } = askedSurface(plan, scene, asked);
    if (cell !== undefined) checkCells(surface === null ? scene.board : boardAround(surface.rings), cell);

    const { bands } = editionOf(plan.settings.edition);
    const caps = faceCapsOf(target, bands, plan.settings.faceLimits);
    const obstacles = new Obstacles(scene.solids, scene.closing);
    const scratch = new Scratch();
    const terrain = terrainOf(plan.ground, scene.board)?.terrain ?? null;
    const wanted = { surface, terrain, height: target.height, cell };
    const ground = targetGround(scene, wanted, () => obstacles.facets, scratch);
    const made = judgeCells(camera, { target, bands, caps }, obstacles.facets, ground, scratch);
    const rows = cellsCsv(camera, made, STATES, bands, scene.solids, ground.uneven?.targets);
    if (file === undefined) {
      for (const row of rows) terminal.out(row);
      return;
    }
    writeFile(file, rows);
    const count = made.state.length;
    const counts = Object.fromEntries(
      STATES.map((word, state) => [word, made.state.filter((one) => one === state).length]),
    );
    if (options.flag('json'))
      terminal.out(
        json({ csv: file, camera: id, target, cell: ground.grid.cell, cells: count, states: counts }),
      );
    else terminal.out(`${count} cells of ${ground.grid.cell} m written to ${file}\n`);
  },
};
