import { useEffect, useId, useRef, useState } from 'react';
import type { Commands } from '../../editor/commands.ts';
import type { Editor } from '../../editor/editor.ts';
import { findsFor, type Find } from './finds.ts';
import styles from './finder.module.css';

interface FinderProps {
  readonly editor: Editor;
  readonly commands: Commands;
  close(): void;
}

const SORTS: Readonly<Record<Find['sort'], string>> = {
  command: '',
  thing: 'select',
  value: 'set',
  place: 'place',
};

/** Finds commands, things, places and numbers by what they are called: "c1 tilt 24", "go to house corner 1". */
export function Finder({ editor, commands, close }: FinderProps) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const finds = findsFor(typed, { editor, commands });
  const chosen = Math.min(at, finds.length - 1);

  useEffect(() => {
    input.current?.focus();
    return () => {
      // On to the Model, unless what was chosen has taken the focus elsewhere.
      const lost = document.activeElement === document.body || document.activeElement === null;
      if (lost) document.querySelector<HTMLElement>('[role="application"]')?.focus();
    };
  }, []);

  const take = (find: Find | undefined) => {
    if (!find) return;
    if (find.fill !== undefined) {
      setTyped(find.fill);
      setAt(0);
      return;
    }
    if (find.off !== null) return editor.say(`${find.label}: ${find.off}`);
    close();
    find.run();
  };

  return (
    <search
      className={styles.finder}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) close();
      }}
    >
      <input
        ref={input}
        className={styles.input}
        role="combobox"
        aria-label="Find a command, a thing or a number"
        aria-expanded={finds.length > 0}
        aria-controls={`${id}-rows`}
        aria-activedescendant={finds.length > 0 ? `${id}-${chosen}` : undefined}
        aria-autocomplete="list"
        placeholder="garage height 2.4 · c1 tilt 24 · go to house corner 1"
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          setAt(0);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Escape') close();
          else if (event.key === 'Enter' && !event.ctrlKey && !event.metaKey) take(finds[chosen]);
          else if (event.key === 'ArrowDown') setAt(Math.min(chosen + 1, finds.length - 1));
          else if (event.key === 'ArrowUp') setAt(Math.max(chosen - 1, 0));
          else return;
          event.preventDefault();
          event.stopPropagation();
        }}
      />
      <div id={`${id}-rows`} className={styles.rows} role="listbox" aria-label="Found">
        {finds.map((find, index) => (
          <div
            key={find.id}
            id={`${id}-${index}`}
            className={styles.row}
            role="option"
            tabIndex={-1}
            aria-selected={index === chosen}
            aria-disabled={find.off !== null}
            ref={(row) => {
              if (index === chosen) row?.scrollIntoView({ block: 'nearest' });
            }}
            onPointerDown={(event) => event.preventDefault()}
            onPointerMove={() => setAt(index)}
            onClick={() => take(find)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') take(find);
            }}
          >
            <span>{find.label}</span>
            <small>{find.off ?? find.keys ?? SORTS[find.sort]}</small>
          </div>
        ))}
      </div>
      {finds.length === 0 && (
        <p className={styles.none} role="status">
          Nothing is called so. Try a name from the Site, or what you want done.
        </p>
      )}
    </search>
  );
}
