import { LIMITS } from './limits.ts';
import { got, id, name, number, passage, ring, vec2, whole } from './schemaParts.ts';
import { z } from './zod.ts';

const named = { id, name, hidden: z.boolean(), locked: z.boolean() };

const opening = z
  .strictObject({
    id,
    name,
    kind: z.enum(['door', 'window', 'gate', 'archway']),
    face: whole({ least: 0, most: 100_000 }).describe('The edge from this corner to the next'),
    along: number({ least: 0, most: LIMITS.size.most }, 'Nearer jamb, from the first corner of the face, m'),
    width: number(LIMITS.size, 'm'),
    height: number(LIMITS.height, 'm'),
    sill: number({ least: 0, most: LIMITS.height.most }, 'Foot above the base, m'),
    setBack: number(LIMITS.setBack, 'Depth of the recess on a block, m'),
    leaf: z.enum(['closed', 'open', 'glazed']),
    passage,
    got,
  })
  .meta({ id: 'opening' });

const openings = z.array(opening);

const service = z
  .strictObject({
    id,
    name,
    kind: z.enum(['socket', 'switch', 'light', 'tap', 'meter', 'flue']),
    face: whole({ least: 0, most: 100_000 }).describe('The edge from this corner to the next'),
    along: number({ least: 0, most: LIMITS.size.most }, 'From the first corner of the face, m'),
    height: number({ least: 0, most: LIMITS.height.most }, 'Above the base, m'),
    inside: z.boolean().describe('On the inner side of the wall'),
    got,
  })
  .meta({ id: 'service' });

const floor = z
  .strictObject({
    name,
    level: number(LIMITS.level, 'Upper side of the floor above the base, m'),
    ceiling: number(LIMITS.height, 'Ceiling above the floor, m'),
  })
  .meta({ id: 'floor' });

const roof = z
  .strictObject({
    kind: z.enum(['flat', 'parapet', 'monopitch', 'gable', 'hip']),
    pitch: number(LIMITS.pitch, '°'),
    overhang: number(LIMITS.overhang, 'm'),
    ridge: number(LIMITS.bearing, 'Bearing of the ridge, or towards which a mono-pitch falls, °').nullable(),
    parapet: number(LIMITS.parapet, 'Upstand, m'),
  })
  .meta({ id: 'roof' });

const building = z
  .strictObject({
    kind: z.literal('building'),
    ...named,
    outline: ring,
    holes: z.array(ring),
    base: number(LIMITS.level, 'm above z = 0'),
    height: number(LIMITS.height, 'Wall top above base, m: the soffit'),
    roof,
    wallThickness: number(LIMITS.thickness, 'm; null is one block').nullable(),
    openings,
    services: z.array(service),
    floors: z.array(floor),
    yearBuilt: whole(LIMITS.year).nullable(),
    got: z.strictObject({ outline: got, base: got, height: got, roof: got }),
  })
  .meta({ id: 'building' });

const barrier = z
  .strictObject({
    kind: z.literal('barrier'),
    sort: z.enum(['wall', 'fence', 'hedge']),
    ...named,
    line: z.array(vec2).min(2, 'line.short'),
    closed: z.boolean(),
    base: number(LIMITS.level, 'm above z = 0'),
    height: number(LIMITS.height, 'm'),
    thickness: number(LIMITS.thickness, 'm'),
    passage,
    openings,
    got: z.strictObject({ line: got, height: got, thickness: got }),
  })
  .meta({ id: 'barrier' });

const canopy = z
  .strictObject({
    kind: z.literal('canopy'),
    ...named,
    outline: ring,
    top: number(LIMITS.height, 'Upper side above z = 0, m'),
    thickness: number(LIMITS.thickness, 'm'),
    posts: whole(LIMITS.posts),
    got: z.strictObject({ outline: got, top: got, thickness: got }),
  })
  .meta({ id: 'canopy' });

const tree = z
  .strictObject({
    kind: z.literal('tree'),
    ...named,
    at: vec2,
    base: number(LIMITS.level, 'm above z = 0'),
    height: number(LIMITS.height, 'm'),
    crownRadius: number({ least: 0.01, most: 50 }, 'm'),
    clear: number({ least: 0, most: LIMITS.height.most }, 'Height at which the crown begins, m'),
    trunkDiameter: number({ least: 0.01, most: 20 }, 'm'),
    inLeaf: z.boolean(),
    got: z.strictObject({ at: got, height: got, crown: got }),
  })
  .meta({ id: 'tree' });

const vehicle = z
  .strictObject({
    kind: z.literal('vehicle'),
    sort: z.enum(['car', 'van']),
    ...named,
    at: vec2,
    heading: number(LIMITS.bearing, 'Bearing of its front, °'),
    base: number(LIMITS.level, 'm above z = 0'),
    length: number({ least: 0.1, most: 50 }, 'm'),
    width: number({ least: 0.1, most: 20 }, 'm'),
    height: number({ least: 0.1, most: 20 }, 'm'),
    got: z.strictObject({ at: got, size: got }),
  })
  .meta({ id: 'vehicle' });

const block = z
  .strictObject({
    kind: z.literal('block'),
    ...named,
    outline: ring,
    base: number(LIMITS.level, 'm above z = 0'),
    height: number(LIMITS.height, 'm'),
    passage,
    got: z.strictObject({ outline: got, base: got, height: got }),
  })
  .meta({ id: 'block' });

/** Anything that can block a view; the shapes are those of `model/structure.ts`. */
export const structureSchema = z
  .discriminatedUnion('kind', [building, barrier, canopy, tree, vehicle, block])
  .meta({ id: 'structure' });
