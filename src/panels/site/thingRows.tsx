import { Cctv, CloudSun, Lightbulb, Moon } from 'lucide-react';
import { conditionsOf, conditionsText } from '../../editor/settings/conditions.ts';
import type { TreeItem } from '../../fittings/treeItem.ts';
import type { Mount } from '../../optics/mount.ts';
import type { Lamp, Plan, PlanCamera } from '../../plan/plan.ts';
import { leaf } from './leaf.ts';
import { rowOf } from './rowIds.ts';

const LOOK = { size: 16, strokeWidth: 1.6 };

/** The row of a camera, with what carries it. */
export function cameraRow(plan: Plan, camera: PlanCamera, level: number): TreeItem {
  const where = placeText(plan, camera.mount);
  const { id, name, pan, tilt, hidden } = camera;
  const spoken = `${name}, camera, on ${where}, pan ${pan.toFixed(0)}, tilt ${tilt.toFixed(0)}${hidden ? ', left out' : ''}`;
  return {
    ...leaf(rowOf({ kind: 'camera', id }), name, hidden ? 'left out' : where, spoken, level),
    icon: <Cctv {...LOOK} />,
    faint: hidden,
  };
}

function placeText(plan: Plan, mount: Mount): string {
  if ('host' in mount) return plan.structures[mount.host]?.name ?? 'lost its wall';
  return mount.kind === 'pole' ? 'pole' : 'fixed to nothing';
}

/** The row of a lamp, with how far it serves. */
export function lampRow({ id, name, light, height }: Lamp, level: number): TreeItem {
  const detail = light.kind === 'range' ? `${light.range.toFixed(1)} m` : 'from a file';
  const reach = light.kind === 'range' ? `lights ${light.range.toFixed(1)} metres` : 'light from a file';
  return {
    ...leaf(
      rowOf({ kind: 'lamp', id }),
      name,
      detail,
      `${name}, lamp, ${height.toFixed(2)} up, ${reach}`,
      level,
    ),
    icon: <Lightbulb {...LOOK} />,
  };
}

/** The rows of the conditions, each with what it changes. */
export const situationRows = (plan: Plan): readonly TreeItem[] =>
  conditionsOf(plan).map((situation) => {
    const detail = conditionsText(situation);
    const { id, name, night } = situation;
    return {
      ...leaf(
        rowOf({ kind: 'situation', id }),
        name,
        detail === name.toLowerCase() ? '' : detail,
        `${name}, conditions, ${detail}`,
      ),
      icon: night ? <Moon {...LOOK} /> : <CloudSun {...LOOK} />,
    };
  });
