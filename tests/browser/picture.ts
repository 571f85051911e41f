import { inflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { model } from './gestures.ts';

/** A picture of the window: three bytes a pixel, red, green, blue, row by row. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** What the Model paints, without the signs and labels that lie over it. One pixel a CSS pixel. */
export const pictureOf = async (page: Page, of = model(page)): Promise<Picture> => {
  const box = await of.boundingBox();
  if (box === null) throw new Error('the Model is not in view');
  const png = await page.screenshot({
    clip: box,
    style: 'main *:not(:has(canvas), canvas) { visibility: hidden !important; }',
  });
  return fromPng(png);
};

export const pixelAt = ({ width, pixels }: Picture, x: number, y: number): string => {
  const at = (Math.floor(y) * width + Math.floor(x)) * 3;
  return hex(pixels.subarray(at, at + 3));
};

/** How many pixels have each colour. */
export const histogram = ({ pixels }: Picture): ReadonlyMap<string, number> => {
  const counts = new Map<number, number>();
  for (let at = 0; at < pixels.length; at += 3) {
    const colour = ((pixels[at] ?? 0) << 16) | ((pixels[at + 1] ?? 0) << 8) | (pixels[at + 2] ?? 0);
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return new Map(
    [...counts].map(([colour, count]) => [`#${colour.toString(16).padStart(6, '0').toUpperCase()}`, count]),
  );
};

/** How many pixels differ between two pictures of one size. */
export const difference = (a: Picture, b: Picture): number => {
  if (a.width !== b.width || a.height !== b.height) throw new RangeError('the pictures differ in size');
  let count = 0;
  for (let at = 0; at < a.pixels.length; at += 3)
    if ([0, 1, 2].some((part) => a.pixels[at + part] !== b.pixels[at + part])) count += 1;
  return count;
};

const hex = (parts: Uint8Array): string =>
  `#${Array.from(parts, (part) => part.toString(16).padStart(2, '0'))
    .join('')
    .toUpperCase()}`;

/** Reads a PNG as browsers write screenshots: 8 bits, no palette, not interlaced (PNG specification, third edition, 9 and 11). */
export function fromPng(png: Buffer): Picture {
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  const [depth, kind, interlaced] = [png[24], png[25], png[28]];
  if (depth !== 8 || (kind !== 2 && kind !== 6) || interlaced !== 0)
    throw new Error('an unexpected kind of PNG');
  const channels = kind === 2 ? 3 : 4;
  const data: Buffer[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at))
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT')
      data.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  const lines = unfiltered(inflateSync(Buffer.concat(data)), width * channels, height, channels);
  const pixels = new Uint8Array(width * height * 3);
  for (let pixel = 0; pixel < width * height; pixel += 1)
    for (let part = 0; part < 3; part += 1) pixels[pixel * 3 + part] = lines[pixel * channels + part] ?? 0;
  return { width, height, pixels };
}

function unfiltered(raw: Uint8Array, stride: number, height: number, step: number): Uint8Array {
  const out = new Uint8Array(stride * height);
  for (let y = 0; y < height; y += 1) {
    const filter = raw[y * (stride + 1)] ?? 0;
    for (let x = 0; x < stride; x += 1) {
      const at = y * stride + x;
      const left = x < step ? 0 : (out[at - step] ?? 0);
      const above = y === 0 ? 0 : (out[at - stride] ?? 0);
      const corner = x < step || y === 0 ? 0 : (out[at - stride - step] ?? 0);
      const foretold = [0, left, above, (left + above) >> 1, paeth(left, above, corner)][filter] ?? 0;
      out[at] = (raw[y * (stride + 1) + 1 + x] ?? 0) + foretold;
    }
  }
  return out;
}

function paeth(left: number, above: number, corner: number): number {
  const [a, b, c] = [Math.abs(above - corner), Math.abs(left - corner), Math.abs(left + above - 2 * corner)];
  if (a <= b && a <= c) return left;
  return b <= c ? above : corner;
}
