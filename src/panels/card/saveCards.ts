import { fileSave } from 'browser-fs-access';
import type { Page } from '../../exchange/paper/page.ts';
import type { PaperPort } from './paperPort.ts';

/** Saves pages as one PDF of the person's. @returns the name that it got */
export async function saveCards(paper: PaperPort, pages: readonly Page[], what: string): Promise<string> {
  const fileName = `${what.replaceAll(/[^\p{L}\p{N} ._-]/gu, '_')}.pdf`;
  // The chooser is asked for at once, while the press still counts.
  const blob = paper
    .pdf(pages)
    .then((bytes) => new Blob([new Uint8Array(bytes)], { type: 'application/pdf' }));
  const saved = await fileSave(blob, {
    fileName,
    extensions: ['.pdf'],
    mimeTypes: ['application/pdf'],
    id: 'soffit-cards',
  });
  return saved?.name ?? fileName;
}
