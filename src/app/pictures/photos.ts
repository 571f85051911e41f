import type { Vec3 } from '../../base/vector.ts';
import type { Commands } from '../../editor/commands.ts';
import type { Editor } from '../../editor/editor.ts';
import { pinnedAt, squaredOnto } from '../../editor/pictures/photoUses.ts';
import { pictureType, type PictureType } from '../../exchange/pictures/pictureType.ts';
import { addPicture } from '../../plan/commands/addPicture.ts';
import { cleanName } from '../../plan/commands/renameThing.ts';
import type { Picture, PictureFile } from '../../plan/plan.ts';
import { readPicture } from './pictureRead.ts';
import type { PictureStore } from './pictureStore.ts';
import { chooseFile } from '../chooseFile.ts';

/** Photos of the site: pinned where they were taken, or squared onto a wall. */
export interface Photos {
  /** Asks for a photo and pins it in the middle of the view. */
  pin(): void;
  pinFile(file: File, at: Vec3): Promise<void>;
  /** Asks for a photo and lays it over a wall, to be squared by four points. */
  square(structure: string, face: number): void;
  /** For whoever draws them. */
  readonly bitmap: PictureStore['bitmap'];
}

interface PhotoParts {
  readonly editor: Editor;
  readonly pictures: PictureStore;
  readonly commands: Commands;
}

/** Drawings come as PNG and PDF; cameras and telephones write the rest. */
export const isPhoto = (type: PictureType): boolean => type === 'image/jpeg' || type === 'image/webp';

export function createPhotos({ editor, pictures, commands }: PhotoParts): Photos {
  /** Keeps a photo without the place and time in it, and puts it into the plan. */
  const put = async (file: File, step: string, madeOf: (file: PictureFile) => Picture['use'] | null) => {
    const name = cleanName(file.name.replace(/\.[a-z]+$/iu, ''));
    const trouble = (error: unknown) =>
      editor.say(`“${name}” was not put in. ${error instanceof Error ? error.message : String(error)}`);
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const type = pictureType(bytes);
      if (type === null || type === 'application/pdf') throw new Error('Choose a JPEG, PNG or WebP photo.');
      const read = await readPicture(new Blob([bytes], { type }), type, 'photo');
      const use = madeOf(read.file);
      if (use === null) throw new Error('Its wall is not there any more.');
      await pictures
        .keep(read)
        .catch(() =>
          editor.say('The photo could not be kept on this device. Save the plan to a file to keep it.'),
        );
      const added = addPicture(editor.store.getState().plan, { name, file: read.file, use });
      if (!added.ok) return editor.say(`“${name}” was not put in.`, added.faults);
      editor.run(`${step} ${name}`, () => added.value.plan);
      editor.select({ kind: 'picture', id: added.value.id });
    } catch (error) {
      trouble(error);
    }
  };

  const choose = (then: (file: File) => Promise<void>) => {
    chooseFile({
      description: 'Photos',
      extensions: ['.jpg', '.jpeg', '.png', '.webp'],
      id: 'soffit-pictures',
    }).then(then, (error: unknown) => {
      // The person closed the system's file chooser.
      if (!(error instanceof DOMException && error.name === 'AbortError'))
        editor.say(`The photo was not put in. ${error instanceof Error ? error.message : String(error)}`);
    });
  };

  const pinFile = (file: File, at: Vec3) =>
    put(file, 'Pin', () => pinnedAt(editor.store.getState().plan, at));

  return {
    bitmap: pictures.bitmap,
    pinFile,
    pin: () => choose((file) => pinFile(file, commands.places()?.middle() ?? [0, 0, 0])),
    square: (structure, face) =>
      choose((file) =>
        put(file, 'Square', (kept) => squaredOnto(editor.store.getState().plan, structure, face, kept)),
      ),
  };
}
