import { pictureFrom, type Shelf } from '../../editor/shelf.ts';
import type { PictureBytes } from '../../exchange/planPack.ts';
import type { Plan } from '../../plan/plan.ts';
import { shaOf, type PictureRead } from './pictureRead.ts';

/** The pictures that this device has, ready to be drawn. */
export interface PictureStore {
  keep(picture: PictureRead): Promise<void>;
  /** Keeps what came with a file; answers how many of the plan's pictures are not there. */
  take(plan: Plan, pictures: PictureBytes): Promise<number>;
  /** Null where the device does not have it, or cannot draw it. */
  bitmap(sha: string): Promise<ImageBitmap | null>;
}

export function createPictureStore(shelf: Shelf): PictureStore {
  // Those kept in this window stay at hand even where the device keeps nothing.
  const read = new Map<string, Blob>();
  const drawn = new Map<string, Promise<ImageBitmap | null>>();

  const blobOf = async (sha: string): Promise<Blob | null> => {
    const here = read.get(sha);
    if (here) return here;
    const held = pictureFrom(await shelf.picture(sha).catch(() => null));
    return held && new Blob([held.bytes], { type: held.type });
  };

  const put = async (sha: string, type: string, bytes: Uint8Array<ArrayBuffer>) => {
    read.set(sha, new Blob([bytes], { type }));
    drawn.delete(sha);
    await shelf.putPicture({ sha, type, bytes });
  };

  return {
    keep: ({ file, bytes }) => put(file.sha, file.type, bytes),
    take: async (plan, pictures) => {
      let missing = 0;
      for (const { file } of Object.values(plan.pictures)) {
        const bytes = pictures.get(file.sha);
        // Bytes that are not those the plan names are nobody's.
        if (bytes && (await shaOf(bytes)) === file.sha) await put(file.sha, file.type, bytes);
        else if (!(await blobOf(file.sha))) missing += 1;
      }
      return missing;
    },
    bitmap: (sha) => {
      const known = drawn.get(sha);
      if (known) return known;
      const made = blobOf(sha).then((blob) => blob && createImageBitmap(blob).catch(() => null));
      drawn.set(sha, made);
      return made;
    },
  };
}
