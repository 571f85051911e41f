import { addOpening } from '../../../plan/commands/addOpening.ts';
import { setOpening } from '../../../plan/commands/setOpening.ts';
import { LIMITS } from '../../../plan/limits.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import { nameOfSelected } from '../../recordsOf.ts';
import type { Setting } from '../../settings/setting.ts';
import type { Strip, ToolState } from '../chart.ts';
import { asking, type Field, type Questions } from '../drawing/asking.ts';
import { endWord } from '../mount/cornerNames.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';
import { openingHost } from './openingHost.ts';
import { labelOf, ON_LINE, ON_WALL } from './openingKinds.ts';
import {
  endNames,
  kindOn,
  openingSpot,
  openingTrouble,
  spotSketch,
  spotWords,
  type OpeningSpot,
} from './openingSpot.ts';

const START = 'Point at a wall, a fence or a hedge.';

/** The opening tool: a door, window or archway in a wall, a gate or archway in a line, where the pointer has it. */
export function opening(editor: Editor, turn = 0, spot: OpeningSpot | null = null, said = START): ToolState {
  const { plan, snapping } = editor.store.getState();
  const { units } = plan.settings;
  const trouble = spot && troubleOf(plan, spot);
  const find = (at: Pointed, kindTurn = turn): OpeningSpot | null => {
    const host = openingHost(plan, at);
    return host && openingSpot(host, kindTurn, at, at.free || !snapping);
  };
  const seek = (at: Pointed): ToolState => opening(editor, turn, find(at));
  const set = (next: OpeningSpot | null): ToolState => {
    if (!next)
      return opening(editor, turn, null, 'Nothing to cut into here. Point at a wall, a fence or a hedge.');
    const on = next.host.structure.id;
    const made = addOpening(plan, on, next.opening);
    if (!made.ok) return opening(editor, turn, next);
    const thing = { kind: 'opening', id: made.value.id, on } as const;
    editor.run(`Add ${nameOfSelected(made.value.plan, thing) ?? 'opening'}`, () => made.value.plan);
    // A plan that only reads takes nothing; the editor has said so.
    if (editor.store.getState().plan !== made.value.plan) return opening(editor, turn, next);
    editor.select(thing);
    return asking(editor, thing, (now) => questions(now, on, made.value.id));
  };
  const isLine = spot?.host.structure.kind === 'barrier';
  const strip: Strip = {
    text: trouble ?? (spot ? spotWords(spot, units) : said),
    fields: [],
    choices: [
      {
        key: 'kind',
        label: 'Opening',
        options: (isLine ? ON_LINE : ON_WALL).map((key) => ({ key, label: labelOf(key) })),
        chosen: kindOn(turn, isLine),
      },
    ],
    trouble: trouble !== null || (spot === null && said !== START),
  };
  return {
    name: 'opening seeking',
    strip,
    ghost: spot && spotSketch(spot, units, trouble !== null),
    cursor: spot && trouble === null ? 'crosshair' : spot ? 'not-allowed' : 'crosshair',
    hover: seek,
    takes: () => true,
    drag: (_, to) => seek(to),
    release: () => set(spot),
    click: (at) => set(find(at)),
    enter: () => set(spot),
    escape: () => resting(editor),
    again: () => opening(editor, turn + 1),
    choose: (_, key) => {
      const kinds = isLine ? ON_LINE : ON_WALL;
      return opening(
        editor,
        Math.max(
          0,
          kinds.findIndex((kind) => kind === key),
        ),
      );
    },
  };
}

function troubleOf(plan: Plan, { host, opening: draft }: OpeningSpot): string | null {
  const made = addOpening(plan, host.structure.id, draft);
  return made.ok ? null : openingTrouble(plan, host.structure.id, draft, made.faults);
}

/** From end, width, height, sill. */
function questions(plan: Plan, on: string, id: string): Questions {
  const structure = plan.structures[on];
  const found =
    structure && 'openings' in structure ? structure.openings.find((one) => one.id === id) : undefined;
  if (!found || !structure || !('openings' in structure)) return { choices: [], fields: [], trouble: null };
  const corners = structure.kind === 'building' ? structure.outline : structure.line;
  const [from, to] = [corners[found.face], corners[(found.face + 1) % corners.length]];
  const end =
    from && to ? `From the ${endNames({ from, to }).start} ${endWord(structure)}` : 'From the first end';
  const size = (
    key: 'along' | 'width' | 'height' | 'sill',
    label: string,
    bounds: Setting['bounds'],
  ): Field => ({
    key,
    label,
    measure: 'length',
    bounds,
    value: found[key],
    change: (now, value) => setOpening(now, on, id, { [key]: value }, 'measured'),
    refusal: (now, value) => {
      const next = setOpening(now, on, id, { [key]: value }, 'measured');
      return next.ok ? null : openingTrouble(now, on, { ...found, [key]: value }, next.faults);
    },
  });
  return {
    choices: [],
    fields: [
      size('along', end, { least: 0, most: LIMITS.size.most }),
      size('width', 'Width', LIMITS.size),
      size('height', 'Height', LIMITS.height),
      size('sill', 'Sill', { least: 0, most: LIMITS.height.most }),
    ],
    trouble: null,
  };
}
