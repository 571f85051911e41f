import type { Card } from '../../draw/card/cardOf.ts';
import type { Editor } from '../../editor/editor.ts';
import type { Page } from '../../exchange/paper/page.ts';
import { Button } from '../../fittings/Button.tsx';
import type { Plan } from '../../plan/plan.ts';
import type { PaperPort } from './paperPort.ts';
import { printPages } from './printPages.ts';
import { saveCards } from './saveCards.ts';
import styles from './card.module.css';

interface CardActsProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly paper: PaperPort;
  readonly cards: ReadonlyMap<string, Card>;
  readonly shown: string;
  readonly working: boolean;
}

/** Prints and saves the card that is shown, or those of all cameras. */
export function CardActs({ editor, plan, paper, cards, shown, working }: CardActsProps) {
  const pageOf = (id: string): readonly Page[] => {
    const page = cards.get(id)?.page ?? null;
    return page === null ? [] : [page];
  };
  const [own, all] = [pageOf(shown), plan.cameraOrder.flatMap(pageOf)];
  const name = plan.cameras[shown]?.name ?? shown;
  const waiting = working ? 'The cards are being drawn.' : null;
  const noOwn = waiting ?? (own.length === 0 ? `${name} has no card.` : null);
  const noAll = waiting ?? (all.length === 0 ? 'No camera has a card.' : null);
  const trouble = (error: unknown) => {
    if (error instanceof DOMException && error.name === 'AbortError') return;
    editor.say(`That did not work: ${error instanceof Error ? error.message : String(error)}.`);
  };
  const save = (pages: readonly Page[], what: string) =>
    saveCards(paper, pages, what).then((saved) => editor.say(`Saved as ${saved}.`), trouble);
  const print = (pages: readonly Page[]) => printPages(paper, pages).catch(trouble);
  return (
    <div className={styles.acts}>
      <Button look="main" off={noOwn} press={() => void save(own, `Drill card ${name}`)}>
        Save PDF
      </Button>
      <Button off={noOwn} press={() => void print(own)}>
        Print
      </Button>
      {plan.cameraOrder.length > 1 && (
        <>
          <Button off={noAll} press={() => void save(all, `Drill cards ${plan.name}`)}>
            Save all
          </Button>
          <Button off={noAll} press={() => void print(all)}>
            Print all
          </Button>
        </>
      )}
      <p className={styles.note}>Print at 100 %, not fitted to the page: the drawings are to scale.</p>
    </div>
  );
}
