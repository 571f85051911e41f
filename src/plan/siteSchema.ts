import { GROUND_CELLS, LIMITS } from './limits.ts';
import { got, id, name, number, ring, vec2, vec3, whole } from './schemaParts.ts';
import { z } from './zod.ts';

const level = number(LIMITS.level, 'm above z = 0');

/** Ground: one height, spot heights, or square cells. */
export const ground = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('flat'), height: level }),
    z.strictObject({
      kind: z.literal('spots'),
      spots: z.array(z.strictObject({ at: vec2, height: level, got })).min(1, 'spots.few'),
    }),
    z.strictObject({
      kind: z.literal('grid'),
      left: number(LIMITS.coordinate, 'West edge, m'),
      bottom: number(LIMITS.coordinate, 'South edge, m'),
      cell: number(LIMITS.cell, 'Side of a cell, m'),
      columns: whole({ least: 1, most: GROUND_CELLS }),
      rows: whole({ least: 1, most: GROUND_CELLS }),
      heights: z
        .array(level.nullable())
        .max(GROUND_CELLS)
        .describe('At the centres of cells, row by row from the south, each from the west; null: unknown'),
      got,
    }),
  ])
  .meta({ id: 'ground' });

export const patch = z
  .strictObject({
    id,
    name,
    outline: ring,
    base: number(LIMITS.level, 'Height of the plane at the first corner, m above z = 0'),
    pitch: number(LIMITS.pitch, '°'),
    rises: number(LIMITS.bearing, 'Bearing towards which it rises, °'),
    got,
  })
  .meta({ id: 'patch' });

const photometry = z
  .strictObject({
    verticals: z.array(number(LIMITS.vertical)).min(1).describe('° from straight down, rising'),
    horizontals: z.array(number(LIMITS.horizontal)).min(1).describe('° from the C0 plane, rising'),
    candela: z.array(z.array(number(LIMITS.candela))).describe('By horizontal, then by vertical'),
  })
  .meta({ id: 'photometry' });

const light = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('range'), range: number(LIMITS.range, 'How far it serves, m') }),
  z.strictObject({
    kind: z.literal('photometric'),
    source: name.describe('File that it came from'),
    turn: number(LIMITS.bearing, 'Bearing of the C0 plane, °'),
    photometry,
  }),
]);

export const lamp = z
  .strictObject({
    id,
    name,
    at: vec2,
    height: number(LIMITS.height, 'm above the ground'),
    light,
    got,
  })
  .meta({ id: 'lamp' });

export const group = z
  .strictObject({
    id,
    name,
    members: z.array(id).min(1, 'group.empty').describe('Structures, cameras and lamps'),
  })
  .meta({ id: 'group' });

const pictureFile = z
  .strictObject({
    sha: z
      .string()
      .regex(/^[0-9a-f]{64}$/, 'picture.sha')
      .describe('SHA-256 of its bytes'),
    type: z.enum(['image/png', 'image/jpeg', 'image/webp']),
    width: whole(LIMITS.picturePixels),
    height: whole(LIMITS.picturePixels),
  })
  .meta({ id: 'pictureFile' });

const pixel = number(LIMITS.picturePoint);
const picturePoint = z.tuple([pixel, pixel]).meta({
  id: 'picturePoint',
  description: 'Pixels right of and below the top left outer corner',
});

const pictureUse = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('site'),
    at: vec2.describe("Place of the picture's top left outer corner"),
    metresPerPixel: number(LIMITS.metresPerPixel, 'Null: it has no scale yet').nullable(),
    turn: number(LIMITS.bearing, "Bearing of the picture's up, °"),
    strength: number({ least: 0, most: 1 }, 'How strongly it shows'),
  }),
  z.strictObject({
    kind: z.literal('wall'),
    structure: id,
    face: whole({ least: 0, most: 100_000 }),
    corners: z
      .tuple([picturePoint, picturePoint, picturePoint, picturePoint])
      .describe('Lower left, lower right, upper right, upper left, seen from outside'),
    along: number(LIMITS.across, 'Nearer side, from the first corner of the face, m'),
    sill: number(LIMITS.level, 'Foot above the base, m'),
    width: number(LIMITS.size, 'm'),
    height: number(LIMITS.height, 'm'),
    strength: number({ least: 0, most: 1 }, 'How strongly it shows').default(1),
  }),
  z.strictObject({
    kind: z.literal('photo'),
    at: vec3,
    heading: number(LIMITS.bearing, 'The way that it looks, °; null: not known').nullable(),
  }),
]);

export const picture = z
  .strictObject({ id, name, file: pictureFile, hidden: z.boolean(), locked: z.boolean(), use: pictureUse })
  .meta({ id: 'picture' });
