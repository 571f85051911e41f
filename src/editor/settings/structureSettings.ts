import type { Got, Structure } from '../../model/structure.ts';
import type { Outcome } from '../../base/fault.ts';
import type { Vec2 } from '../../base/vector.ts';
import { setTree, setVehicle } from '../../plan/commands/setTree.ts';
import { setStructureSize } from '../../plan/commands/setStructureSize.ts';
import type { StructureSizes } from '../../plan/commands/setStructureSize.ts';
import { withStructure } from '../../plan/commands/withStructure.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Limit } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';
import type { SettingMeasure, SizeSetting } from './setting.ts';

const CROWN: Limit = { least: 0.01, most: 50 };
const TRUNK: Limit = { least: 0.01, most: 20 };
const VEHICLE: Limit = { least: 0.1, most: 20 };

/** The numbers of a structure that can be typed, in the order of the sheet. */
export function structureSettings(structure: Structure): readonly SizeSetting[] {
  const { id } = structure;
  const size = (
    key: keyof StructureSizes,
    label: string,
    value: number,
    bounds: Limit,
    got: Got | null,
    measure: SettingMeasure = 'length',
  ): SizeSetting => ({
    key,
    label,
    measure,
    bounds,
    value,
    got,
    change: (plan, next) => setStructureSize(plan, id, { [key]: next }),
  });
  switch (structure.kind) {
    case 'building':
      return [
        size('height', 'Wall height', structure.height, LIMITS.height, structure.got.height),
        size('base', 'Base', structure.base, LIMITS.level, structure.got.base),
        ...roofSettings(structure),
      ];
    case 'barrier':
      return [
        size('height', 'Height', structure.height, LIMITS.height, structure.got.height),
        size('thickness', 'Thickness', structure.thickness, LIMITS.thickness, structure.got.thickness),
      ];
    case 'canopy':
      return [
        size('top', 'Top', structure.top, LIMITS.height, structure.got.top),
        size('thickness', 'Thickness', structure.thickness, LIMITS.thickness, structure.got.thickness),
      ];
    case 'tree':
      return [
        size('height', 'Height', structure.height, LIMITS.height, structure.got.height),
        size('crownRadius', 'Crown radius', structure.crownRadius, CROWN, structure.got.crown),
        size('clear', 'Crown begins at', structure.clear, { least: 0, most: structure.height }, null),
        size('trunkDiameter', 'Trunk across', structure.trunkDiameter, TRUNK, null),
        ...placeSettings(structure, (plan, at) => setTree(plan, id, { at }, 'measured')),
      ];
    case 'vehicle':
      return [
        size('length', 'Length', structure.length, { least: 0.1, most: 50 }, structure.got.size),
        size('width', 'Width', structure.width, VEHICLE, null),
        size('height', 'Height', structure.height, VEHICLE, null),
        ...placeSettings(structure, (plan, at) => setVehicle(plan, id, { at }, 'measured')),
        {
          key: 'heading',
          label: 'Front towards',
          measure: 'bearing',
          bounds: LIMITS.bearing,
          value: structure.heading,
          got: null,
          change: (plan, heading) => setVehicle(plan, id, { heading }, 'measured'),
        },
      ];
    case 'block':
      return [
        size('height', 'Height', structure.height, LIMITS.height, structure.got.height),
        size('base', 'Base', structure.base, LIMITS.level, structure.got.base),
      ];
  }
}

/** Where something stands, m. */
function placeSettings(
  { at, got }: Extract<Structure, { at: Vec2 }>,
  move: (plan: Plan, at: Vec2) => Outcome<Plan>,
): readonly SizeSetting[] {
  const place = (label: string, axis: 0 | 1, mark: Got | null): SizeSetting => ({
    key: `at ${axis}`,
    label,
    measure: 'length',
    bounds: LIMITS.coordinate,
    value: at[axis],
    got: mark,
    change: (plan, next) => move(plan, axis === 0 ? [next, at[1]] : [at[0], next]),
  });
  return [place('East', 0, got.at), place('North', 1, null)];
}

function roofSettings({ id, roof, got }: Extract<Structure, { kind: 'building' }>): readonly SizeSetting[] {
  const part = (
    key: 'pitch' | 'overhang' | 'parapet',
    label: string,
    bounds: Limit,
    measure: SettingMeasure,
  ): SizeSetting => ({
    key: `roof ${key}`,
    label,
    measure,
    bounds,
    value: roof[key],
    got: got.roof,
    change: (plan, next) => setStructureSize(plan, id, { roof: { [key]: next } }),
  });
  const pitched = roof.kind === 'gable' || roof.kind === 'hip' || roof.kind === 'monopitch';
  return [
    ...(pitched ? [part('pitch', 'Roof pitch', LIMITS.pitch, 'angle')] : []),
    ...(roof.kind === 'parapet'
      ? [part('parapet', 'Parapet', LIMITS.parapet, 'length')]
      : [part('overhang', 'Overhang', LIMITS.overhang, 'length')]),
  ];
}

/** Says anew how the sizes under one mark were got, without changing them. */
export function setGot(plan: Plan, id: string, key: string, how: Got): Plan {
  return withStructure(plan, id, (structure) => {
    const mark = markOf(key);
    if (Reflect.get(structure.got, mark) === how || !Object.hasOwn(structure.got, mark)) return structure;
    // The mark was found in the structure itself, so the kind keeps its shape.
    return { ...structure, got: { ...structure.got, [mark]: how } } as Structure;
  });
}

const MARKS: Readonly<Record<string, string>> = { crownRadius: 'crown', length: 'size', 'at 0': 'at' };

const markOf = (key: string): string => MARKS[key] ?? (key.startsWith('roof ') ? 'roof' : key);
