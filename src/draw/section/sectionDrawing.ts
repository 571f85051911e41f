import type { Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Plate } from '../labelPlaces.ts';
import type { Mark } from './marks.ts';
import { heightX, measureMarks, tiltPlace } from './sectionMeasures.ts';
import { rulerMarks } from './sectionRulers.ts';
import { cameraMarks, edgeLines, personMarks, sceneMarks } from './sectionScene.ts';
import { frameOf, type SectionView } from './sectionView.ts';
import { sectionSentence, type Named } from './sectionWords.ts';

/** A section drawn: marks from the back, and where it is held. */
export interface SectionDrawing {
  readonly view: SectionView;
  /** The part above the rulers, as far as the section is told: its left and right end, and y at its bottom. */
  readonly scene: { readonly left: number; readonly right: number; readonly foot: number };
  readonly marks: readonly Mark[];
  readonly handles: Readonly<Record<'height' | 'tilt' | 'person', Vec2>>;
  /** The frame's sides, from the lens on. */
  readonly edges: Readonly<Record<'top' | 'bottom', readonly [Vec2, Vec2]>>;
  /** The whole in a sentence. */
  readonly sentence: string;
  /** How many bands the edition has. */
  readonly levels: number;
}

/** Half the side of the square that a handle keeps free of labels, px. */
const HANDLE = 9;

/** Draws a section for a view: data, which screens and paper turn into the same picture. */
export function drawSection(section: Section, view: SectionView, named: Named): SectionDrawing {
  const frame = frameOf(section, view);
  const { person, lens } = section;
  const handles = {
    height: [heightX(frame), frame.y(lens)],
    tilt: tiltPlace(section, frame),
    person: frame.place([person.distance, person.ground]),
  } as const satisfies Record<string, Vec2>;
  const [px, py] = handles.person;
  const [cx, cy] = frame.place([0, lens]);
  const tall = person.stature * view.scale;
  const taken: readonly Plate[] = [
    ...Object.values(handles).map(([x, y]) => ({ x, y, width: 2 * HANDLE, height: 2 * HANDLE, angle: 0 })),
    { x: px, y: py - tall / 2, width: 0.24 * tall, height: tall, angle: 0 },
    { x: cx + 4, y: cy, width: 20, height: 14, angle: 0 },
  ];
  return {
    view,
    scene: { left: frame.x(section.from), right: frame.x(section.to), foot: frame.foot + 8 },
    marks: [
      ...sceneMarks(section, frame),
      ...cameraMarks(section, frame),
      ...personMarks(section, frame),
      ...measureMarks(section, frame, named, taken),
      ...rulerMarks(section, frame, named),
    ],
    handles,
    edges: edgeLines(section, frame),
    sentence: sectionSentence(section, named),
    levels: named.edition.bands.length,
  };
}
