import type { Page } from '../../exchange/paper/page.ts';

/** What turns pages into files; the window lends it, so that it is fetched when it is asked for. */
export interface PaperPort {
  pdf(pages: readonly Page[]): Promise<Uint8Array>;
  svg(page: Page): Promise<string>;
}
