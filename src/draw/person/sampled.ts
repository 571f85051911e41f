import { cos, sin } from '../../base/angle.ts';
import { add, cross, scale, subtract, unit, type Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { imageFromSite, siteRayFromImage, type ImagePoint } from '../../optics/projection.ts';
import { tint } from './shapes.ts';
import type { Met, Subject } from './subject.ts';

/** Where a subject stands and which way it looks. */
export interface Stands {
  /** Of its middle, site frame, m. */
  readonly at: Vec3;
  /** Bearing, °. */
  readonly looks: number;
}

/** Light that the pixels of a part of a camera's picture gather, as shares of white; premultiplied by `cover`. */
export interface Sampled {
  readonly width: number;
  readonly height: number;
  /** How many pixels of the camera each one stands for, each way: more than 1 only of what is very near. */
  readonly step: number;
  /** Pixels around the picture proper on each side, for what moves into it. */
  readonly margin: number;
  /** Red, green, blue a pixel, under an even sky. */
  readonly day: Float32Array;
  /** Under infrared from beside the lens. */
  readonly infrared: Float32Array;
  /** Share of the pixel that the subject fills. */
  readonly cover: Float32Array;
}

/** About so many rays are cast for a picture, and no picture is larger than that, px. */
const RAYS = 80_000;
const LARGEST = 150 * 150;

/**
 * What the pixels of a camera's recorded picture gather of a subject: each pixel the mean over its own square, by rays
 * through the lens's own projection on the camera's own grid of pixels.
 * @param spread px by which what moves or blurs may come from beside the picture
 * @returns      null where the lens has no image of it
 */
export function sampled(
  camera: Camera,
  subject: Subject,
  { at, looks }: Stands,
  spread: number,
): Sampled | null {
  const window = windowOf(camera, subject, at);
  if (window === null) return null;
  const step = Math.max(
    1,
    Math.ceil(Math.sqrt(((window.right - window.left) * (window.bottom - window.top)) / LARGEST)),
  );
  const margin = Math.min(60, Math.ceil(spread / step) + 2);
  const left = Math.floor(window.left / step) - margin;
  const top = Math.floor(window.top / step) - margin;
  const width = Math.ceil(window.right / step) + margin - left;
  const height = Math.ceil(window.bottom / step) + margin - top;
  const own = directionsOf(looks);
  const rays = cornerRays(camera, own, { left, top, width, height, step });
  const from = inOwn(own, subtract(camera.eye, at));
  const fine = Math.max(2, Math.min(12, Math.round(Math.sqrt(RAYS / (width * height)))));
  return { width, height, step, margin, ...gathered(subject, from, rays, width, height, fine) };
}

interface Window {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The part of the picture around a subject: the box around its field, held square to the line of sight. */
function windowOf(camera: Camera, { half }: Subject, at: Vec3): Window | null {
  const away = subtract(at, camera.eye);
  if (Math.hypot(...away) < 2 * Math.max(...half)) return null;
  const sight = unit(away);
  const over = Math.hypot(sight[0], sight[1]);
  // Straight below the lens any horizontal does: the picture is about as wide as it is high.
  const right: Vec3 =
    over < 1e-9 ? [cos(camera.pan), -sin(camera.pan), 0] : [sight[1] / over, -sight[0] / over, 0];
  const up = cross(right, sight);
  const corners: ImagePoint[] = [];
  for (const across of [-half[0], half[0]])
    for (const high of [-half[1], half[1]]) {
      const corner = imageFromSite(camera, add(at, add(scale(right, across), scale(up, high))));
      if (corner === null) return null;
      corners.push(corner);
    }
  const us = corners.map(({ u }) => u);
  const vs = corners.map(({ v }) => v);
  return {
    left: Math.min(...us),
    right: Math.max(...us),
    top: Math.min(...vs),
    bottom: Math.max(...vs),
  };
}

/** A subject's own directions: right, ahead; up is up. */
type Own = readonly [right: Vec3, ahead: Vec3];

const directionsOf = (looks: number): Own => [
  [cos(looks), -sin(looks), 0],
  [sin(looks), cos(looks), 0],
];

/** A direction of the site in a subject's own: right, ahead, up. */
const inOwn = ([right, ahead]: Own, way: Vec3): Vec3 => [
  right[0] * way[0] + right[1] * way[1],
  ahead[0] * way[0] + ahead[1] * way[1],
  way[2],
];

/** The way from a subject to a camera in the subject's own directions. */
export const towardsCamera = (camera: Camera, { at, looks }: Stands): Vec3 =>
  inOwn(directionsOf(looks), subtract(camera.eye, at));

interface Grid {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly step: number;
}

/** The rays through the corners of pixels, row by row, in the subject's own directions; not a number beyond the lens. */
function cornerRays(camera: Camera, own: Own, { left, top, width, height, step }: Grid): Float64Array {
  const rays = new Float64Array(3 * (width + 1) * (height + 1));
  let to = 0;
  for (let row = 0; row <= height; row += 1)
    for (let column = 0; column <= width; column += 1) {
      const ray = siteRayFromImage(camera, { u: (left + column) * step, v: (top + row) * step });
      const way = ray === null ? null : inOwn(own, ray);
      rays[to] = way?.[0] ?? Number.NaN;
      rays[to + 1] = way?.[1] ?? Number.NaN;
      rays[to + 2] = way?.[2] ?? Number.NaN;
      to += 3;
    }
  return rays;
}

const BLACK = tint('#000000');

/** Means over pixels: rays between the corners of a pixel run evenly, which within one pixel is what a lens does. */
function gathered(
  subject: Subject,
  from: Vec3,
  rays: Float64Array,
  width: number,
  height: number,
  fine: number,
): Pick<Sampled, 'day' | 'infrared' | 'cover'> {
  const pixels = width * height;
  const [day, infrared] = [new Float32Array(3 * pixels), new Float32Array(pixels)];
  const cover = new Float32Array(pixels);
  const met: Met = { tint: BLACK, up: 0, facing: 0, shaded: false };
  const along = [0, 0, 0];
  const one = 1 / (fine * fine);
  for (let row = 0; row < height; row += 1)
    for (let column = 0; column < width; column += 1) {
      const pixel = row * width + column;
      const corner = 3 * (row * (width + 1) + column);
      const below = corner + 3 * (width + 1);
      for (let ray = 0; ray < fine * fine; ray += 1) {
        const right = ((ray % fine) + 0.5) / fine;
        const down = (Math.floor(ray / fine) + 0.5) / fine;
        for (let axis = 0; axis < 3; axis += 1) {
          const upper = mixed(rays, corner + axis, right);
          along[axis] = upper + (mixed(rays, below + axis, right) - upper) * down;
        }
        if (!subject.meet(from, along, met)) continue;
        const sky = one * (met.shaded ? UNDER : 1) * (SKY - SIDE + SIDE * (0.5 + 0.5 * met.up));
        day[3 * pixel] = (day[3 * pixel] ?? 0) + sky * met.tint.red;
        day[3 * pixel + 1] = (day[3 * pixel + 1] ?? 0) + sky * met.tint.green;
        day[3 * pixel + 2] = (day[3 * pixel + 2] ?? 0) + sky * met.tint.blue;
        infrared[pixel] = (infrared[pixel] ?? 0) + one * met.tint.infrared * (0.3 + 0.7 * met.facing);
        cover[pixel] = (cover[pixel] ?? 0) + one;
      }
    }
  return { day, infrared, cover };
}

/** Light of the sky on what looks up, how much less there is on what looks down, and under the peak of a cap. */
const [SKY, SIDE, UNDER] = [1, 0.35, 0.6];

const mixed = (rays: Float64Array, at: number, share: number): number =>
  (rays[at] ?? 0) + ((rays[at + 3] ?? 0) - (rays[at] ?? 0)) * share;
