import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import { Button } from '../fittings/Button.tsx';
import { LiveRegion } from '../fittings/LiveRegion.tsx';
import { useFaultWords } from './faultWords.ts';
import styles from './noticePlate.module.css';

const SAID_FOR = 6000;
const SHOWN = 6;
const UNTOUCHED = 'Your open plan is untouched.';

/** The last sentence for the person: what was said goes by itself, trouble stays until it is put away. */
export function NoticePlate({ editor }: { editor: Editor }) {
  const notice = useStore(editor.store, (state) => state.notice);
  const words = useFaultWords();
  const [away, setAway] = useState(0);
  const id = notice?.id ?? 0;
  const stays = notice?.tone === 'trouble';

  useEffect(() => {
    if (id === 0 || stays) return undefined;
    const timer = setTimeout(() => setAway(id), SAID_FOR);
    return () => clearTimeout(timer);
  }, [id, stays]);

  const faults = notice?.faults ?? [];
  const saysSo = faults.some((fault) => words(fault).includes(UNTOUCHED));
  const spoken = notice ? [notice.text, ...faults.slice(0, 2).map(words)].join(' ') : '';
  return (
    <>
      <LiveRegion text={spoken} turn={id} />
      {notice && id > away && (
        <div className={styles.plate} data-tone={notice.tone}>
          <p>{notice.text}</p>
          {faults.length > 0 && (
            <ul>
              {faults.slice(0, SHOWN).map((fault) => (
                <li key={`${fault.code} ${fault.path.join(' ')}`}>{words(fault)}</li>
              ))}
              {faults.length > SHOWN && <li>And {faults.length - SHOWN} more.</li>}
            </ul>
          )}
          {stays && (
            <div className={styles.foot}>
              <Button press={() => setAway(id)}>Put away</Button>
              {faults.length > 0 && !saysSo && <span>{UNTOUCHED}</span>}
            </div>
          )}
        </div>
      )}
    </>
  );
}
