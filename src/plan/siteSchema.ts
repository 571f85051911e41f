import { GROUND_CELLS, LIMITS } from './limits.ts';
import { got, id, name, number, ring, vec2, whole } from './schemaParts.ts';
import { z } from './zod.ts';

const level = number(LIMITS.level, 'm above z = 0');

/** Ground: one height, spot heights, or square cells. */
export const ground = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('flat'), height: level }),
    z.strictObject({
      kind: z.literal('spots'),
      spots: z.array(z.strictObject({ at: vec2, height: level, got })).min(3, 'spots.few'),
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
