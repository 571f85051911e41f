import { strFromU8, strToU8, unzipSync, zipSync, type Zippable } from 'fflate';
import { accept, refuse, type Fault, type Outcome } from '../base/fault.ts';
import type { Plan } from '../plan/plan.ts';
import { planText } from '../plan/write.ts';
import { GREATEST_FILE } from './fileText.ts';

/** A plan's file in the pack, and the folder of its pictures, each named by the SHA-256 of its bytes. */
const PLAN = 'plan.json';
const PICTURES = 'pictures/';
const PICTURE = /^pictures\/([0-9a-f]{64})$/;

/** Bytes of pictures by their SHA-256, hex. */
export type PictureBytes = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;

/** What a pack holds: the text of a plan, not read yet, and its pictures. */
export interface Packed {
  readonly text: string;
  readonly pictures: PictureBytes;
}

/** Whether bytes are a ZIP archive, by its first signature. */
export const isPack = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;

/**
 * A plan with its pictures as one file: a ZIP of `plan.json` and `pictures/<sha>`. Pictures are stored as they are, since
 * they are packed already; one that is not at hand is left out, and the plan says so when it is opened.
 */
export function packPlan(plan: Plan, pictures: PictureBytes): Uint8Array<ArrayBuffer> {
  const files: Zippable = { [PLAN]: [strToU8(planText(plan)), { level: 6 }] };
  for (const { file } of Object.values(plan.pictures)) {
    const bytes = pictures.get(file.sha);
    if (bytes) files[PICTURES + file.sha] = [bytes, { level: 0 }];
  }
  // No times: equal plans are equal files.
  return zipSync(files, { mtime: '1980-01-01T12:00:00' });
}

/**
 * The plan's text and pictures in a pack.
 * @returns a fault where it is no pack, holds no plan, or would unpack to more than is opened
 */
export function unpackPlan(name: string, bytes: Uint8Array): Outcome<Packed> {
  let total = 0;
  let isTooLarge = false;
  let files: Readonly<Record<string, Uint8Array<ArrayBuffer>>>;
  try {
    files = unzipSync(bytes, {
      // Sizes are known before anything is unpacked, so a small file cannot fill the memory.
      filter: ({ name: path, originalSize }) => {
        if (path !== PLAN && !PICTURE.test(path)) return false;
        total += originalSize;
        isTooLarge ||= total > 4 * GREATEST_FILE;
        return !isTooLarge;
      },
    });
  } catch {
    return refuse(packFault('pack.broken', name));
  }
  if (isTooLarge) return refuse(packFault('pack.tooLarge', name));
  const plan = files[PLAN];
  if (!plan) return refuse(packFault('pack.noPlan', name));
  const pictures = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const [path, held] of Object.entries(files)) {
    const sha = PICTURE.exec(path)?.[1];
    if (sha !== undefined) pictures.set(sha, held);
  }
  return accept({ text: strFromU8(plan), pictures });
}

const packFault = (code: string, name: string): Fault => ({ code, path: [], subject: name });
