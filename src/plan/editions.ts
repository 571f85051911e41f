import bands from '../../shared/tables/bands.json';
import type { Edition } from '../coverage/band.ts';

/** Editions of the standard that a plan can be judged by; sources stand in the table. */
export const editions: readonly Edition[] = bands.editions.map((edition) => ({
  key: edition.key,
  name: edition.name,
  bands: edition.bands,
}));

/** The edition of a key; undefined where the table has none. */
export const findEdition = (key: string): Edition | undefined =>
  editions.find((edition) => edition.key === key);

/**
 * The edition that a plan chose.
 * @throws RangeError on a key that the table lacks: `checkPlan` refuses such a plan at the door
 */
export function editionOf(key: string): Edition {
  const edition = findEdition(key);
  if (!edition)
    throw new RangeError(`no edition ${key}; the table has ${editions.map((e) => e.key).join(', ')}`);
  return edition;
}
