import type { Vec3 } from '../../base/vector.ts';
import { pointOnFace } from '../../model/faces.ts';
import { groundHeight } from '../../model/ground.ts';
import { placeMount } from '../../model/mounting.ts';
import type { Structure } from '../../model/structure.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { structureGrips } from '../grips/structureGrips.ts';
import { edgesOf, groundCornersOf, shapeOf } from '../grips/shapeOf.ts';
import { faceOf } from '../tools/mount/faceOf.ts';

type Between = readonly [Vec3, Vec3] | null;

/** Between which points a number of a thing's sheet is drawn; null where it has no place of its own. */
export function placeOfSize(plan: Plan, thing: Selected, key: string): Between {
  const level = groundHeight(plan.ground);
  switch (thing.kind) {
    case 'structure': {
      const structure = plan.structures[thing.id];
      return structure ? ofStructure(structure, key, level) : null;
    }
    case 'camera': {
      const camera = plan.cameras[thing.id];
      return camera ? ofCamera(plan, camera, key, level) : null;
    }
    case 'lamp': {
      const lamp = plan.lamps[thing.id];
      if (!lamp || key !== 'height') return null;
      return upright([lamp.at[0], lamp.at[1], level], lamp.height);
    }
    default:
      return null;
  }
}

const upright = ([x, y, z]: Vec3, height: number): Between => [
  [x, y, z],
  [x, y, z + height],
];

function ofStructure(structure: Structure, key: string, level: number): Between {
  switch (structure.kind) {
    case 'tree': {
      const [x, y] = structure.at;
      const { base, height, clear, crownRadius, trunkDiameter } = structure;
      if (key === 'height') return upright([x, y, base], height);
      if (key === 'clear') return upright([x, y, base], clear);
      if (key !== 'crownRadius' && key !== 'trunkDiameter') return null;
      const z = key === 'crownRadius' ? base + (clear + height) / 2 : base + clear / 2;
      const across = key === 'crownRadius' ? [0, crownRadius] : [-trunkDiameter / 2, trunkDiameter / 2];
      return [
        [x + (across[0] ?? 0), y, z],
        [x + (across[1] ?? 0), y, z],
      ];
    }
    case 'vehicle': {
      const [frontLeft, frontRight, rearRight] = groundCornersOf(structure);
      if (!frontLeft || !frontRight || !rearRight) return null;
      const lift = ([x, y]: readonly [number, number]): Vec3 => [x, y, structure.base];
      if (key === 'height') return upright(lift(frontRight), structure.height);
      if (key === 'length') return [lift(rearRight), lift(frontRight)];
      return key === 'width' ? [lift(frontLeft), lift(frontRight)] : null;
    }
    default:
      return ofDrawn(structure, key, level);
  }
}

/** Of what is drawn by corners: where its handles are, else across its first edge. */
function ofDrawn(structure: Structure, key: string, level: number): Between {
  const shape = shapeOf(structure);
  const [a, b] = (shape && edgesOf(shape)[0]) ?? [];
  if (!shape || !a || !b) return null;
  const grip = (part: string): Vec3 | null =>
    structureGrips(structure).find((placed) => placed.grip.part === part)?.at ?? null;
  switch (key) {
    case 'height':
      return upright([b[0], b[1], shape.base], shape.top - shape.base);
    case 'top':
      return upright([b[0], b[1], level], shape.top - level);
    case 'base':
      return upright([a[0], a[1], level], shape.base - level);
    case 'roof overhang': {
      const out = grip('overhang');
      const depth = structure.kind === 'building' ? structure.roof.overhang : 0;
      const way = structureGrips(structure).find((placed) => placed.grip.part === 'overhang')?.facing;
      return out && way ? [[out[0] - way[0] * depth, out[1] - way[1] * depth, out[2]], out] : null;
    }
    case 'roof pitch': {
      const [eaves, ridge] = [grip('overhang'), grip('ridge')];
      return eaves && ridge ? [eaves, ridge] : null;
    }
    case 'thickness': {
      if (structure.kind === 'canopy')
        return [
          [b[0], b[1], shape.base],
          [b[0], b[1], shape.top],
        ];
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (structure.kind !== 'barrier' || !(size > 0)) return null;
      const half = structure.thickness / 2 / size;
      const [nx, ny] = [(b[1] - a[1]) * half, (a[0] - b[0]) * half];
      const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      return [
        [x - nx, y - ny, shape.top],
        [x + nx, y + ny, shape.top],
      ];
    }
    default:
      return null;
  }
}

function ofCamera(plan: Plan, { mount }: PlanCamera, key: string, level: number): Between {
  const placed = placeMount(mount, plan.structures, level);
  if (!placed.ok) return null;
  const { eye, hole } = placed.value;
  if (key === 'height' && 'height' in mount) return upright([eye[0], eye[1], level], mount.height);
  if (key !== 'distance' || !('distance' in mount) || !hole) return null;
  const face = faceOf(plan, mount);
  if (!face) return null;
  const [x, y] = pointOnFace(face, mount.corner === 'start' ? 0 : face.width);
  return [
    [x, y, hole[2]],
    [hole[0], hole[1], hole[2]],
  ];
}
