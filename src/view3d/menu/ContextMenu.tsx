import { useEffect, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { Command, Commands } from '../../editor/commands.ts';
import type { Model } from '../Model.ts';
import type { OpenMenu } from '../navigate/Hands.ts';
import { menuActs } from './menuActs.ts';
import styles from './menu.module.css';

const EDGE = 8;

/** The menu of what is pointed at: right button, long press, Shift+F10. */
export function ContextMenu({ model, commands }: { readonly model: Model; readonly commands: Commands }) {
  const open = useStore(model.hands.menu, (state) => state.open);
  return open && <Opened model={model} open={open} commands={commands} />;
}

interface OpenedProps {
  readonly model: Model;
  readonly open: OpenMenu;
  readonly commands: Commands;
}

function Opened({ model, open, commands }: OpenedProps) {
  const root = useRef<HTMLDivElement>(null);
  const { title, acts } = menuActs(model, open, commands.list());
  const close = () => model.hands.menu.setState({ open: null });

  useLayoutEffect(() => {
    const element = root.current;
    if (!element) return;
    const { offsetWidth: width, offsetHeight: height } = element;
    const x = Math.max(EDGE, Math.min(open.spot.x, model.view.width - width - EDGE));
    const y = Math.max(EDGE, Math.min(open.spot.y, model.view.height - height - EDGE));
    element.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px)`;
    element.querySelector<HTMLElement>('[role="menuitem"]')?.focus();
  }, [open, model]);

  useEffect(() => {
    const outside = (event: PointerEvent) => {
      if (event.target instanceof Node && !root.current?.contains(event.target))
        model.hands.menu.setState({ open: null });
    };
    window.addEventListener('pointerdown', outside, true);
    return () => window.removeEventListener('pointerdown', outside, true);
  }, [model]);

  const run = (act: Command) => {
    const off = act.off?.() ?? null;
    close();
    model.focus();
    if (off === null) act.run();
    else model.editor.say(off);
  };
  const keyed = (event: React.KeyboardEvent<HTMLDivElement>) => {
    const items = [...event.currentTarget.querySelectorAll<HTMLElement>('[role="menuitem"]')];
    const index = items.findIndex((one) => one === document.activeElement);
    const find = (start: number) =>
      items.find((one, i) => i > start && one.textContent.toLowerCase().startsWith(event.key.toLowerCase()));
    const next =
      event.key === 'ArrowDown'
        ? items[(index + 1) % items.length]
        : event.key === 'ArrowUp'
          ? items.at(index - 1)
          : event.key === 'Home'
            ? items[0]
            : event.key === 'End'
              ? items.at(-1)
              : event.key.length === 1 && event.key !== ' '
                ? (find(index) ?? find(-1))
                : undefined;
    if (event.key === 'Escape' || event.key === 'Tab') {
      close();
      model.focus();
    } else if (next) next.focus();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <div ref={root} className={styles.menu} role="menu" aria-label={title} tabIndex={-1} onKeyDown={keyed}>
      <span className={styles.title} aria-hidden="true">
        {title}
      </span>
      {acts.map((act) => (
        <button
          key={act.id}
          type="button"
          role="menuitem"
          tabIndex={-1}
          aria-disabled={(act.off?.() ?? null) === null ? undefined : true}
          onClick={() => run(act)}
        >
          <span>{act.label}</span>
          {act.keys !== null && <kbd aria-hidden="true">{act.keys}</kbd>}
        </button>
      ))}
    </div>
  );
}
