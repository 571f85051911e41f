import { groundHeight } from '../../../model/ground.ts';
import type { RoofKind } from '../../../model/structure.ts';
import { solidsOf } from '../../../model/solids.ts';
import { faultText } from '../../../plan/faultText.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import { setRoofKind } from '../../settings/structureChoices.ts';
import { structureSettings } from '../../settings/structureSettings.ts';
import type { ToolState } from '../chart.ts';
import { asking, type Questions } from '../drawing/asking.ts';
import { drawingTool } from '../drawing/drawingTool.ts';
import type { DrawSpec } from '../drawing/drawSpec.ts';
import { added, baseOf, gotOf } from '../drawing/newStructure.ts';
import { raiseHeight } from '../drawing/raise.ts';

/** Eaves of a single storey, m: common practice, no source. */
const FIRST_HEIGHT = 2.7;

const ROOFS: readonly { readonly key: RoofKind; readonly label: string }[] = [
  { key: 'flat', label: 'Flat' },
  { key: 'gable', label: 'Gable' },
  { key: 'hip', label: 'Hip' },
  { key: 'monopitch', label: 'Mono-pitch' },
  { key: 'parapet', label: 'Parapet' },
];

/** How it is drawn. */
export const OUTLINE: DrawSpec = {
  tool: 'outline',
  kinds: [
    {
      key: 'building',
      label: 'Building',
      raise: raiseHeight(FIRST_HEIGHT),
      make: (plan, drawn, height) => {
        const isFirst = !Object.values(plan.structures).some(({ kind }) => kind === 'building');
        return added(plan, {
          name: isFirst ? 'House' : 'Building',
          kind: 'building',
          outline: drawn.corners,
          holes: [],
          base: baseOf(plan, drawn.corners),
          height,
          roof: { kind: 'flat', pitch: 0, overhang: 0, ridge: null, parapet: 0 },
          wallThickness: null,
          openings: [],
          services: [],
          floors: [],
          yearBuilt: null,
          got: { outline: gotOf(plan, drawn), base: 'guessed', height: 'guessed', roof: 'guessed' },
        });
      },
    },
  ],
  ends: 'ring',
  rectangle: true,
  rectangleOnly: false,
  raises: true,
  ask: (editor, thing) => asking(editor, thing, (plan) => questions(plan, 'id' in thing ? thing.id : '')),
};

/** The outline tool: a building, corner by corner or as a rectangle, then its height, then its roof. */
export const outlining = (editor: Editor): ToolState => drawingTool(editor, OUTLINE);

/** Roof, pitch, overhang. */
function questions(plan: Plan, id: string): Questions {
  const building = plan.structures[id];
  if (building?.kind !== 'building') return { choices: [], fields: [], trouble: null };
  const faults = solidsOf(building, groundHeight(plan.ground)).faults;
  return {
    choices: [
      {
        key: 'roof',
        label: 'Roof',
        options: ROOFS,
        chosen: building.roof.kind,
        change: (now, option) => {
          const kind = ROOFS.find(({ key }) => key === option)?.key;
          return kind ? setRoofKind(now, id, kind, 'guessed') : now;
        },
      },
    ],
    fields: structureSettings(building).filter(({ key }) => key.startsWith('roof ')),
    trouble: faults.length > 0 ? faults.map(faultText).join(' ') : null,
    text: building.roof.kind === 'flat' ? 'Give it a roof, or leave it flat.' : building.name,
  };
}
