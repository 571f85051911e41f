import { readFileSync } from 'node:fs';
import type { Outcome } from '../../src/base/fault.ts';
import { importGeojson, type Imported } from '../../src/exchange/geojson/importGeojson.ts';
import { openFile, type Opened } from '../../src/exchange/openFile.ts';

/** Runs a job in steps to its end. */
export function finish<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

export const openText = (text: string, name = 'map.geojson'): Outcome<Opened> =>
  finish(openFile(name, new TextEncoder().encode(text)));

export const openPath = (path: string): Outcome<Opened> => finish(openFile(path, readFileSync(path)));

/** Metres about a place in the tropics of nowhere in particular, turned into degrees by the radius of a sphere. */
export const at = (x: number, y: number): [number, number] => [20 + x / 111_319.49, y / 110_574.28];

export const square = (x: number, y: number, side: number): [number, number][] => [
  at(x, y),
  at(x + side, y),
  at(x + side, y + side),
  at(x, y + side),
  at(x, y),
];

export const feature = (
  geometry: unknown,
  properties: Record<string, unknown> = { building: 'yes' },
  id?: string,
) => ({
  type: 'Feature',
  properties,
  geometry,
  ...(id === undefined ? {} : { id }),
});

export const polygon = (rings: unknown, properties?: Record<string, unknown>, id?: string) =>
  feature({ type: 'Polygon', coordinates: rings }, properties, id);

export const collection = (...features: unknown[]) => ({ type: 'FeatureCollection', features });

export const imported = (...features: unknown[]): Outcome<Imported> =>
  finish(importGeojson(collection(...features)));

/** What was imported, which must have succeeded. */
export function found(
  ...features: unknown[]
): Imported & { readonly notes: readonly { code: string; subject?: string | undefined }[] } {
  const outcome = imported(...features);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return { ...outcome.value, notes: outcome.notes };
}
