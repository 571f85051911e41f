import { fileSave } from 'browser-fs-access';
import type { Sheet } from '../../draw/sum/sumSheet.ts';
import { paintSheet } from './paintSheet.ts';

/** What came of copying, in words. */
export type Copied = string;

const FILE = 'Quick sum.png';

/** Puts the picture on the clipboard; where the browser refuses, it is saved as a file instead. */
export async function copyPicture(sheet: Sheet): Promise<Copied> {
  // Made while the press still counts as one: the clipboard waits for the picture itself.
  const picture = pngOf(sheet);
  try {
    await navigator.clipboard.write([new ClipboardItem({ 'image/png': picture })]);
    return 'Copied as a picture.';
  } catch {
    return savePicture(await picture);
  }
}

async function savePicture(picture: Blob): Promise<Copied> {
  try {
    await fileSave(picture, {
      fileName: FILE,
      extensions: ['.png'],
      mimeTypes: ['image/png'],
      id: 'soffit-sum',
    });
    return `The browser keeps the clipboard from this page, so the picture was saved as ${FILE}.`;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return 'The picture was not saved.';
    return `The picture could not be made: ${error instanceof Error ? error.message : String(error)}.`;
  }
}

/** Puts the sum on the clipboard as text; null where the browser refuses: then it is shown to be marked by hand. */
export async function copyText(text: string): Promise<Copied | null> {
  try {
    await navigator.clipboard.writeText(text);
    return 'Copied as text.';
  } catch {
    return null;
  }
}

async function pngOf(sheet: Sheet): Promise<Blob> {
  await Promise.all([400, 600, 650].map((weight) => document.fonts.load(`${weight} 12px "National Park"`)));
  const canvas = document.createElement('canvas');
  paintSheet(canvas, sheet);
  return new Promise((done, failed) => {
    canvas.toBlob(
      (blob) => (blob === null ? failed(new Error('no picture came of it')) : done(blob)),
      'image/png',
    );
  });
}
