import { Cctv, Layers2, SquareDashed } from 'lucide-react';
import type { Selected } from '../editor/editor.ts';
import type { TreeItem } from '../fittings/Tree.tsx';
import type { Mount } from '../optics/mount.ts';
import type { Plan, PlanCamera } from '../plan/plan.ts';
import { StructureIcon } from './StructureIcon.tsx';
import { detailText, ringArea, spokenText } from './structureWords.ts';

const LOOK = { size: 16, strokeWidth: 1.6 };
const GROUND = 'ground';

/** The rows of the Site: boundary, ground, structures, cameras. */
export function siteRows(plan: Plan): readonly TreeItem[] {
  const { boundary, ground } = plan;
  const rows: TreeItem[] = [];
  if (boundary) {
    const area = ringArea(boundary).toFixed(0);
    rows.push({
      ...leaf('boundary', 'Site boundary', `${area} m²`, `Site boundary, ${area} square metres`),
      icon: <SquareDashed {...LOOK} />,
    });
  }
  const level = ground.height === 0 ? 'flat' : `flat, ${ground.height.toFixed(2)} m`;
  rows.push({ ...leaf(GROUND, 'Ground', level, `Ground, ${level}`), icon: <Layers2 {...LOOK} /> });
  plan.structureOrder.forEach((id, index) => {
    const structure = plan.structures[id];
    if (!structure) return;
    const detail = structure.hidden ? 'not shown' : detailText(structure);
    rows.push({
      ...leaf(rowOf({ kind: 'structure', id }), structure.name, detail, spokenText(structure)),
      icon: <StructureIcon structure={structure} />,
      first: index === 0,
      faint: structure.hidden,
    });
  });
  plan.cameraOrder.forEach((id, index) => {
    const camera = plan.cameras[id];
    if (!camera) return;
    const where = placeText(plan, camera.mount);
    rows.push({
      ...leaf(
        rowOf({ kind: 'camera', id }),
        camera.name,
        camera.hidden ? 'left out' : where,
        spokenCamera(camera, where),
      ),
      icon: <Cctv {...LOOK} />,
      first: index === 0,
      faint: camera.hidden,
    });
  });
  return rows;
}

const leaf = (id: string, label: string, detail: string, spoken: string) =>
  ({ id, level: 1, label, detail, spoken, open: null }) as const;

/** The row of a thing, and the thing of a row; the ground selects the whole site. */
export const rowOf = (selected: Selected): string =>
  selected.kind === 'boundary' ? 'boundary' : `${selected.kind} ${selected.id}`;

export function thingOfRow(row: string): Selected | null {
  if (row === 'boundary') return { kind: 'boundary' };
  const [kind, ...rest] = row.split(' ');
  const id = rest.join(' ');
  return kind === 'structure' || kind === 'camera' ? { kind, id } : null;
}

function placeText(plan: Plan, mount: Mount): string {
  if ('host' in mount) return plan.structures[mount.host]?.name ?? 'lost its wall';
  return mount.kind === 'pole' ? 'pole' : 'fixed to nothing';
}

const spokenCamera = ({ name, pan, tilt, hidden }: PlanCamera, where: string): string =>
  `${name}, camera, on ${where}, pan ${pan.toFixed(0)}, tilt ${tilt.toFixed(0)}${hidden ? ', left out' : ''}`;
