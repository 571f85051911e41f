import {
  Box,
  BrickWall,
  Car,
  Cctv,
  DoorOpen,
  Ellipsis,
  Fence,
  House,
  Lightbulb,
  Map,
  MousePointer2,
  Rotate3d,
  RulerDimensionLine,
  SquareDashed,
  TreeDeciduous,
  type LucideIcon,
} from 'lucide-react';
import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import type { Tool } from '../../editor/editor.ts';
import type { Model } from '../Model.ts';
import { BUILD, OTHERS, takeTool } from '../navigate/toolKeys.ts';
import styles from './parts.module.css';

interface ToolColumnProps {
  readonly model: Model;
}

const SIGNS: Partial<Readonly<Record<Tool, LucideIcon>>> = {
  outline: House,
  line: Fence,
  posts: Ellipsis,
  block: Box,
  opening: DoorOpen,
  tree: TreeDeciduous,
  vehicle: Car,
  boundary: SquareDashed,
  camera: Cctv,
  lamp: Lightbulb,
  measure: RulerDimensionLine,
};

/** What is built is told by its tool; at rest it is building as such. */
function ToolSign({ tool }: { readonly tool: Tool }) {
  const Sign = SIGNS[tool] ?? BrickWall;
  return <Sign size={17} aria-hidden="true" />;
}

/** The tools that may be in hand, and from where one looks at the site. */
export function ToolColumn({ model }: ToolColumnProps) {
  const { editor } = model;
  const tool = useStore(editor.store, (state) => state.tool);
  const [open, setOpen] = useState(false);
  const builds = BUILD.some((one) => one.tool === tool);
  const take = (next: Tool) => {
    setOpen(false);
    if (next === 'rest') editor.hold('rest');
    else takeTool(model, next);
    model.focus();
  };
  return (
    <div className={styles['tools']}>
      <div className={styles['column']} role="toolbar" aria-label="Tools" aria-orientation="vertical">
        <button
          type="button"
          aria-label="Select and move"
          title="Select and move (Esc)"
          aria-pressed={tool === 'rest'}
          onClick={() => take('rest')}
        >
          <MousePointer2 size={17} aria-hidden="true" />
        </button>
        <button
          type="button"
          aria-label="Build"
          title="Build: what to draw"
          aria-pressed={builds}
          aria-expanded={open}
          onClick={() => setOpen(!open)}
        >
          <ToolSign tool={builds ? tool : 'rest'} />
        </button>
        {OTHERS.map(({ tool: other, key, label }) => (
          <button
            key={other}
            type="button"
            aria-label={label}
            title={key === null ? label : `${label} (${key})`}
            aria-pressed={tool === other}
            onClick={() => take(other)}
          >
            <ToolSign tool={other} />
          </button>
        ))}
      </div>
      <ViewSwitch model={model} />
      {open && <BuildList tool={tool} take={take} close={() => setOpen(false)} />}
    </div>
  );
}

interface BuildListProps {
  readonly tool: Tool;
  take(tool: Tool): void;
  close(): void;
}

/** What there is to build, with the key of each. */
function BuildList({ tool, take, close }: BuildListProps) {
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    list.current?.querySelector('button')?.focus();
  }, []);
  const keyed = (event: React.KeyboardEvent<HTMLDivElement>) => {
    const buttons = [...event.currentTarget.querySelectorAll('button')];
    const index = buttons.findIndex((one) => one === document.activeElement);
    if (event.key === 'Escape') close();
    else if (event.key === 'ArrowDown') buttons[(index + 1) % buttons.length]?.focus();
    else if (event.key === 'ArrowUp') buttons.at(index - 1)?.focus();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div
      ref={list}
      className={styles['build']}
      role="menu"
      tabIndex={-1}
      aria-label="What to draw"
      onKeyDown={keyed}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) close();
      }}
    >
      {BUILD.map(({ tool: other, key, label }) => (
        <button
          key={other}
          type="button"
          role="menuitemradio"
          tabIndex={-1}
          aria-checked={tool === other}
          onClick={() => take(other)}
        >
          <ToolSign tool={other} />
          <span>{label}</span>
          {key !== null && <kbd>{key}</kbd>}
        </button>
      ))}
    </div>
  );
}

/** From above, or turned. */
function ViewSwitch({ model }: ToolColumnProps) {
  const { view } = model;
  const isPlan = useSyncExternalStore(view.subscribe, () => view.isPlan);
  const go = (plan: boolean) => {
    if (plan !== view.isPlan) view.togglePlan(model.pivotFor(null));
  };
  return (
    <div className={styles['column']} role="group" aria-label="View">
      <button
        type="button"
        aria-label="From above"
        title="From above (P)"
        aria-pressed={isPlan}
        onClick={() => go(true)}
      >
        <Map size={17} aria-hidden="true" />
      </button>
      <button
        type="button"
        aria-label="Turned"
        title="Turned (P)"
        aria-pressed={!isPlan}
        onClick={() => go(false)}
      >
        <Rotate3d size={17} aria-hidden="true" />
      </button>
    </div>
  );
}
