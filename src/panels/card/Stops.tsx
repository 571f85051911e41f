import type { Card } from '../../draw/card/cardOf.ts';
import { tickStop } from '../../editor/cardActs.ts';
import type { Editor } from '../../editor/editor.ts';
import { Check } from '../../fittings/Check.tsx';
import type { PlanCamera } from '../../plan/plan.ts';
import { Group } from '../Group.tsx';
import styles from './card.module.css';

interface StopsProps {
  readonly editor: Editor;
  readonly camera: PlanCamera;
  readonly card: Card | undefined;
}

/** What somebody must look at before this camera is drilled for; each is ticked by who did. */
export function Stops({ editor, camera, card }: StopsProps) {
  const stops = card?.page ? card.stops : [];
  const { ticked } = camera.card;
  const open = stops.filter(({ id }) => !ticked.includes(id)).length;
  if (card?.page === null) return null;
  return (
    <Group title="Look before you drill">
      <p className={styles.verdict} role="status" data-ready={card !== undefined && open === 0}>
        {card === undefined
          ? 'Being worked out.'
          : stops.length === 0
            ? 'Nothing stops this card.'
            : open === 0
              ? 'Ready: everything below has been looked at.'
              : `Not ready: ${open} of ${stops.length} still to be looked at.`}
      </p>
      {stops.map(({ id, said, advice }) => (
        <Check
          key={id}
          label={`${said} ${advice}`}
          checked={ticked.includes(id)}
          set={(looked) => tickStop(editor, camera.id, id, looked)}
        />
      ))}
    </Group>
  );
}
