import { LIMITS } from './limits.ts';
import { extent, id, key, name, note, number, vec2, vec3, whole } from './schemaParts.ts';
import { z } from './zod.ts';

const mountingHeight = number(LIMITS.level, 'Lens above the ground directly below, m');
const reach = number(LIMITS.reach, 'm');

const turn = number(LIMITS.turn, '° each way from straight out; null: not known').nullable();

export const limits = z
  .strictObject({
    pan: turn,
    tilt: z
      .strictObject({
        up: number(LIMITS.steep, '° above level'),
        down: number(LIMITS.steep, '° below level'),
      })
      .nullable()
      .describe('Null: not known'),
    roll: turn,
  })
  .meta({ id: 'mountLimits' });

const plate = z
  .strictObject({
    width: number(LIMITS.plate, 'm'),
    height: number(LIMITS.plate, 'm'),
    right: number(LIMITS.plateOffset, 'Its middle from the hole, seen from outside, m'),
    up: number(LIMITS.plateOffset, 'Its middle from the hole, m'),
  })
  .meta({ id: 'plate' });

const hosted = {
  host: id,
  face: whole({ least: 0, most: 100_000 }),
  corner: z.enum(['start', 'end']).describe('The end of the face from which distance is measured'),
  distance: number({ least: 0, most: LIMITS.size.most }, 'Along the face from that corner, m'),
  plate,
  limits,
};

const mount = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('flush'),
      ...hosted,
      height: mountingHeight,
      standOff: number(LIMITS.standOff, 'm'),
    }),
    z.strictObject({ kind: z.literal('arm'), ...hosted, height: mountingHeight, reach, drop: reach }),
    z.strictObject({ kind: z.literal('soffit'), ...hosted, inset: reach, drop: reach }),
    z.strictObject({
      kind: z.literal('pole'),
      at: vec2,
      height: number(LIMITS.height, 'Lens above the ground directly below, m'),
      reach,
      facing: number(LIMITS.bearing, '°'),
      diameter: number(LIMITS.standOff, 'm'),
      limits,
    }),
    z.strictObject({
      kind: z.literal('corner'),
      host: id,
      face: hosted.face,
      height: mountingHeight,
      reach,
      plate,
      limits,
    }),
    z.strictObject({ kind: z.literal('loose'), eye: vec3 }),
  ])
  .meta({ id: 'mount' });

const share = number({ least: 0, most: 1 });

const mode = z
  .strictObject({
    id,
    name,
    use: z.enum(['recorded', 'live', 'rotated', 'stabilised', 'other']),
    frame: z
      .strictObject({ width: whole(LIMITS.pixels), height: whole(LIMITS.pixels) })
      .describe('Pixels across and down'),
    crop: z
      .strictObject({
        x: share,
        y: share,
        width: number({ least: 0.001, most: 1 }),
        height: number({ least: 0.001, most: 1 }),
      })
      .describe('Part of the sensor, in shares of its width and height'),
    cropKnown: z.boolean().describe('Whether the crop is known; else it may differ'),
  })
  .meta({ id: 'mode' });

const stated = number(LIMITS.angleOfView, '°');

const statedAngles = z.strictObject({ atShortest: stated, atLongest: stated }).nullable();

const lens = z
  .strictObject({
    shortest: number(LIMITS.focalLength, 'mm'),
    longest: number(LIMITS.focalLength, 'mm'),
    focalLength: number(LIMITS.focalLength, 'Present setting, mm'),
    statedHfov: statedAngles.describe(
      'Horizontal angles of view that the data sheet prints; null: none, the lens is rectilinear',
    ),
    statedVfov: statedAngles.describe('The vertical ones, held against what follows from the others'),
    statedIn: id
      .nullable()
      .describe('Picture mode for which these angles are printed; null: the whole sensor'),
    fNumber: number(LIMITS.fNumber).nullable(),
    law: z.exactOptional(number(LIMITS.law, 'Lens law k, where it is known itself')),
  })
  .meta({ id: 'lens' });

export const device = z
  .strictObject({
    sensor: extent(LIMITS.sensor, 'Active area, mm'),
    modes: z.array(mode).min(1, 'modes.none'),
    recorded: id.describe('The mode that is recorded; bands are judged in it'),
    lens,
  })
  .meta({ id: 'device' });

export const sheet = z
  .strictObject({
    name: name.nullable().describe('What the device is called'),
    minimumIllumination: number(LIMITS.sensitivity, 'lx').nullable(),
    imagesPerSecond: number(LIMITS.imagesPerSecond).nullable(),
    bitRate: number(LIMITS.bitRate, 'Mbit/s').nullable(),
    powerClass: whole(LIMITS.powerClass).nullable(),
    focusDistance: number(LIMITS.focusDistance, 'What the lens is focused on, m').nullable(),
  })
  .describe('What else its data sheet tells; null: not known')
  .meta({ id: 'dataSheet' });

const card = z
  .strictObject({
    ticked: z.array(key).describe('Cautions marked stop that a person has looked at'),
    asBuilt: z.record(key, note).describe('How it was built, by field'),
  })
  .meta({ id: 'cardNotes' });

export const housing = z.enum(['turret', 'dome', 'bullet', 'box', 'tube', 'panTiltZoom']).nullable();

export const infrared = z
  .strictObject({
    range: number(LIMITS.range, 'm'),
    beam: number(LIMITS.beam, 'Full angle about the axis, °'),
  })
  .nullable();

export const exposure = z
  .strictObject({ day: number(LIMITS.exposure, 'ms'), night: number(LIMITS.exposure, 'ms') })
  .nullable();

/** A camera as the person set it; the shapes are those of `plan/plan.ts` and of `optics`. */
export const cameraSchema = z
  .strictObject({
    id,
    name,
    mount,
    pan: number(LIMITS.bearing, 'Bearing of the axis, °'),
    tilt: number(LIMITS.tilt, 'Axis below horizontal, °'),
    roll: number(LIMITS.roll, 'Clockwise seen from behind, °'),
    device,
    housing: housing.describe('Null: not known'),
    sheet,
    range: number(LIMITS.range, 'm'),
    infrared: infrared.describe('Its own light; null: none'),
    exposure,
    card,
    hidden: z.boolean(),
    locked: z.boolean(),
  })
  .meta({ id: 'camera' });
