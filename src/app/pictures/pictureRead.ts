import type { PictureFile } from '../../plan/plan.ts';

/** A picture ready to be kept: what the plan says of it, and its bytes. */
export interface PictureRead {
  readonly file: PictureFile;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Longer sides are reduced to this, px: more than a plan on paper shows. */
const LONGEST = 4096;
const QUALITY = 0.9;
const TYPES: readonly PictureFile['type'][] = ['image/png', 'image/jpeg', 'image/webp'];

/**
 * Reads a PNG, JPEG or WebP. Photos are written anew, upright, so that the place and time in them are not passed on with
 * the plan: always where one is meant, else all but a PNG, which is mostly a drawing. A large picture is reduced.
 * @throws Error in words where the browser cannot draw it
 */
export async function readPicture(
  blob: Blob,
  type: PictureFile['type'],
  meant: 'drawing' | 'photo' = 'drawing',
): Promise<PictureRead> {
  const bitmap = await createImageBitmap(blob).catch(() => {
    throw new Error('This picture cannot be read; it may stop half-way. Try another copy.');
  });
  try {
    const scale = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
    const [width, height] = [Math.round(bitmap.width * scale), Math.round(bitmap.height * scale)];
    const isAsItWas = scale === 1 && type === 'image/png' && meant === 'drawing';
    const kept = isAsItWas ? blob : await drawnAnew(bitmap, width, height, type);
    const bytes = new Uint8Array(await kept.arrayBuffer());
    // A browser that cannot write a kind writes a PNG.
    const written = TYPES.find((known) => known === kept.type) ?? 'image/png';
    return { file: { sha: await shaOf(bytes), type: written, width, height }, bytes };
  } finally {
    bitmap.close();
  }
}

async function drawnAnew(
  bitmap: ImageBitmap,
  width: number,
  height: number,
  type: PictureFile['type'],
): Promise<Blob> {
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, width, height);
  return canvas.convertToBlob({ type, quality: QUALITY });
}

/** SHA-256, 64 small hexadecimal digits. */
export async function shaOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
