import { z } from '../../plan/zod.ts';

/** Longitude and latitude in degrees; what follows them (a height) is not read. RFC 7946, section 3.1.1. */
export type Position = readonly [longitude: number, latitude: number];

export type Rings = readonly (readonly Position[])[];

/** What a feature draws, multi-geometries taken apart. */
export type Drawn =
  | { readonly kind: 'polygon'; readonly rings: Rings }
  | { readonly kind: 'line'; readonly line: readonly Position[] }
  | { readonly kind: 'point'; readonly at: Position };

export interface Feature {
  /** As the file gives it: "way/123"; null where it gives none. */
  readonly id: string | null;
  readonly tags: Readonly<Record<string, string>>;
  readonly drawn: readonly Drawn[];
}

const position = z
  .array(z.number())
  .min(2)
  .transform(([longitude = 0, latitude = 0]): Position => [longitude, latitude]);
const line = z.array(position);
const rings = z.array(line);

const geometry = z.discriminatedUnion('type', [
  z.object({ type: z.literal('Point'), coordinates: position }),
  z.object({ type: z.literal('MultiPoint'), coordinates: z.array(position) }),
  z.object({ type: z.literal('LineString'), coordinates: line }),
  z.object({ type: z.literal('MultiLineString'), coordinates: z.array(line) }),
  z.object({ type: z.literal('Polygon'), coordinates: rings }),
  z.object({ type: z.literal('MultiPolygon'), coordinates: z.array(rings) }),
]);

const feature = z.object({
  type: z.literal('Feature'),
  id: z.union([z.string(), z.number()]).optional().catch(undefined),
  properties: z.record(z.string(), z.unknown()).nullish().catch(null),
  geometry: geometry.nullable(),
});

/** One feature of a collection; null where it is not one that can be read. */
export function readFeature(value: unknown): Feature | null {
  const parsed = feature.safeParse(value);
  if (!parsed.success) return null;
  const { properties, geometry: shape } = parsed.data;
  const tags = flatTags(properties ?? {});
  const id = parsed.data.id ?? tags['@id'] ?? tags['id'];
  return { id: id === undefined ? null : String(id), tags, drawn: shape === null ? [] : partsOf(shape) };
}

/** Properties that are text or numbers; some writers put an element's tags one level down. */
function flatTags(properties: Readonly<Record<string, unknown>>): Readonly<Record<string, string>> {
  const inner: unknown = properties['tags'];
  const all = typeof inner === 'object' && inner !== null ? { ...properties, ...inner } : properties;
  return Object.fromEntries(
    Object.entries(all).flatMap(([key, value]: [string, unknown]) =>
      typeof value === 'string' || typeof value === 'number' ? [[key, String(value)]] : [],
    ),
  );
}

function partsOf(shape: z.output<typeof geometry>): readonly Drawn[] {
  switch (shape.type) {
    case 'Point':
      return [{ kind: 'point', at: shape.coordinates }];
    case 'MultiPoint':
      return shape.coordinates.map((at) => ({ kind: 'point', at }));
    case 'LineString':
      return [{ kind: 'line', line: shape.coordinates }];
    case 'MultiLineString':
      return shape.coordinates.map((one) => ({ kind: 'line', line: one }));
    case 'Polygon':
      return [{ kind: 'polygon', rings: shape.coordinates }];
    case 'MultiPolygon':
      return shape.coordinates.map((one) => ({ kind: 'polygon', rings: one }));
  }
}
