import { sumSection } from '../../assess/sum/sumSection.ts';
import type { Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Sum } from '../../optics/quickSum.ts';
import { editionOf } from '../../plan/editions.ts';
import type { Plan } from '../../plan/plan.ts';
import { stroke, words, type Mark } from '../section/marks.ts';
import { drawSection, type SectionDrawing } from '../section/sectionDrawing.ts';
import { firstView, type SectionView } from '../section/sectionView.ts';
import { cameraWords, SUM_CAUTION, sumRows, sumTitle, type SumNamed } from './sumWords.ts';

/** What a plan judges a sum by: its edition, units and limits. */
export const sumNamed = ({ settings }: Plan): SumNamed => ({
  edition: editionOf(settings.edition),
  settings,
  units: settings.units,
});

/** The section of a sum, far enough for any drawing of it. */
export const sectionOfSum = (sum: Sum, { edition, settings }: SumNamed): Section =>
  sumSection(sum, edition, settings, Math.max(45, 2.6 * sum.asked.distance));

/** Left of who stands farthest right there is so much room, px. */
const RIGHT = 84;
const LEAST_SCALE = 0.05;

/** The view in which who stands there is in sight. */
export function sumView(section: Section, width: number, height: number, narrow: boolean): SectionView {
  const first = firstView(section, width, height, narrow);
  const gutter = -first.left * first.scale;
  const scale = Math.max(
    LEAST_SCALE,
    Math.min(first.scale, (width - gutter - RIGHT) / section.person.distance),
  );
  return { ...first, scale, left: -gutter / scale };
}

/** A sum's section drawn for a view. */
export const drawSum = (section: Section, view: SectionView, { edition, units }: SumNamed): SectionDrawing =>
  drawSection(section, view, { solids: [], edition, units });

/** A picture as marks, of which some lie in a part of it. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  readonly drawing: SectionDrawing;
  /** Where the drawing's own corner lies. */
  readonly at: Vec2;
}

/** Sizes of the picture that is copied, px. */
const [WIDE, DRAWN, EDGE, ROW, HEAD] = [760, 250, 24, 24, 72];

/** The picture that is copied: what the sum is of, its section, the answers, and by which edition. */
export function sumSheet(sum: Sum, section: Section, named: SumNamed): Sheet {
  const rows = sumRows(sum, section, named);
  const half = Math.ceil(rows.length / 2);
  const top = HEAD + DRAWN + 30;
  const height = top + half * ROW + 64;
  const column = (WIDE - 3 * EDGE) / 2;
  const marks: Mark[] = [
    words(EDGE, 34, sumTitle(sum, named), { size: 17, weight: 650 }),
    words(EDGE, 56, cameraWords(sum), { size: 12, fill: 'ink2' }),
    ...rows.flatMap(({ name, value, note }, at): Mark[] => {
      const x = EDGE + Math.floor(at / half) * (column + EDGE);
      const y = top + (at % half) * ROW;
      return [
        stroke(`M${x} ${y + 7}H${x + column}`, { line: 'rule2', width: 1 }),
        words(x, y, note === null || note.length > 34 ? name : `${name}, ${note}`, { size: 12 }),
        words(x + column, y, value, { size: 13, weight: 600, anchor: 'end' }),
      ];
    }),
    words(
      EDGE,
      height - 34,
      `Bands: ${named.edition.name}. Flat ground, nothing in the way; slant distances, exact.`,
      {
        size: 11,
        fill: 'ink2',
      },
    ),
    words(EDGE, height - 18, SUM_CAUTION, { size: 11, fill: 'ink2' }),
  ];
  const view = sumView(section, WIDE - 2 * EDGE, DRAWN, false);
  return { width: WIDE, height, marks, drawing: drawSum(section, view, named), at: [EDGE, HEAD] };
}
