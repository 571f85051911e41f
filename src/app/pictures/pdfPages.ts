import type { PDFDocumentProxy } from 'pdfjs-dist';

/** A page is drawn with so many pixels along its longer side. */
const LONGEST = 3600;
const THUMBNAIL = 220;

/** The pages of a PDF as pictures. */
export interface PdfPages {
  readonly count: number;
  /** A page, counted from 1, small enough to choose from. */
  thumbnail(page: number): Promise<Blob>;
  /** A page, counted from 1, to be traced. */
  picture(page: number): Promise<Blob>;
  close(): void;
}

/**
 * Opens a PDF. The reader is fetched only now, and runs no script that a file may hold.
 * @throws Error in words where it is no PDF, is broken, or wants a password
 */
export async function openPdf(bytes: Uint8Array<ArrayBuffer>): Promise<PdfPages> {
  const [{ getDocument, GlobalWorkerOptions }, worker] = await Promise.all([
    import('pdfjs-dist'),
    import('pdfjs-dist/build/pdf.worker.min.mjs?url'),
  ]);
  GlobalWorkerOptions.workerSrc = worker.default;
  const task = getDocument({ data: bytes, isEvalSupported: false, enableXfa: false, useSystemFonts: true });
  let document: PDFDocumentProxy;
  try {
    document = await task.promise;
  } catch (error) {
    await task.destroy();
    throw new Error(wordsFor(error), { cause: error });
  }
  return {
    count: document.numPages,
    thumbnail: (page) => drawn(document, page, THUMBNAIL),
    picture: (page) => drawn(document, page, LONGEST),
    close: () => void task.destroy(),
  };
}

async function drawn(document: PDFDocumentProxy, number: number, longest: number): Promise<Blob> {
  const page = await document.getPage(number);
  const whole = page.getViewport({ scale: 1 });
  const viewport = page.getViewport({ scale: longest / Math.max(whole.width, whole.height) });
  const canvas = window.document.createElement('canvas');
  canvas.width = Math.ceil(viewport.width);
  canvas.height = Math.ceil(viewport.height);
  await page.render({ canvas, viewport, background: '#ffffff' }).promise;
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('the page could not be drawn'))),
      'image/png',
    );
  });
}

function wordsFor(error: unknown): string {
  const name = error instanceof Error ? error.name : '';
  if (name === 'PasswordException')
    return 'This PDF asks for a password. Save a copy without one, then open that.';
  if (name === 'InvalidPDFException')
    return 'This PDF cannot be read; it may stop half-way. Try another copy.';
  return `This PDF cannot be read (${error instanceof Error ? error.message : String(error)}). Try another copy, or a picture of the page.`;
}
