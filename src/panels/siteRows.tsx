import { Cctv, CloudSun, Layers2, Lightbulb, Moon, SquareDashed } from 'lucide-react';
import type { Selected } from '../editor/editor.ts';
import { conditionsOf, conditionsText } from '../editor/settings/conditions.ts';
import type { TreeItem } from '../fittings/treeItem.ts';
import type { Structure } from '../model/structure.ts';
import type { Mount } from '../optics/mount.ts';
import type { Plan, PlanCamera } from '../plan/plan.ts';
import { StructureIcon } from './StructureIcon.tsx';
import { detailText, ringArea, spokenText } from './structureWords.ts';

const LOOK = { size: 16, strokeWidth: 1.6 };
const GROUND = 'ground';

/** The rows that lead the Site: boundary and ground. */
export function groundRows(plan: Pick<Plan, 'boundary' | 'ground'>): readonly TreeItem[] {
  const { boundary, ground } = plan;
  const rows: TreeItem[] = [];
  if (boundary) {
    const area = ringArea(boundary).toFixed(0);
    rows.push({
      ...leaf('boundary', 'Site boundary', `${area} m²`, `Site boundary, ${area} square metres`),
      icon: <SquareDashed {...LOOK} />,
    });
  }
  const level = groundText(ground);
  rows.push({ ...leaf(GROUND, 'Ground', level, `Ground, ${level}`), icon: <Layers2 {...LOOK} /> });
  return rows;
}

function groundText(ground: Plan['ground']): string {
  if (ground.kind === 'spots') return `${ground.spots.length} spot heights`;
  if (ground.kind === 'grid') return `${ground.columns} × ${ground.rows} heights`;
  return ground.height === 0 ? 'flat' : `flat, ${ground.height.toFixed(2)} m`;
}

/** Structures do not change while a camera moves: a row is made once a structure. */
const known = new WeakMap<Structure, TreeItem>();

function structureRow(structure: Structure): TreeItem {
  const row = known.get(structure) ?? {
    ...leaf(
      rowOf({ kind: 'structure', id: structure.id }),
      structure.name,
      structure.hidden ? 'not drawn' : detailText(structure),
      spokenText(structure),
    ),
    icon: <StructureIcon structure={structure} />,
    faint: structure.hidden,
  };
  known.set(structure, row);
  return row;
}

export const structureRows = ({ structures, structureOrder }: Pick<Plan, 'structures' | 'structureOrder'>) =>
  structureOrder
    .flatMap((id) => structures[id] ?? [])
    .map((structure, index) =>
      index === 0 ? { ...structureRow(structure), first: true } : structureRow(structure),
    );

/** The rows of the cameras, each with what carries it. */
export const cameraRows = (plan: Plan): readonly TreeItem[] =>
  plan.cameraOrder
    .flatMap((id) => plan.cameras[id] ?? [])
    .map((camera, index) => {
      const where = placeText(plan, camera.mount);
      const detail = camera.hidden ? 'left out' : where;
      return {
        ...leaf(rowOf({ kind: 'camera', id: camera.id }), camera.name, detail, spokenCamera(camera, where)),
        icon: <Cctv {...LOOK} />,
        first: index === 0,
        faint: camera.hidden,
      };
    });

/** The rows of the lamps, each with how far it serves. */
export const lampRows = ({ lamps, lampOrder }: Plan): readonly TreeItem[] =>
  lampOrder
    .flatMap((id) => lamps[id] ?? [])
    .map(({ id, name, light, height }, index) => {
      const detail = light.kind === 'range' ? `${light.range.toFixed(1)} m` : 'from a file';
      const reach = light.kind === 'range' ? `lights ${light.range.toFixed(1)} metres` : 'light from a file';
      const spoken = `${name}, lamp, ${height.toFixed(2)} up, ${reach}`;
      return {
        ...leaf(rowOf({ kind: 'lamp', id }), name, detail, spoken),
        icon: <Lightbulb {...LOOK} />,
        first: index === 0,
      };
    });

/** The rows of the conditions, each with what it changes. */
export const situationRows = (plan: Plan): readonly TreeItem[] =>
  conditionsOf(plan).map((situation, index) => {
    const detail = conditionsText(situation);
    const { id, name, night } = situation;
    const spoken = `${name}, conditions, ${detail}`;
    return {
      ...leaf(rowOf({ kind: 'situation', id }), name, detail === name.toLowerCase() ? '' : detail, spoken),
      icon: night ? <Moon {...LOOK} /> : <CloudSun {...LOOK} />,
      first: index === 0,
    };
  });

const leaf = (id: string, label: string, detail: string, spoken: string) =>
  ({ id, level: 1, label, detail, spoken, open: null }) as const;

/** The row of a thing, and the thing of a row; the ground selects the whole site. */
export const rowOf = (selected: Selected): string =>
  'id' in selected ? `${selected.kind} ${selected.id}` : selected.kind;

export function thingOfRow(row: string): Selected | null {
  if (row === 'boundary') return { kind: 'boundary' };
  const [kind, ...rest] = row.split(' ');
  const id = rest.join(' ');
  return kind === 'structure' || kind === 'camera' || kind === 'lamp' || kind === 'situation'
    ? { kind, id }
    : null;
}

function placeText(plan: Plan, mount: Mount): string {
  if ('host' in mount) return plan.structures[mount.host]?.name ?? 'lost its wall';
  return mount.kind === 'pole' ? 'pole' : 'fixed to nothing';
}

const spokenCamera = ({ name, pan, tilt, hidden }: PlanCamera, where: string): string =>
  `${name}, camera, on ${where}, pan ${pan.toFixed(0)}, tilt ${tilt.toFixed(0)}${hidden ? ', left out' : ''}`;
