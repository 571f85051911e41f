import { cos, sin } from '../../base/angle.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import { solidsOf } from '../../model/solids.ts';
import { hostFaces } from '../../model/faces.ts';
import type { Building, Structure } from '../../model/structure.ts';
import type { Grip } from './grip.ts';
import type { PlacedGrip } from './placedGrip.ts';
import { edgeGrips } from './edgeGrips.ts';
import { edgesOf, shapeOf, type Shape } from './shapeOf.ts';

const UP: Vec3 = [0, 0, 1];

/** How far before a vehicle's front its heading is held, m. */
const BEFORE = 0.6;

type Part = Exclude<Extract<Grip, { structure: string }>['part'], 'opening' | 'corner' | 'edge'>;

/** What is held of one structure, by what it is called. */
export function structureGrips(structure: Structure): readonly PlacedGrip[] {
  const shape = shapeOf(structure);
  if (shape) {
    const across = acrossOf(structure, shape);
    return [...edgeGrips(structure, shape), ...across];
  }
  return structure.kind === 'tree'
    ? treeGrips(structure)
    : structure.kind === 'vehicle'
      ? [headingGrip(structure)]
      : [];
}

/** Height, base and what a roof adds. */
function acrossOf(structure: Structure, shape: Shape): PlacedGrip[] {
  const [first, second] = edgesOf(shape)[0] ?? [];
  if (!first || !second) return [];
  const lift = (part: Part, name: string, [x, y]: Vec2, z: number): PlacedGrip => ({
    ...plain(structure, name),
    grip: { part, structure: structure.id },
    at: [x, y, z],
    way: { along: UP },
    cursor: 'resize',
  });
  const quarter: Vec2 = [first[0] + (second[0] - first[0]) / 4, first[1] + (second[1] - first[1]) / 4];
  if (structure.kind === 'canopy') return [lift('top', 'Top', second, shape.top)];
  const height = lift('height', structure.kind === 'building' ? 'Wall height' : 'Height', second, shape.top);
  const base = lift('base', 'Base', quarter, shape.base);
  if (structure.kind !== 'building') return [height, base];
  return [height, ...ridgeGrip(structure, lift), ...overhangGrip(structure), base];
}

/** In the middle of the highest line of a pitched roof. */
function ridgeGrip(
  building: Building,
  lift: (part: Part, name: string, at: Vec2, z: number) => PlacedGrip,
): PlacedGrip[] {
  if (building.roof.kind === 'flat' || building.roof.kind === 'parapet') return [];
  const top = highest(building);
  if (!top || top[2] < building.base + building.height + 1e-6) return [];
  return [lift('ridge', 'Ridge', [top[0], top[1]], top[2])];
}

/** The middle of the highest corners of what a structure is built of; null where it cannot be built. */
function highest(structure: Structure): Vec3 | null {
  const { solids } = solidsOf(structure);
  let z = -Infinity;
  let at: [number, number, number, number] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { positions } of solids)
    for (let k = 0; k + 2 < positions.length; k += 3) {
      const [x = 0, y = 0, up = 0] = [positions[k], positions[k + 1], positions[k + 2]];
      if (up < z - 1e-6) continue;
      if (up > z + 1e-6) {
        z = up;
        at = [x, x, y, y];
      }
      at = [Math.min(at[0], x), Math.max(at[1], x), Math.min(at[2], y), Math.max(at[3], y)];
    }
  return z === -Infinity ? null : [(at[0] + at[1]) / 2, (at[2] + at[3]) / 2, z];
}

/** At the fascia over the longest wall that has a soffit; at that wall's own top where the roof does not overhang yet. */
function overhangGrip(building: Building): PlacedGrip[] {
  if (building.roof.kind === 'parapet') return [];
  const faces = hostFaces(building);
  const soffits = faces.filter(({ sort, within }) => sort === 'soffit' && within === null);
  const candidates = soffits.length > 0 ? soffits : faces;
  const face = candidates.toSorted((a, b) => b.width - a.width)[0];
  if (!face) return [];
  const { start, along, outward, width, depth } = face;
  return [
    {
      ...plain(building, 'Overhang'),
      grip: { part: 'overhang', structure: building.id },
      at: [
        start[0] + (along[0] * width) / 2 + outward[0] * depth,
        start[1] + (along[1] * width) / 2 + outward[1] * depth,
        building.base + building.height,
      ],
      way: { along: outward },
      facing: outward,
      cursor: 'resize',
    },
  ];
}

function treeGrips(tree: Extract<Structure, { kind: 'tree' }>): PlacedGrip[] {
  const { at, base, height, clear, crownRadius } = tree;
  const grip = (part: Part, name: string, place: Vec3, along: Vec3): PlacedGrip => ({
    ...plain(tree, name),
    grip: { part, structure: tree.id },
    at: place,
    way: { along },
    cursor: 'resize',
  });
  return [
    grip('height', 'Height', [at[0], at[1], base + height], UP),
    grip('crown', 'Crown', [at[0] + crownRadius, at[1], base + (clear + height) / 2], [1, 0, 0]),
    grip('clear', 'Clear height', [at[0], at[1], base + clear], UP),
  ];
}

function headingGrip(vehicle: Extract<Structure, { kind: 'vehicle' }>): PlacedGrip {
  const far = vehicle.length / 2 + BEFORE;
  return {
    ...plain(vehicle, 'Heading'),
    grip: { part: 'heading', structure: vehicle.id },
    at: [
      vehicle.at[0] + sin(vehicle.heading) * far,
      vehicle.at[1] + cos(vehicle.heading) * far,
      vehicle.base,
    ],
    way: 'turn',
    cursor: 'grab',
  };
}

const plain = ({ name, locked }: Structure, part: string) =>
  ({ words: `${part} of ${name}`, facing: null, bar: null, locked }) as const;
