import type { AnswersStore } from '../../answers/store.ts';
import type { Editor } from '../../editor/editor.ts';
import { DrillCards } from '../../panels/card/DrillCards.tsx';
import type { PaperPort } from '../../panels/card/paperPort.ts';

/** Writers of files are fetched when one is asked for. */
const paper: PaperPort = {
  pdf: (pages) => import('../../exchange/paper/pagePdf.ts').then(({ pagesPdf }) => pagesPdf(pages)),
  svg: (page) => import('../../exchange/paper/pageSvg.ts').then(({ pageSvg }) => pageSvg(page)),
};

/** The page of drill cards, with what turns them into files. */
export const CardsPage = ({ editor, answers }: { editor: Editor; answers: AnswersStore }) => (
  <DrillCards editor={editor} answers={answers} paper={paper} />
);
