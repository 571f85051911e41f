import { LinearFilter, LinearMipmapLinearFilter, Texture } from 'three';

/** Gives the picture with these bytes; null where the device has none. */
export type PictureBitmap = (sha: string) => Promise<ImageBitmap | null>;

/** A picture as the shader reads it. */
export function textureOf(bitmap: ImageBitmap): Texture {
  const texture = new Texture(bitmap);
  // The first row of a bitmap is its top; corners are counted from there as well.
  texture.flipY = false;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.magFilter = LinearFilter;
  texture.anisotropy = 4;
  texture.needsUpdate = true;
  return texture;
}
