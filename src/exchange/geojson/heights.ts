import type { Got } from '../../model/structure.ts';
import { taggedLength, taggedNumber, type Tags } from './tags.ts';

/** A level from floor to floor, m, where no height is tagged. Common practice for housing, no source. */
export const LEVEL_HEIGHT = 3;

/** A wall lower than this was not meant, m. */
export const LEAST_HEIGHT = 0.1;

/** Levels of a building that says nothing of its height: two for a house, one for what is small by its kind. */
const LEVELS = 2;
const LOW = new Set(
  'garage garages shed carport roof hut kiosk greenhouse bungalow service toilets'.split(' '),
);

/** A building from foot to top above local ground, m. */
export interface Vertical {
  readonly base: number;
  readonly top: number;
  /** Whether `top` is that of the roof (a tagged height) or of the walls (levels, below a roof with a space of its own). */
  readonly roofIncluded: boolean;
  /** What the tags say the roof's share is; null where they do not. */
  readonly roofHeight: number | null;
  /** Which tag gave the top. */
  readonly by: 'height' | 'levels' | 'default';
  readonly got: { readonly base: Got; readonly top: Got };
}

/**
 * Foot and top of a building or part of one. `height` reaches to the top of the roof; `building:levels` counts from the
 * ground, levels left open below a part included, and not those in the roof.
 * Source: OpenStreetMap's conventions for simple 3D buildings.
 * @param hasRoofSpace whether the roof is one with a space under it, on top of the levels; else roof levels are walls
 * @returns null where the foot would lie at or above the top
 */
export function verticalOf(tags: Tags, hasRoofSpace: boolean): Vertical | null {
  const minHeight = taggedLength(tags, 'min_height');
  const minLevel = taggedNumber(tags, 'building:min_level');
  const base = minHeight ?? (minLevel === null ? 0 : minLevel * LEVEL_HEIGHT);
  const roofLevels = taggedNumber(tags, 'roof:levels') ?? 0;
  const fromRoofLevels = hasRoofSpace && roofLevels > 0 ? roofLevels * LEVEL_HEIGHT : null;

  const height = positive(taggedLength(tags, 'height') ?? taggedLength(tags, 'building:height'));
  const levels = positive(taggedNumber(tags, 'building:levels'));
  const fromLevels = levels === null ? null : (levels + (hasRoofSpace ? 0 : roofLevels)) * LEVEL_HEIGHT;
  const kind = tags['building'] ?? tags['building:part'] ?? 'yes';
  const fromDefault = base + LEVEL_HEIGHT * (LOW.has(kind) || base > 0 ? 1 : LEVELS);
  const top = height ?? fromLevels ?? fromDefault;
  if (top - base < LEAST_HEIGHT) return null;
  return {
    base,
    top,
    roofIncluded: height !== null,
    roofHeight: taggedLength(tags, 'roof:height') ?? fromRoofLevels,
    by: height !== null ? 'height' : fromLevels !== null ? 'levels' : 'default',
    got: {
      base: minHeight !== null || minLevel !== null ? 'mapped' : 'guessed',
      top: height !== null || fromLevels !== null ? 'mapped' : 'guessed',
    },
  };
}

const positive = (value: number | null): number | null => (value !== null && value > 0 ? value : null);
