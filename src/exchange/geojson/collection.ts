import { accept, refuse, type Outcome } from '../../base/fault.ts';

/** The features of a document, unread, and what stands beside them. */
export interface Collection {
  readonly features: readonly unknown[];
  readonly head: Readonly<Record<string, unknown>>;
}

/** Whether parsed JSON says that it is GeoJSON. */
export const isGeojson = (document: unknown): boolean =>
  isRecord(document) && typeof document['type'] === 'string' && GEOJSON.has(document['type']);

const GEOJSON = new Set(
  'FeatureCollection Feature GeometryCollection Point MultiPoint LineString MultiLineString Polygon MultiPolygon'.split(
    ' ',
  ),
);

/** The collection in parsed GeoJSON; a lone feature or geometry is a collection of one. */
export function collectionOf(document: unknown): Outcome<Collection> {
  if (!isRecord(document) || !isGeojson(document))
    return refuse({
      code: 'file.unknown',
      path: ['type'],
      given: isRecord(document) ? String(document['type']) : undefined,
    });
  const { features, ...head } = document;
  const crs = foreignCrs(head['crs']);
  if (crs !== null)
    return refuse({ code: 'geojson.crs', path: ['crs'], given: crs, allowed: 'longitude and latitude' });
  if (document['type'] === 'Feature') return accept({ features: [document], head: {} });
  if (document['type'] !== 'FeatureCollection')
    return accept({ features: [{ type: 'Feature', properties: {}, geometry: document }], head: {} });
  if (!Array.isArray(features))
    return refuse({ code: 'value.missing', path: ['features'], allowed: 'a list of features' });
  return features.length === 0
    ? refuse({ code: 'geojson.empty', path: ['features'] })
    : accept({ features, head });
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The name of a coordinate system other than longitude and latitude on WGS 84; older files may carry one. */
function foreignCrs(crs: unknown): string | null {
  const properties = isRecord(crs) ? crs['properties'] : undefined;
  const name = isRecord(properties) ? properties['name'] : undefined;
  if (typeof name !== 'string') return null;
  return /CRS84$|EPSG:{1,2}(?:[\d.]*:)?4326$/i.test(name) ? null : name;
}
