import type { Vec2 } from '../../base/vector.ts';
import type { Tree } from '../../model/structure.ts';
import { taggedLength, type Tags } from './tags.ts';

/** A tree that is mapped as a point and no more: m. Common practice for a street tree, no source. */
const HEIGHT = 8;
const CROWN_RADIUS = 2.5;
const TRUNK = 0.3;

/** A single tree at a point in the site frame, m; in leaf, as a plan is drawn. */
export function treeOf(at: Vec2, tags: Tags, id: string, name: string): Tree {
  const height = inside(taggedLength(tags, 'height'), 1, 120);
  const crown = inside(taggedLength(tags, 'diameter_crown'), 0.2, 60);
  const around = inside(taggedLength(tags, 'circumference'), 0.05, 30);
  const tall = height ?? HEIGHT;
  return {
    kind: 'tree',
    id,
    name,
    hidden: false,
    locked: false,
    at,
    base: 0,
    height: tall,
    crownRadius: crown === null ? Math.min(CROWN_RADIUS, tall * 0.4) : crown / 2,
    // The crown begins at a quarter of the height, at a person's reach at most.
    clear: Math.min(2, tall / 4),
    trunkDiameter: around === null ? TRUNK : around / Math.PI,
    inLeaf: true,
    got: {
      at: 'mapped',
      height: height === null ? 'guessed' : 'mapped',
      crown: crown === null ? 'guessed' : 'mapped',
    },
  };
}

const inside = (value: number | null, least: number, most: number): number | null =>
  value !== null && value >= least && value <= most ? value : null;
