/** Kinds of file that can be traced, told by their first bytes and not by their name. */
export type PictureType = 'image/png' | 'image/jpeg' | 'image/webp' | 'application/pdf';

const ascii = (text: string): readonly number[] => Array.from(text, (letter) => letter.codePointAt(0) ?? 0);

const begins = (bytes: Uint8Array, at: number, start: readonly number[]): boolean =>
  start.every((byte, k) => bytes[at + k] === byte);

/**
 * What kind of picture some bytes are; null where they are none that can be traced. Signatures: PNG (ISO/IEC 15948),
 * JPEG (ITU-T T.81), WebP (RIFF container), PDF (ISO 32000, whose header may stand within the first 1024 bytes).
 */
export function pictureType(bytes: Uint8Array): PictureType | null {
  if (begins(bytes, 0, [0x89, ...ascii('PNG'), 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  if (begins(bytes, 0, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (begins(bytes, 0, ascii('RIFF')) && begins(bytes, 8, ascii('WEBP'))) return 'image/webp';
  const header = ascii('%PDF-');
  for (let at = 0; at + header.length <= Math.min(bytes.length, 1024); at++)
    if (begins(bytes, at, header)) return 'application/pdf';
  return null;
}
