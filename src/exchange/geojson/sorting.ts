import type { Drawn, Feature, Position } from './feature.ts';
import { barrierSort } from './barrier.ts';

/** What a feature is to us. */
export type Role = 'building' | 'part' | 'barrier' | 'tree' | { readonly left: string };

/** One thing to make: a piece of what a feature draws, and the feature. */
export interface Item {
  readonly feature: Feature;
  readonly drawn: Drawn;
  readonly role: 'building' | 'part' | 'barrier' | 'tree';
}

const isYes = (value: string | undefined): boolean =>
  value !== undefined && value !== 'no' && value !== 'false' && value !== '0';

/** Whether tags speak of buildings or barriers at all: a plain footprint file has none. */
export const isTagged = ({ tags }: Feature): boolean =>
  tags['building'] !== undefined || tags['building:part'] !== undefined || tags['barrier'] !== undefined;

/** Whether a feature comes from OpenStreetMap, by its id. */
export const isFromMap = ({ id }: Feature): boolean => id !== null && /^(?:way|relation|node)\/\d+$/.test(id);

/**
 * What one drawn piece of a feature becomes.
 * @param plain the file has no tags that tell buildings: every polygon is a footprint
 */
export function roleOf({ tags }: Feature, drawn: Drawn, plain: boolean): Role {
  if (drawn.kind === 'polygon') {
    if (tags['location'] === 'underground' || tags['layer']?.startsWith('-'))
      return { left: 'left.underground' };
    if (isYes(tags['building'])) return 'building';
    if (isYes(tags['building:part'])) return 'part';
    if (tags['barrier'] !== undefined) return barrierSort(tags) ? 'barrier' : { left: 'left.lowBarrier' };
    return plain ? 'building' : { left: 'left.polygon' };
  }
  if (drawn.kind === 'line') {
    if (tags['barrier'] !== undefined) return barrierSort(tags) ? 'barrier' : { left: 'left.lowBarrier' };
    return { left: tags['natural'] === 'tree_row' ? 'left.treeRow' : 'left.line' };
  }
  if (tags['natural'] === 'tree') return 'tree';
  if (tags['barrier'] === 'gate') return { left: 'left.gate' };
  return { left: tags['barrier'] === undefined ? 'left.point' : 'left.lowBarrier' };
}

/** Every position that a piece draws. */
export function positionsOf(drawn: Drawn): readonly Position[] {
  if (drawn.kind === 'point') return [drawn.at];
  return drawn.kind === 'line' ? drawn.line : drawn.rings.flat();
}

/** What a person would call a feature: its name, its address, or what it is and its number in the file. */
export const nameOf = ({ tags }: Feature, sort: string, number: number): string =>
  ownName(tags) ?? `${sort} ${number}`;

/** Whether a feature has a name or an address of its own. */
export const isNamed = ({ tags }: Feature): boolean => ownName(tags) !== undefined;

function ownName(tags: Feature['tags']): string | undefined {
  const street = tags['addr:street'];
  const house = tags['addr:housenumber'];
  const address =
    house === undefined ? undefined : street === undefined ? `No. ${house}` : `${house} ${street}`;
  return tags['name'] ?? tags['addr:housename'] ?? address;
}
