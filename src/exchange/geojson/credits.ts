import { cleanName } from '../../plan/commands/renameThing.ts';

/** What OpenStreetMap asks to be printed with its data. Source: openstreetmap.org/copyright. */
export const MAP_CREDIT = '© OpenStreetMap contributors, ODbL 1.0 (openstreetmap.org/copyright)';

/**
 * Whom to credit for a file: what its head says, else the map that the ids of its features come from.
 * @param head the collection without its features
 */
export function creditsOf(head: Readonly<Record<string, unknown>>, fromMap: boolean): readonly string[] {
  const said = ['attribution', 'copyright', 'licence', 'license'].flatMap((key) => {
    const value = head[key];
    const text = typeof value === 'string' ? cleanName(value) : '';
    return text === '' ? [] : [text];
  });
  return fromMap ? [MAP_CREDIT, ...said.filter((line) => !/openstreetmap/i.test(line))] : said;
}
