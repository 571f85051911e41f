import type { Vec2 } from '../../base/vector.ts';
import type { Passage } from '../../model/passage.ts';
import type { Barrier } from '../../model/structure.ts';
import { taggedLength, type Tags } from './tags.ts';

type Sort = Barrier['sort'];

const SORTS: Readonly<Record<string, Sort>> = {
  wall: 'wall',
  retaining_wall: 'wall',
  city_wall: 'wall',
  fence: 'fence',
  guard_rail: 'fence',
  handrail: 'fence',
  hedge: 'hedge',
};

/** Sizes of what is mapped without any, m. Common practice, no source. */
const HEIGHTS: Readonly<Record<Sort, number>> = { wall: 1.8, fence: 1.5, hedge: 1.5 };
const THICKNESSES: Readonly<Record<Sort, number>> = { wall: 0.22, fence: 0.05, hedge: 0.6 };

/** Fences that are seen through. One whose type is not tagged is held to be boards: it hides rather than shows. */
const OPEN_FENCES = new Set(
  'chain_link mesh wire barbed_wire railing bars metal_bars pole electric split_rail post_and_rail net roundpole'.split(
    ' ',
  ),
);

/** What of a mapped barrier can stand in a plan; null for kerbs, bollards and whatever else blocks no view. */
export const barrierSort = (tags: Tags): Sort | null => {
  const kind = tags['barrier'];
  return kind !== undefined && Object.hasOwn(SORTS, kind) ? (SORTS[kind] ?? null) : null;
};

/** A wall, fence or hedge along a line in the site frame, m. */
export function barrierOf(
  line: readonly Vec2[],
  closed: boolean,
  sort: Sort,
  tags: Tags,
  id: string,
  name: string,
): Barrier {
  const height = inside(taggedLength(tags, 'height'), 0.05, 30);
  const thickness = inside(taggedLength(tags, 'width') ?? taggedLength(tags, 'thickness'), 0.01, 10);
  return {
    kind: 'barrier',
    sort,
    id,
    name,
    hidden: false,
    locked: false,
    line,
    closed,
    base: 0,
    height: height ?? HEIGHTS[sort],
    thickness: thickness ?? THICKNESSES[sort],
    passage: passageOf(sort, tags),
    openings: [],
    got: {
      line: 'mapped',
      height: height === null ? 'guessed' : 'mapped',
      thickness: thickness === null ? 'guessed' : 'mapped',
    },
  };
}

function passageOf(sort: Sort, tags: Tags): Passage {
  if (sort !== 'fence') return 'solid';
  if (tags['barrier'] === 'guard_rail' || tags['barrier'] === 'handrail') return 'screen';
  return OPEN_FENCES.has(tags['fence_type'] ?? '') ? 'screen' : 'solid';
}

const inside = (value: number | null, least: number, most: number): number | null =>
  value !== null && value >= least && value <= most ? value : null;
