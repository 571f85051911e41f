import type { Vec3 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { edgeGrips } from './edgeGrips.ts';
import { openingGrips } from './openingGrips.ts';
import { pictureGrips } from './pictureGrips.ts';
import type { PlacedGrip } from './placedGrip.ts';
import { cornersSelected, expanded, isLocked, wordsFor } from '../shaping/selection.ts';
import { shapeIn } from './shapeIn.ts';
import { middleOf } from './shapeOf.ts';
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
  if (selection.length > 1 || only.kind === 'group') {
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
    case 'patch':
      return shapeGrips(plan, only.id);
    case 'boundary':
      // Its own part, since no structure is called so; the edges are held like any other's.
      return boundaryGrips(plan);
    case 'ground':
      return spotGrips(plan);
    case 'picture': {
      const picture = own(plan.pictures, only.id);
      return picture && !picture.hidden ? pictureGrips(plan, picture) : [];
    }
    default:
      return [];
  }
}

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
  const words = wordsFor(plan, selection);
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

/** Whether everything selected is locked. */
const areLocked = (plan: Plan, selection: readonly Selected[]): boolean =>
  expanded(plan, selection).every((thing) => isLocked(plan, thing));

function shapeGrips(plan: Plan, id: string): readonly PlacedGrip[] {
  const found = shapeIn(plan, id);
  return found ? edgeGrips({ id, name: found.name, locked: false }, found.shape) : [];
}

const boundaryGrips = (plan: Plan): readonly PlacedGrip[] =>
  shapeGrips(plan, 'boundary').map((placed) =>
    placed.grip.part === 'corner'
      ? { ...placed, grip: { part: 'boundary', index: placed.grip.index } }
      : placed,
  );

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
