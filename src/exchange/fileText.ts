import { strFromU8 } from 'fflate';
import { accept, refuse, type Outcome } from '../base/fault.ts';

/** The largest file that is opened, in bytes: 64 MB. */
export const GREATEST_FILE = 64 * 1024 * 1024;

/** What can be opened, for the message about what cannot. */
export const READABLE =
  'a Soffit plan (JSON), a GeoJSON file of building outlines, or an ASCII grid of heights';

/**
 * The text of a file, UTF-8 with or without a byte order mark.
 * @returns a fault where the file is too large, empty, or no text
 */
export function fileText(name: string, bytes: Uint8Array): Outcome<string> {
  if (bytes.length > GREATEST_FILE) {
    const size = Math.ceil(bytes.length / 1024 / 1024);
    return refuse({
      code: 'file.tooBig',
      path: [],
      given: size,
      allowed: String(GREATEST_FILE / 1024 / 1024),
      subject: name,
    });
  }
  if (bytes.length === 0) return refuse({ code: 'file.empty', path: [] });
  // A picture, an archive or another writing shows a null byte within its first bytes; no JSON text holds one.
  if (bytes.subarray(0, 4096).includes(0))
    return refuse({ code: 'file.unknown', path: [], allowed: READABLE, subject: name });
  return accept(strFromU8(bytes).replace(/^\uFEFF/, ''));
}
