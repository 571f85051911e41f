import type { Vec2, Vec3 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { openingGrips } from './openingGrips.ts';
import type { PlacedGrip } from './placedGrip.ts';
import { groundCornersOf, middleOf } from './shapeOf.ts';
import { structureGrips } from './structureGrips.ts';

/** How far the turn is held beyond what is turned, m. */
const BEYOND = 0.8;

/**
 * The handles of what is selected, in the site frame: one thing has those of its parts, several have a body and a turn.
 * Cameras and lamps have handles of their own.
 */
export function gripsOf(plan: Plan, selection: readonly Selected[]): readonly PlacedGrip[] {
  const [only] = selection;
  if (!only) return [];
  if (selection.length > 1) {
    const turn = turnGrip(plan, selection);
    return turn ? [bodyGrip(plan, selection), turn] : [];
  }
  switch (only.kind) {
    case 'structure': {
      const structure = own(plan.structures, only.id);
      if (!structure) return [];
      const turn =
        structure.kind === 'tree' || structure.kind === 'vehicle' ? null : turnGrip(plan, selection);
      return [...structureGrips(structure), ...(turn ? [turn] : [])];
    }
    case 'opening': {
      const host = own(plan.structures, only.on);
      const opening = host && 'openings' in host ? host.openings.find(({ id }) => id === only.id) : undefined;
      return host && opening ? openingGrips(host, opening) : [];
    }
    case 'boundary':
      return boundaryGrips(plan);
    case 'ground':
      return spotGrips(plan);
    default:
      return [];
  }
}

/** Corners over ground of everything selected that stands somewhere. */
export const cornersSelected = (plan: Plan, selection: readonly Selected[]): readonly Vec2[] =>
  selection.flatMap((thing): readonly Vec2[] => {
    switch (thing.kind) {
      case 'structure': {
        const structure = own(plan.structures, thing.id);
        return structure ? groundCornersOf(structure) : [];
      }
      case 'patch':
        return own(plan.patches, thing.id)?.outline ?? [];
      case 'lamp': {
        const lamp = own(plan.lamps, thing.id);
        return lamp ? [lamp.at] : [];
      }
      case 'camera': {
        const mount = own(plan.cameras, thing.id)?.mount;
        if (mount?.kind === 'pole') return [mount.at];
        return mount?.kind === 'loose' ? [[mount.eye[0], mount.eye[1]]] : [];
      }
      case 'boundary':
        return plan.boundary ?? [];
      default:
        return [];
    }
  });

function turnGrip(plan: Plan, selection: readonly Selected[]): PlacedGrip | null {
  const corners = cornersSelected(plan, selection);
  if (corners.length === 0) return null;
  const [x] = middleOf(corners);
  const north = Math.max(...corners.map(([, y]) => y)) + BEYOND;
  return {
    grip: { part: 'turn' },
    at: [x, north, groundHeight(plan.ground)],
    way: 'turn',
    facing: null,
    bar: null,
    cursor: 'grab',
    words: 'Turn',
    locked: areLocked(plan, selection),
  };
}

function bodyGrip(plan: Plan, selection: readonly Selected[]): PlacedGrip {
  const [x, y] = middleOf(cornersSelected(plan, selection));
  const at: Vec3 = [x, y, groundHeight(plan.ground)];
  const words = `${selection.length} things`;
  const locked = areLocked(plan, selection);
  return {
    grip: { part: 'body' },
    at,
    way: 'ground',
    facing: null,
    bar: null,
    cursor: 'move',
    words,
    locked,
  };
}

/** Whether everything selected that could be moved is locked. */
function areLocked(plan: Plan, selection: readonly Selected[]): boolean {
  const marks = selection.flatMap((thing) => {
    if (thing.kind === 'structure') return own(plan.structures, thing.id) ?? [];
    if (thing.kind === 'camera') return own(plan.cameras, thing.id) ?? [];
    return [{ locked: false }];
  });
  return marks.length > 0 && marks.every(({ locked }) => locked);
}

const boundaryGrips = ({ boundary, ground }: Plan): PlacedGrip[] =>
  (boundary ?? []).map(([x, y], index) => ({
    grip: { part: 'boundary', index },
    at: [x, y, groundHeight(ground)],
    way: 'ground',
    facing: null,
    bar: null,
    cursor: 'move',
    words: `Corner ${index + 1} of the boundary`,
    locked: false,
  }));

const spotGrips = ({ ground }: Plan): PlacedGrip[] =>
  ground.kind !== 'spots'
    ? []
    : ground.spots.map(({ at, height }, index) => ({
        grip: { part: 'spot', index },
        at: [at[0], at[1], height],
        way: { along: [0, 0, 1] },
        facing: null,
        bar: null,
        cursor: 'resize',
        words: `Spot height ${index + 1}`,
        locked: false,
      }));

const own = <T>(records: Readonly<Record<string, T>>, id: string): T | undefined =>
  Object.hasOwn(records, id) ? records[id] : undefined;
