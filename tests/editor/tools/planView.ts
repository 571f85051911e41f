import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import type { Editor, Tool } from '../../../src/editor/editor.ts';
import type { TypedBy } from '../../../src/editor/tools/chart.ts';
import type { Pointed } from '../../../src/editor/tools/pointed.ts';
import type { Toolbox } from '../../../src/editor/tools/toolbox.ts';

/** What a pointer stands on in the view from above with north up; `pixel` metres to the pixel. */
export function fromAbove([x, y]: Vec2, more: Partial<Pointed> = {}, pixel = 0.02): Pointed {
  return {
    ray: { from: [x, y, 100], along: [0, 0, -1] },
    struck: { point: [x, y, 0], normal: [0, 0, 1], structure: null },
    handle: null,
    camera: null,
    lamp: null,
    metresPerPixel: pixel,
    shift: false,
    free: false,
    by: 'mouse',
    grip: null,
    screen: {
      spot: [x / pixel, -y / pixel],
      place: ([px, py]: Vec3) => [px / pixel, -py / pixel],
      seen: () => true,
      plan: true,
    },
    ...more,
  };
}

const ARROWS: Readonly<Record<string, TypedBy>> = { '→': 'right', '←': 'left', '↑': 'up', '↓': 'down' };
const TOOLS: Readonly<Record<string, Tool>> = {
  W: 'outline',
  F: 'line',
  B: 'block',
  G: 'boundary',
  O: 'opening',
};

/**
 * Plays a script as the table of the ten-minute house has it: `4.2→`, `35 Tab`, `Space`, `W`, `click A`, `hover F`, and
 * `click Hip` for an option of the strip. Counts keys one a character, named keys one each, and clicks; hovers are not
 * counted.
 */
export class Player {
  keys = 0;
  clicks = 0;
  private cursor: Vec2 = [0, 0];
  private field: string | null = null;
  private readonly editor: Editor;
  private readonly tools: Toolbox;
  private readonly pixel: number;
  private readonly places: Readonly<Record<string, Vec2>>;
  /** How far a hand misses what it points at, px right and down. */
  private readonly off: Vec2;

  constructor(
    editor: Editor,
    tools: Toolbox,
    places: Readonly<Record<string, Vec2>>,
    { pixel = 0.02, off = [2, 2] }: { readonly pixel?: number; readonly off?: Vec2 } = {},
  ) {
    this.editor = editor;
    this.tools = tools;
    this.places = places;
    this.pixel = pixel;
    this.off = off;
  }

  play(script: string): void {
    const words = script.split(/\s+/).filter(Boolean);
    for (let k = 0; k < words.length; k += 1) {
      const word = words[k] ?? '';
      if (word === 'click' || word === 'hover') this.point(word, words[(k += 1)] ?? '');
      else if (word === 'Enter' || word === 'Tab' || word === 'Space') this.named(word);
      else if (/^[A-Z]+$/.test(word)) this.hold(word);
      else {
        const next = words[k + 1];
        const by = ARROWS[word.at(-1) ?? ''] ?? (next === 'Tab' ? 'tab' : next === 'Enter' ? 'enter' : null);
        if (by === null) throw new Error(`nothing ends ${word}`);
        if (ARROWS[word.at(-1) ?? ''] === undefined) k += 1;
        this.typed(word, by);
      }
    }
  }

  private point(how: 'click' | 'hover', name: string): void {
    const choice = this.tools.store.getState().state.strip?.choices?.[0];
    const option = choice?.options.find(({ label }) => label === name);
    if (how === 'click') this.clicks += 1;
    if (choice && option) {
      this.tools.choose(choice.key, option.key);
      this.field = null;
      return;
    }
    const at = this.places[name];
    if (!at) throw new Error(`no place ${name}`);
    this.cursor = [at[0] + this.off[0] * this.pixel, at[1] - this.off[1] * this.pixel];
    this.tools.hover(fromAbove(this.cursor, {}, this.pixel));
    if (how === 'click') this.tools.click(fromAbove(this.cursor, {}, this.pixel));
    this.field = null;
  }

  private named(key: 'Enter' | 'Tab' | 'Space'): void {
    this.keys += 1;
    if (key === 'Enter') this.tools.enter();
    if (key === 'Space') this.tools.click(fromAbove(this.cursor, {}, this.pixel));
  }

  private hold(letters: string): void {
    for (const letter of letters) {
      this.keys += 1;
      const tool = TOOLS[letter];
      if (tool === undefined) throw new Error(`no tool ${letter}`);
      if (this.editor.store.getState().tool === tool) this.tools.again();
      else this.editor.hold(tool);
    }
    this.field = null;
  }

  private typed(word: string, by: TypedBy): void {
    const isArrow = by !== 'enter' && by !== 'tab';
    const text = isArrow ? word.slice(0, -1) : word;
    this.keys += text.length + 1;
    const fields = this.tools.store.getState().state.strip?.fields ?? [];
    const key = this.field ?? fields[0]?.key;
    if (key === undefined) throw new Error(`nothing takes ${word}`);
    const trouble = this.tools.typed(key, text, by);
    if (trouble !== null) throw new Error(`${word}: ${trouble}`);
    const at = fields.findIndex((field) => field.key === key);
    this.field = by === 'tab' ? (fields[at + 1]?.key ?? null) : null;
  }
}
