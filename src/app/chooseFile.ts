interface Wanted {
  /** What the browser calls such files. */
  readonly description: string;
  readonly extensions: string[];
  /** By which the browser remembers the folder. */
  readonly id: string;
}

/**
 * The browser's ways to files. Fetched after the first coverage (App.tsx): when a button is pressed they are at hand, while the
 * press still counts.
 */
export const loadFileAccess = () => import('browser-fs-access');

/** Asks for a file. Rejects with a DOMException named AbortError where the person closed the system's chooser. */
export async function chooseFile(wanted: Wanted): Promise<File> {
  const { fileOpen } = await loadFileAccess();
  return fileOpen(wanted);
}
