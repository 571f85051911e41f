import type { Section, SectionLine, Stretch } from '../../assess/section/section.ts';
import { fixed } from '../../base/length.ts';
import { placeLabels } from '../labelPlaces.ts';
import { pathOf, plateOf, px, stroke, widthOf, words, type Mark, type Words } from './marks.ts';
import type { Paint } from './paint.ts';
import { lineName, stretchWords, type Named } from './sectionWords.ts';
import { RULER, rulersOf, rulersTop, type Frame } from './sectionView.ts';

/** Around a name in a ruler, px. */
const PAD = 4;

/** The rulers below the ground, chosen height first, and the scale in metres that they share. */
export function rulerMarks(section: Section, frame: Frame, named: Named): Mark[] {
  const { view, gutter } = frame;
  const count = rulersOf(section, view);
  const top = rulersTop(frame);
  const rows = section.lines
    .slice(0, count)
    .flatMap((line, row) => rulerRow(line, row, top + row * RULER, frame, named));
  const limits = view.narrow ? limitMarks(section.lines[0], top, frame, named) : [];
  const under = top + count * RULER;
  return [
    ...rows,
    ...limits,
    ...scaleMarks(section, under, frame),
    // Names stand on paper, over whatever slid below them.
    ...(view.narrow ? [] : [stroke(`M0 ${px(top - 2)}H${gutter - 14}V${view.height}H0Z`, { fill: 'paper' })]),
    ...(view.narrow
      ? []
      : section.lines.slice(0, count).map((line, row) =>
          words(8, top + row * RULER + 10, lineName(line), {
            weight: row === 0 ? 600 : 400,
            fill: row === 0 ? 'ink' : 'ink2',
          }),
        )),
  ];
}

function rulerRow(line: SectionLine, row: number, y: number, frame: Frame, named: Named): Mark[] {
  return line.stretches.flatMap((stretch): Mark[] => {
    const [left, right] = [
      Math.max(frame.view.narrow ? 0 : frame.gutter - 14, frame.x(stretch.from)),
      Math.min(frame.view.width, frame.x(stretch.to)),
    ];
    if (right - left < 0.2) return [];
    const box = `M${px(left)} ${px(y)}H${px(right)}V${px(y + RULER)}H${px(left)}Z`;
    const look = lookOf(stretch);
    if (look === null) return [];
    const text = stretchWords(stretch, named).find(
      (one) => one !== '' && widthOf(one, 11, row === 0 ? 600 : 400) + 2 * PAD <= right - left,
    );
    return [
      stroke(box, { fill: look.fill, line: look.line, width: 1 }),
      ...(text === undefined
        ? []
        : [
            words((left + right) / 2, y + 10, text, {
              size: 11,
              weight: row === 0 ? 600 : 400,
              anchor: 'middle',
              fill: look.text,
              halo: look.halo,
            }),
          ]),
    ];
  });
}

interface Look {
  readonly fill: Paint | null;
  readonly line: Paint | null;
  readonly text: Paint;
  readonly halo: boolean;
}

/** How a stretch is drawn in a ruler; null where it is left out. */
function lookOf({ state, band }: Stretch): Look | null {
  switch (state) {
    case 'covered':
      return { fill: { band }, line: 'paper', text: { onBand: band }, halo: false };
    case 'hidden':
      return { fill: { pattern: 'hidden' }, line: 'coralLine', text: 'coralText', halo: true };
    case 'screened':
      return { fill: { pattern: 'screened' }, line: 'coralLine', text: 'coralText', halo: true };
    case 'too dark':
      return { fill: { pattern: 'dark' }, line: 'coralLine', text: 'coralText', halo: true };
    case 'too coarse':
      return { fill: null, line: 'rule2', text: 'ink2', halo: false };
    case 'inside':
      return { fill: { pattern: 'wall' }, line: 'rule2', text: 'ink2', halo: false };
    case 'out of frame':
      return null;
  }
}

/** On a phone: "250 at 3.7 m" where the finest band ends, and so on, as far as there is room. */
function limitMarks(line: SectionLine | undefined, y: number, frame: Frame, named: Named): Mark[] {
  const ends = (line?.stretches ?? []).filter(
    ({ state, to }, at) =>
      state === 'covered' &&
      to > 0 &&
      line?.stretches[at + 1]?.state !== 'out of frame' &&
      frame.x(to) < frame.view.width,
  );
  const wishes = ends.map((one) => {
    const bandName = named.edition.bands[one.band - 1]?.name ?? '';
    const label = words(frame.x(one.to) + 4, y - 5, `${bandName} to ${fixed(one.to, 1)} m`, { size: 12 });
    return { label, places: [plateOf(label)] };
  });
  return placeLabels(wishes, []).flatMap(({ label }): Mark[] => [
    stroke(
      pathOf([
        [label.x - 4, y - 14],
        [label.x - 4, y + RULER],
      ]),
      { line: 'ink', width: 1.2 },
    ),
    label,
  ]);
}

/** Metres from the point below the lens: a tick each, a number as often as there is room. */
function scaleMarks(section: Section, y: number, frame: Frame): Mark[] {
  const { view, gutter } = frame;
  const every = [1, 2, 5, 10, 20, 50, 100, 200, 500].find((step) => step * view.scale >= 60) ?? 1000;
  const tick = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200].find((step) => step * view.scale >= 18) ?? 500;
  const left = Math.max(section.from, view.left + (view.narrow ? 0 : (gutter - 14) / view.scale));
  const right = Math.min(section.to, view.left + view.width / view.scale);
  const marks: Mark[] = [
    stroke(
      pathOf([
        [frame.x(left), y + 4],
        [frame.x(right), y + 4],
      ]),
      { line: 'ink', width: 0.9 },
    ),
  ];
  for (let n = Math.ceil(left / tick); n * tick <= right; n += 1) {
    const t = n * tick;
    const labelled = Math.abs(t / every - Math.round(t / every)) < 1e-6;
    marks.push(
      stroke(
        pathOf([
          [frame.x(t), y + 4],
          [frame.x(t), y + (labelled ? 11 : 8)],
        ]),
        { line: 'ink', width: 0.9 },
      ),
    );
    if (labelled) marks.push(scaleNumber(frame.x(t), y + 23, t, view.width));
  }
  return marks;
}

function scaleNumber(x: number, y: number, t: number, width: number): Words {
  const text = t === 0 ? '0 m' : fixed(t, Number.isInteger(t) ? 0 : 1);
  const half = widthOf(text, 12) / 2;
  return words(Math.min(width - half - 2, Math.max(half + 2, x)), y, text, { anchor: 'middle' });
}
