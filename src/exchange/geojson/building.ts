import type { Fault } from '../../base/fault.ts';
import { GREATEST_HEIGHT } from '../../base/tolerance.ts';
import type { Building, Canopy, Got, Ring } from '../../model/structure.ts';
import { LEAST_HEIGHT, verticalOf, type Vertical } from './heights.ts';
import { hasRoofSpace, roofOf, type ReadRoof } from './roofs.ts';
import { withoutStraightCorners } from './straight.ts';
import type { Tags } from './tags.ts';

/** A building's plan in the site frame, m: simple rings, outline counter-clockwise. */
export interface Ground {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

export interface BuiltBuilding {
  readonly structure: Building | Canopy;
  readonly vertical: Vertical;
  readonly flattened: ReadRoof['flattened'];
}

/** Roofs that stand open below: everything beneath them is seen. */
const OPEN = new Set(['roof', 'carport', 'canopy']);

/**
 * A building, or a part of one, from its plan and tags; what only stands on posts becomes a canopy.
 * @returns a fault where its heights contradict one another or no building is as high
 */
export function buildingOf(ground: Ground, tags: Tags, id: string, name: string): BuiltBuilding | Fault {
  const vertical = verticalOf(tags, hasRoofSpace(tags));
  if (!vertical) return { code: 'geojson.heights', path: [], subject: name, ...heightWords(tags) };
  if (vertical.top > GREATEST_HEIGHT)
    return {
      code: 'geojson.tall',
      path: [],
      subject: name,
      given: vertical.top,
      allowed: String(GREATEST_HEIGHT),
    };
  const mark = { id, name, hidden: false, locked: false };
  const { outline, holes } = ground;
  const open = OPEN.has(tags['building'] ?? '') || OPEN.has(tags['building:part'] ?? '');
  if (open && holes.length === 0) {
    const { top } = vertical;
    const thickness = Math.min(BOARD, (top - vertical.base) / 2);
    const got = { outline: 'mapped', top: vertical.got.top, thickness: 'guessed' } as const;
    const structure: Canopy = {
      kind: 'canopy',
      ...mark,
      outline,
      top,
      thickness,
      posts: outline.length,
      got,
    };
    return { structure, vertical, flattened: null };
  }
  const room = vertical.roofIncluded ? vertical.top - vertical.base : Infinity;
  const plain = hasRoofSpace(tags) ? withoutStraightCorners(outline) : outline;
  const read = roofOf(tags, plain, holes, vertical.roofHeight, room);
  const top = vertical.roofIncluded ? vertical.top - read.rise : vertical.top;
  const structure: Building = {
    kind: 'building',
    ...mark,
    outline: read.roof.kind === 'flat' ? outline : plain,
    holes,
    base: vertical.base,
    height: Math.max(LEAST_HEIGHT, milli(top - vertical.base)),
    roof: {
      ...read.roof,
      pitch: milli(read.roof.pitch),
      ridge: read.roof.ridge === null ? null : milli(read.roof.ridge),
    },
    wallThickness: null,
    openings: [],
    services: [],
    floors: [],
    yearBuilt: yearOf(tags),
    got: { outline: 'mapped', base: vertical.got.base, height: heightGot(vertical, read), roof: read.got },
  };
  return { structure, vertical, flattened: read.flattened };
}

/** Thickness of an open roof's board, m. Common practice, no source. */
const BOARD = 0.2;

const milli = (value: number): number => Math.round(value * 1000) / 1000;

/** A wall that is what a guessed roof leaves of a mapped height is a guess too. */
const heightGot = (vertical: Vertical, read: ReadRoof): Got =>
  vertical.roofIncluded && read.rise > 0 && read.got === 'guessed' ? 'guessed' : vertical.got.top;

function heightWords(tags: Tags): { readonly given: string } {
  const keys = ['height', 'min_height', 'building:levels', 'building:min_level'];
  return {
    given: keys.flatMap((key) => (tags[key] === undefined ? [] : [`${key} ${tags[key]}`])).join(', '),
  };
}

function yearOf(tags: Tags): number | null {
  const year = /^(\d{4})(?:-|$)/.exec(tags['start_date'] ?? '')?.[1];
  return year === undefined || year === '0000' ? null : Number(year);
}
