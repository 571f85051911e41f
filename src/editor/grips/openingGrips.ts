import type { Vec3 } from '../../base/vector.ts';
import type { HostFace } from '../../model/face.ts';
import { hostFaces } from '../../model/faces.ts';
import type { Opening, Structure } from '../../model/structure.ts';
import type { Grip } from './grip.ts';
import type { PlacedGrip } from './placedGrip.ts';

type Side = Extract<Grip, { part: 'opening' }>['side'];

/** Where an opening lies on its wall seen from outside. `drawn` turns metres from the first corner drawn into metres from the face's start. */
export interface OpeningPlace {
  readonly face: HostFace;
  /** From the start of the face to the nearer jamb, m. */
  readonly from: number;
  /** The face runs the way its edge was drawn. */
  readonly asDrawn: boolean;
  /** Foot of the structure, m above z = 0. */
  readonly base: number;
}

/** The face in which an opening lies; of a barrier, its left-hand side. Null where the structure cannot be built. */
export function openingPlace(structure: Structure, opening: Opening): OpeningPlace | null {
  if (!('openings' in structure)) return null;
  const face = hostFaces(structure).find((one) => one.sort === 'wall' && one.face === opening.face);
  const corners = structure.kind === 'building' ? structure.outline : structure.line;
  const first = corners[opening.face];
  if (!face || !first) return null;
  // Outlines drawn clockwise are turned round, and a mitred side begins off its corner.
  const s = (first[0] - face.start[0]) * face.along[0] + (first[1] - face.start[1]) * face.along[1];
  const asDrawn = s < face.width / 2;
  const from = asDrawn ? s + opening.along : s - opening.along - opening.width;
  return { face, from, asDrawn, base: structure.base };
}

/** The body, both sides, head and sill of an opening. */
export function openingGrips(structure: Structure, opening: Opening): readonly PlacedGrip[] {
  const place = openingPlace(structure, opening);
  if (!place) return [];
  const { face, from, base } = place;
  const foot = base + opening.sill;
  const at = (s: number, z: number): Vec3 => [
    face.start[0] + face.along[0] * s,
    face.start[1] + face.along[1] * s,
    z,
  ];
  const rightwards = rightOnScreen(face);
  const back: Vec3 = [0 - rightwards[0], 0 - rightwards[1], 0];
  const startIsLeft = rightwards === face.along;
  const [left, right] = startIsLeft ? [from, from + opening.width] : [from + opening.width, from];
  const middle = from + opening.width / 2;
  const grip = (side: Side, words: string, place3: Vec3, way: PlacedGrip['way']): PlacedGrip => ({
    grip: { part: 'opening', structure: structure.id, opening: opening.id, side },
    at: place3,
    way,
    facing: face.outward,
    bar: null,
    cursor: side === 'body' ? 'move' : 'resize',
    words: `${words} of ${opening.name}`,
    locked: structure.locked,
  });
  const half = foot + opening.height / 2;
  return [
    grip('body', 'Middle', at(middle, half), 'face'),
    grip('left', 'Left side', at(left, half), { along: back }),
    grip('right', 'Right side', at(right, half), { along: rightwards }),
    grip('head', 'Head', at(middle, foot + opening.height), { along: [0, 0, 1] }),
    // A door's sill stays on the floor.
    ...(opening.kind === 'window' ? [grip('sill', 'Sill', at(middle, foot), { along: [0, 0, -1] })] : []),
  ];
}

/** The way along a face that runs to the right seen from outside. */
function rightOnScreen({ along, outward }: HostFace): Vec3 {
  return along[1] * outward[0] - along[0] * outward[1] > 0 ? along : [0 - along[0], 0 - along[1], 0];
}
