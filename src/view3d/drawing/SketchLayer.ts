import type { FrameGhost, LineStyle, Sketch, SketchMark } from '../../editor/tools/chart.ts';
import { put, svg } from '../labels/signs.ts';
import type { Sheet } from '../sheet.ts';
import { dimensionLines, platePlaces, type SizeOf } from './dimensionLines.ts';
import { markShape, type MarkShape } from './markSigns.ts';
import { pathOf, screenLine } from './screenLine.ts';

const STYLES: readonly LineStyle[] = ['was', 'guide', 'level', 'fixed', 'clear', 'blocked', 'wrong', 'live'];
const LOOKS: readonly MarkShape['look'][] = ['solid', 'line', 'bold', 'fault', 'pointer'];
/** What the loupe shows again. */
export const SKETCH_ID = 'soffit-sketch';

/** What is being drawn, over the picture: lines by their style, the marks of snaps, plates with lengths and words. */
export class SketchLayer {
  private readonly root = svg('svg', { class: 'signs sketch', 'aria-hidden': 'true' });
  private readonly all = svg('g', { id: SKETCH_ID });
  private readonly hatch = svg('path', { class: 'hatch', fill: 'url(#soffit-crossed)' });
  private readonly casing = svg('path', { class: 'casing' });
  private readonly lines = new Map(STYLES.map((style) => [style, svg('path', { class: style })]));
  private readonly dimensions = svg('path', { class: 'dimension' });
  private readonly ticks = svg('path', { class: 'ticks' });
  private readonly marks = new Map(LOOKS.map((look) => [look, svg('g', { class: `mark ${look}` })]));
  private readonly frame = svg('rect', { class: 'frameGhost', visibility: 'hidden' });
  private readonly plates = document.createElement('div');
  private readonly pen: CanvasRenderingContext2D | null;
  private readonly widths = new Map<string, number>();
  private font = '';
  private empty = true;

  constructor(layer: HTMLElement) {
    const crossed = svg('pattern', {
      id: 'soffit-crossed',
      width: 8,
      height: 8,
      patternUnits: 'userSpaceOnUse',
    });
    crossed.append(svg('path', { d: 'M0,0L8,8M8,0L0,8', class: 'crossed' }));
    const defs = svg('defs');
    defs.append(crossed);
    this.plates.className = 'sketchPlates';
    this.plates.setAttribute('aria-hidden', 'true');
    this.all.append(this.hatch, this.casing, ...this.lines.values(), this.dimensions, this.ticks);
    this.all.append(...this.marks.values());
    this.root.append(defs, this.all, this.frame);
    layer.append(this.root, this.plates);
    this.pen = document.createElement('canvas').getContext('2d');
  }

  /** @param cursor the keyboard's, where it is shown */
  show(sheet: Sheet, sketch: Sketch | null, cursor: SketchMark | null): void {
    const marks = [...(sketch?.marks ?? []), ...(cursor ? [cursor] : [])];
    if (!sketch && marks.length === 0) {
      if (!this.empty) this.clear();
      return;
    }
    this.empty = false;
    const drawn = new Map<LineStyle, string>();
    let hatched = '';
    for (const { points, closed, style, hatched: crossed } of sketch?.lines ?? []) {
      const pieces = screenLine(sheet, points, closed);
      drawn.set(style, (drawn.get(style) ?? '') + pathOf(pieces));
      if (crossed === true) hatched += pathOf(pieces, true);
    }
    for (const [style, path] of this.lines) put(path, { d: drawn.get(style) ?? '' });
    put(this.casing, { d: drawn.get('live') ?? '' });
    put(this.hatch, { d: hatched });
    this.showMarks(sheet, marks);
    this.showPlates(sheet, sketch);
  }

  /** The frame that is drawn over the window to select what lies in it. */
  showFrame(frame: FrameGhost | null): void {
    put(this.frame, { visibility: frame ? 'visible' : 'hidden' });
    if (!frame) return;
    const [[a, b], [c, d]] = [frame.from, frame.to];
    put(this.frame, {
      x: Math.min(a, c),
      y: Math.min(b, d),
      width: Math.abs(c - a),
      height: Math.abs(d - b),
      'data-count': frame.count,
    });
  }

  private showMarks(sheet: Sheet, marks: readonly SketchMark[]): void {
    const paths = new Map<MarkShape['look'], SVGPathElement[]>();
    for (const { at, sign } of marks) {
      const spot = sheet.spotFromSite(at);
      if (!spot) continue;
      const { d, look } = markShape(sign);
      const transform = `translate(${spot.x.toFixed(1)} ${spot.y.toFixed(1)})`;
      const path = svg('path', { d, transform, 'data-sign': sign });
      paths.set(look, [...(paths.get(look) ?? []), path]);
    }
    for (const [look, group] of this.marks) group.replaceChildren(...(paths.get(look) ?? []));
  }

  private showPlates(sheet: Sheet, sketch: Sketch | null): void {
    const { lines, ticks, middles } = dimensionLines(sheet, sketch);
    put(this.dimensions, { d: lines });
    put(this.ticks, { d: ticks });
    const places = sketch ? platePlaces(sheet, sketch, middles, this.sizeOf) : [];
    const kept = [...this.plates.children];
    places.forEach(({ plate, x, y }, i) => {
      const old = kept[i];
      const element = old instanceof HTMLElement ? old : document.createElement('span');
      if (!old) this.plates.append(element);
      if (element.textContent !== plate.text) element.textContent = plate.text;
      element.dataset['tone'] = plate.tone;
      element.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px) translate(-50%, -50%)`;
    });
    for (const old of kept.slice(places.length)) old.remove();
  }

  /** Reckoned from the letters, since asking the page for a size would lay it out anew with each move. */
  private readonly sizeOf: SizeOf = (text) => {
    const known = this.widths.get(text);
    if (known !== undefined) return { width: known + 14, height: 20 };
    if (this.font === '') {
      const { fontFamily } = getComputedStyle(this.plates);
      this.font = `600 12px ${fontFamily}`;
    }
    if (this.pen) this.pen.font = this.font;
    const width = this.pen?.measureText(text).width ?? text.length * 7;
    if (this.widths.size > 500) this.widths.clear();
    this.widths.set(text, width);
    return { width: width + 14, height: 20 };
  };

  private clear(): void {
    this.empty = true;
    const paths = [this.hatch, this.casing, this.dimensions, this.ticks, ...this.lines.values()];
    for (const path of paths) put(path, { d: '' });
    for (const group of this.marks.values()) group.replaceChildren();
    this.plates.replaceChildren();
  }
}
