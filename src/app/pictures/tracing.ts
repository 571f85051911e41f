import type { Commands } from '../../editor/commands.ts';
import type { Editor } from '../../editor/editor.ts';
import { pictureType } from '../../exchange/pictures/pictureType.ts';
import { addPicture } from '../../plan/commands/addPicture.ts';
import { cleanName } from '../../plan/commands/renameThing.ts';
import type { DeskStore } from '../desk.ts';
import { openPdf } from './pdfPages.ts';
import { createPhotos, isPhoto, type Photos } from './photos.ts';
import { readPicture, type PictureRead } from './pictureRead.ts';
import type { PictureStore } from './pictureStore.ts';
import { chooseFile } from '../chooseFile.ts';

/** Where on the window a file was dropped, CSS px. */
export interface DropSpot {
  readonly x: number;
  readonly y: number;
}

/** Pictures and pages that are laid under the plan to be traced, and photos pinned to a place or squared onto a wall. */
export interface Tracing extends Photos {
  /** Asks for a file. */
  choose(): void;
  /** A photo that is dropped onto what is built is pinned there; anything else is to be traced. */
  file(file: File, at?: DropSpot): Promise<void>;
}

/** How strongly a picture shows under the lines that are drawn over it. */
const STRENGTH = 0.35;

interface TracingParts {
  readonly editor: Editor;
  readonly desk: DeskStore;
  readonly pictures: PictureStore;
  readonly commands: Commands;
}

export function createTracing({ editor, desk, pictures, commands }: TracingParts): Tracing {
  const lay = async (name: string, read: PictureRead) => {
    await pictures
      .keep(read)
      .catch(() =>
        editor.say('The picture could not be kept on this device. Save the plan to a file to keep it.'),
      );
    const added = addPicture(editor.store.getState().plan, {
      name: cleanName(name),
      file: read.file,
      use: { kind: 'site', at: [0, 0], metresPerPixel: null, turn: 0, strength: STRENGTH },
    });
    if (!added.ok) return editor.say(`“${name}” was not laid under the plan.`, added.faults);
    editor.run(`Lay ${name} under the plan`, () => added.value.plan);
    editor.select({ kind: 'picture', id: added.value.id });
    commands.places()?.fromAbove();
    editor.hold('scale');
  };

  const trouble = (name: string, error: unknown) =>
    editor.say(
      `“${name}” was not laid under the plan. ${error instanceof Error ? error.message : String(error)}`,
    );

  /** Where there is more than one page, asks which. */
  const page = async (name: string, bytes: Uint8Array<ArrayBuffer>) => {
    const pages = await openPdf(bytes);
    const take = async (number: number) => {
      try {
        await lay(
          pages.count === 1 ? name : `${name}, page ${number}`,
          await read(await pages.picture(number)),
        );
      } finally {
        pages.close();
      }
    };
    if (pages.count === 1) return take(1);
    desk.setState({
      sheet: 'pages',
      drawer: true,
      tab: 'setting',
      pages: {
        name,
        count: pages.count,
        thumbnail: pages.thumbnail,
        choose: (number) => {
          desk.setState({ sheet: 'setting', pages: null });
          take(number).catch((error: unknown) => trouble(name, error));
        },
        close: () => {
          pages.close();
          desk.setState({ sheet: 'setting', pages: null });
        },
      },
    });
  };

  const read = (blob: Blob) => readPicture(blob, 'image/png');

  const photos = createPhotos({ editor, pictures, commands });

  const file = async (chosen: File, dropped?: DropSpot) => {
    const name = chosen.name.replace(/\.[a-z]+$/iu, '');
    try {
      const bytes = new Uint8Array(await chosen.arrayBuffer());
      const type = pictureType(bytes);
      if (type === null)
        throw new Error(
          'Choose a PNG, JPEG or WebP picture, or a PDF. A drawing in another form can be printed to a PDF.',
        );
      const { structureOrder } = editor.store.getState().plan;
      const spot =
        dropped && structureOrder.length > 0 && isPhoto(type)
          ? commands.places()?.pointAt(dropped.x, dropped.y)
          : undefined;
      if (spot) await photos.pinFile(chosen, spot);
      else if (type === 'application/pdf') await page(name, bytes);
      else await lay(name, await readPicture(new Blob([bytes], { type }), type));
    } catch (error) {
      trouble(chosen.name, error);
    }
  };

  return {
    file,
    ...photos,
    choose: () => {
      chooseFile({
        description: 'Pictures and pages',
        extensions: ['.png', '.jpg', '.jpeg', '.webp', '.pdf'],
        id: 'soffit-pictures',
      }).then(
        (chosen) => file(chosen),
        (error: unknown) => {
          if (!(error instanceof DOMException && error.name === 'AbortError')) trouble('The file', error);
        },
      );
    },
  };
}
