import { screenOf, tint } from './shapes.ts';
import type { Sampled } from './sampled.ts';
import { blurred } from './spread.ts';

/** A small picture, red, green, blue, opaque, a byte each; rows from above. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** How many pixels of the camera each one stands for, each way. */
  readonly step: number;
  readonly bytes: Uint8ClampedArray<ArrayBuffer>;
}

/** What lights a target at night: the camera's own infrared, so far off in shares of its stated range, or lamps; null: nothing. */
export type NightLight =
  | { readonly kind: 'infrared'; readonly share: number }
  | { readonly kind: 'lamp' }
  | null;

/*
 * How bright and how grainy a picture is at night has no formula that fits all cameras. What follows is common practice, no
 * source: 1/25 s at half the stated range of infrared makes a fair picture with grain of about ± 15 of 255; light falls with
 * the square of distance and with exposure; a camera lifts what is too dark up to fourfold, and its grain with it.
 */
const [USUAL, HALF_RANGE, LIFT] = [40, 0.5, 4];
const GRAIN = 15 / 255;
/** Blur of lens and sensor by day and at night, px. */
const [DAY_BLUR, NIGHT_BLUR] = [0.55, 0.75];
const DAY_GRAIN = 1.5 / 255;
/** Plates throw infrared back to the camera; so many times as much as white paper (common practice, no source). */
const RETRO = 25;
/** Share of what is too bright that spreads over the plate. */
const VEIL = 0.03;
/** What of a picture in which nothing is lit still shows. */
const DARK = { brightness: 0.004, grain: 5 / 255 };

const WALL = tint('#CFC6B4');
const WALL_AT_NIGHT = 0.12;

/** How a camera gets on with the light of a night: shares of a fair picture's brightness and grain. */
export interface NightLook {
  readonly brightness: number;
  readonly grain: number;
}

/** @param exposure ms */
export function nightLook(light: NightLight, exposure: number): NightLook {
  if (light === null) return DARK;
  const near = light.kind === 'infrared' ? Math.max(0.05, light.share) : HALF_RANGE;
  const level = (exposure / USUAL) * (HALF_RANGE / near) ** 2;
  return { brightness: Math.min(1, LIFT * level), grain: GRAIN * Math.min(LIFT, Math.max(0.6, 1 / level)) };
}

/** By day, as it is sampled. */
export function dayPicture(sampled: Sampled): Picture {
  const { width, height, cover, day } = sampled;
  const light = new Float32Array(day.length);
  for (let at = 0; at < cover.length; at += 1) {
    const beside = 1 - (cover[at] ?? 0);
    light[3 * at] = (day[3 * at] ?? 0) + beside * WALL.red;
    light[3 * at + 1] = (day[3 * at + 1] ?? 0) + beside * WALL.green;
    light[3 * at + 2] = (day[3 * at + 2] ?? 0) + beside * WALL.blue;
  }
  const soft = blurred(light, width, height, 3, DAY_BLUR);
  return printed(
    sampled,
    (pixel, part) => screenOf(clipped(soft[3 * pixel + part] ?? 0)) + DAY_GRAIN * grainAt(pixel, part),
  );
}

/**
 * At night, in grey: lit by infrared or a lamp, or not at all.
 * @param retroreflects throws infrared back to where it comes from, as plates do
 */
export function nightPicture(
  sampled: Sampled,
  light: NightLight,
  exposure: number,
  retroreflects: boolean,
): Picture {
  const { width, height, cover, day, infrared } = sampled;
  const { brightness, grain } = nightLook(light, exposure);
  const isThrownBack = retroreflects && light?.kind === 'infrared';
  const grey = new Float32Array(cover.length);
  let [sum, filled] = [0, 0];
  for (let at = 0; at < cover.length; at += 1) {
    const [red, green, blue] = [day[3 * at] ?? 0, day[3 * at + 1] ?? 0, day[3 * at + 2] ?? 0];
    const seen =
      light?.kind === 'infrared' ? (infrared[at] ?? 0) : 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    const own = brightness * seen * (isThrownBack ? RETRO : 1);
    sum += own;
    filled += cover[at] ?? 0;
    grey[at] = own + (1 - (cover[at] ?? 0)) * brightness * WALL_AT_NIGHT;
  }
  const veil = isThrownBack && filled > 0 ? VEIL * Math.max(0, sum / filled - 1) : 0;
  const soft = blurred(grey, width, height, 1, NIGHT_BLUR);
  return printed(
    sampled,
    (pixel) => screenOf(clipped((soft[pixel] ?? 0) + veil * (cover[pixel] ?? 0))) + grain * grainAt(pixel, 0),
  );
}

/**
 * How much darker than their plate characters are at night, as a share of black against white on a screen, before pixels
 * and movement take their part.
 */
export function plateContrast(light: NightLight, exposure: number): number {
  const { brightness } = nightLook(light, exposure);
  const factor = brightness * (light?.kind === 'infrared' ? RETRO : 1);
  const [paper, print] = [0.8 * factor, 0.02 * factor];
  const veil = light?.kind === 'infrared' ? VEIL * Math.max(0, 0.7 * paper - 1) : 0;
  return screenOf(clipped(paper + veil)) - screenOf(clipped(print + veil));
}

const clipped = (light: number): number => Math.min(1, Math.max(0, light));

/** The picture without its margin, from a value in [0, 1] a pixel and part. */
function printed(
  { width, height, margin, step }: Sampled,
  value: (pixel: number, part: number) => number,
): Picture {
  const [wide, high] = [width - 2 * margin, height - 2 * margin];
  const bytes = new Uint8ClampedArray(4 * wide * high);
  for (let row = 0; row < high; row += 1)
    for (let column = 0; column < wide; column += 1) {
      const [from, to] = [(row + margin) * width + column + margin, 4 * (row * wide + column)];
      for (let part = 0; part < 3; part += 1) bytes[to + part] = 255 * value(from, part);
      bytes[to + 3] = 255;
    }
  return { width: wide, height: high, step, bytes };
}

/** Looks like chance and is the same in every picture: about −2 to 2, its mean square 1. */
function grainAt(pixel: number, part: number): number {
  let sum = 0;
  for (let at = 0; at < 3; at += 1) sum += hashed(pixel * 13 + part * 5 + at * 7919) - 0.5;
  return 2 * sum;
}

function hashed(n: number): number {
  let mixed = Math.imul((n + 0x9e3779b9) | 0, 0x21f0aaad);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
  return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
}

/** Turned clockwise by quarters, so that what hangs upright is upright. */
export function turnedBy({ width, height, step, bytes }: Picture, quarters: number): Picture {
  const turns = ((quarters % 4) + 4) % 4;
  if (turns === 0) return { width, height, step, bytes };
  const out = new Uint8ClampedArray(bytes.length);
  for (let row = 0; row < height; row += 1)
    for (let column = 0; column < width; column += 1) {
      // One quarter: the left column becomes the top row.
      const to = 4 * (column * height + height - 1 - row);
      const from = 4 * (row * width + column);
      for (let part = 0; part < 4; part += 1) out[to + part] = bytes[from + part] ?? 0;
    }
  return turnedBy({ width: height, height: width, step, bytes: out }, turns - 1);
}
