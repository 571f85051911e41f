import { cameraSchema } from './cameraSchema.ts';
import { LIMITS } from './limits.ts';
import { PLAN_VERSION } from './plan.ts';
import { credit, id, key, name, number, ring, vec2 } from './schemaParts.ts';
import { ground, group, lamp, patch, picture } from './siteSchema.ts';
import { structureSchema } from './structureSchema.ts';
import { z } from './zod.ts';

const order = z.array(id);

const boundary = ring.nullable();

const requirement = z
  .strictObject({
    id,
    name,
    shape: z.enum(['point', 'line', 'area', 'approach']),
    at: z.array(vec2).min(1, 'line.short'),
    targetHeight: number({ least: 0, most: LIMITS.height.most }, 'm above local ground'),
    target: z.enum(['ground', 'plate', 'face', 'height']),
    band: z.string().min(1, 'name.empty').max(64, 'name.long'),
    looks: z
      .discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('bearing'), bearing: number(LIMITS.bearing, '°') }),
        z.strictObject({ kind: z.literal('place'), at: vec2 }),
        z.strictObject({ kind: z.literal('along') }),
      ])
      .nullable()
      .describe('Which way the face looks; null: any way'),
  })
  .meta({ id: 'requirement' });

const leaf = z.enum(['closed', 'open', 'glazed']);

const situation = z
  .strictObject({
    id,
    name,
    night: z.boolean(),
    away: z.array(id).describe('Structures that are away'),
    leaves: z.record(id, leaf).describe('Openings whose leaf differs from the drawing, by id'),
    treesInLeaf: z.boolean().nullable().describe('Trees and hedges; null: each as it is drawn'),
  })
  .meta({ id: 'situation' });

const faceLimit = z.strictObject({
  above: number(LIMITS.steep, 'Greatest angle from above, °'),
  side: number(LIMITS.angle, 'Greatest angle from the side, °'),
});

const settings = z
  .strictObject({
    edition: z.string().min(1, 'name.empty').max(64, 'name.long'),
    units: z.enum(['metres', 'millimetres', 'feet']).describe('Of display only; the file is in metres'),
    stature: number(LIMITS.stature, 'm'),
    walkingSpeed: number(LIMITS.walkingSpeed, 'm/s'),
    faceHeight: number(LIMITS.stature, 'm'),
    plateHeight: number({ least: 0, most: LIMITS.stature.most }, 'm'),
    faceLimits: z.strictObject({ identify: faceLimit, recognise: faceLimit }),
    tolerances: z.strictObject({
      pan: number(LIMITS.angle, '°'),
      tilt: number(LIMITS.steep, '°'),
      place: number(LIMITS.place, 'm'),
      focalLengthPercent: number(LIMITS.percent),
    }),
    leastLux: number(LIMITS.lux, 'Least light that counts as lit, lx'),
    screenClosing: number(LIMITS.steep, 'Mesh seen at less than this angle to its face closes up, °'),
    cautions: z
      .record(key, number(LIMITS.threshold))
      .describe('Thresholds of cautions that differ from the default, by id'),
  })
  .meta({ id: 'settings' });

/** What each record of the plan must be by itself. */
export const recordSchemas = {
  structures: structureSchema,
  cameras: cameraSchema,
  patches: patch,
  lamps: lamp,
  requirements: requirement,
  situations: situation,
  groups: group,
  pictures: picture,
} as const;

/** And each field that can be drawn or typed. */
export const fieldSchemas = { boundary, ground, settings, name } as const;

/** The plan file of the present version, shapes only; `planCheck` holds what one part says of another. */
export const planSchema = z
  .strictObject({
    version: z.literal(PLAN_VERSION),
    id,
    name,
    origin: z
      .strictObject({
        latitude: number(LIMITS.latitude, '° north'),
        longitude: number(LIMITS.longitude, '° east'),
        trueNorth: number(LIMITS.bearing, 'Bearing of +y from true north, °'),
      })
      .nullable()
      .describe('Where the origin of the site frame lies on Earth; null: nowhere'),
    ground,
    boundary,
    structures: z.record(id, recordSchemas.structures),
    structureOrder: order,
    cameras: z.record(id, recordSchemas.cameras),
    cameraOrder: order,
    patches: z.record(id, recordSchemas.patches),
    patchOrder: order,
    lamps: z.record(id, recordSchemas.lamps),
    lampOrder: order,
    requirements: z.record(id, recordSchemas.requirements),
    requirementOrder: order,
    situations: z.record(id, recordSchemas.situations),
    situationOrder: order,
    groups: z.record(id, recordSchemas.groups),
    groupOrder: order,
    pictures: z.record(id, recordSchemas.pictures),
    pictureOrder: order,
    settings,
    credits: z.array(credit).describe('Attribution of imported data, shown and printed with the plan'),
  })
  .meta({
    title: 'Soffit plan',
    description:
      'Site frame: x east, y north, z up, metres. Angles are degrees; lens and sensor millimetres.',
  });

/** The published JSON Schema of the plan file, as data. */
export const planJsonSchema = (): unknown => z.toJSONSchema(planSchema, { target: 'draft-2020-12' });
