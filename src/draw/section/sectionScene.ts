import { directionOf } from '../../optics/frameEdges.ts';
import type { CutSolid, Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';
import { pathOf, px, stroke, type Stroke } from './marks.ts';
import type { Frame } from './sectionView.ts';

/** Share of the coarsest band in the tint of what is in the frame. */
const TINT = 0.35;
/** How deep earth is hatched below the ground line, px. */
const EARTH = 6;

/** What lies in the plane, from the back: the frame, what is hidden, earth, cut solids, the ground line. */
export function sceneMarks(section: Section, frame: Frame): Stroke[] {
  const { ground, hidden } = section;
  const behind = hidden.map(({ outline }) => pathOf(outline.map(frame.place), true));
  const line = ground.map(frame.place);
  const [first, last] = [line[0] ?? [0, 0], line.at(-1) ?? [0, 0]];
  const below = (depth: number) =>
    pathOf(
      [...line, [last[0], last[1] + depth], ...line.toReversed().map(([x, y]): Vec2 => [x, y + depth])],
      true,
    );
  const bottom = frame.view.height + 100;
  return [
    stroke(wedge(section, frame), { fill: { band: 1 }, opacity: TINT, clipped: true }),
    ...behind.flatMap((d) => [
      stroke(d, { fill: 'paper', clipped: true }),
      stroke(d, { fill: { pattern: 'hidden' }, line: 'coralLine', width: 1, clipped: true }),
    ]),
    stroke(pathOf([...line, [last[0], bottom], [first[0], bottom]], true), { fill: 'paper', clipped: true }),
    stroke(below(EARTH), { fill: { pattern: 'earth' }, clipped: true }),
    ...section.cuts.flatMap((cut) => solidMarks(cut, section.host, frame)),
    stroke(pathOf(line), { line: 'ink', width: 1.8, clipped: true }),
  ];
}

/** The frame's part of the plane, far past the drawing. */
function wedge({ frame: { top, bottom }, lens }: Section, frame: Frame): string {
  const far = (4 * (frame.view.width + frame.view.height)) / frame.view.scale;
  const steps = Math.max(1, Math.ceil((bottom - top) / 30));
  const rim = Array.from({ length: steps + 1 }, (_, at): Vec2 => {
    const [dt, dh] = directionOf(top + ((bottom - top) * at) / steps);
    return frame.place([dt * far, lens + dh * far]);
  });
  return pathOf([frame.place([0, lens]), ...rim], true);
}

function solidMarks(
  { rings, passage, structure, closed }: CutSolid,
  host: string | null,
  frame: Frame,
): Stroke[] {
  const d = rings.map((ring) => pathOf(placesOf(ring).map(frame.place), true)).join('');
  if (passage === 'clear') return [stroke(d, { line: 'ink2', width: 0.9, clipped: true })];
  if (passage === 'screen')
    return [
      stroke(d, { fill: closed ? 'cardTop' : null, line: 'ink', width: 1.2, dash: '3 2', clipped: true }),
    ];
  const face = stroke(d, { fill: closed ? 'cardTop' : null, line: 'ink', width: 1.6, clipped: true });
  if (structure !== host || !closed) return [face];
  return [
    { ...face, line: null },
    stroke(d, { fill: { pattern: 'wall' }, line: 'ink', width: 1.6, clipped: true }),
  ];
}

export const placesOf = (ring: Float64Array): Vec2[] =>
  Array.from({ length: ring.length / 2 }, (_, at): Vec2 => [ring[2 * at] ?? 0, ring[2 * at + 1] ?? 0]);

/** The sides of the frame, each from the lens to the ground or far past the drawing, px. */
export function edgeLines(
  section: Section,
  frame: Frame,
): Readonly<Record<'top' | 'bottom', readonly [Vec2, Vec2]>> {
  const { lens, groundBelow } = section;
  const far = (2 * (frame.view.width + frame.view.height)) / frame.view.scale;
  const line = (depression: number): readonly [Vec2, Vec2] => {
    const [dt, dh] = directionOf(depression);
    const down = dh < 0 && section.ground.length <= 2 ? Math.min(far, (groundBelow - lens) / dh) : far;
    return [frame.place([0, lens]), frame.place([dt * down, lens + dh * down])];
  };
  return { top: line(section.frame.top), bottom: line(section.frame.bottom) };
}

/** Axis, frame edges and the camera's body. */
export function cameraMarks(section: Section, frame: Frame): Stroke[] {
  const [x, y] = frame.place([0, section.lens]);
  const edges = edgeLines(section, frame);
  const turned = (along: number, across: number): Vec2 => {
    const [c, s] = directionOf(section.camera.tilt);
    return [x + along * c + across * s, y - along * s + across * c];
  };
  const body = pathOf([turned(-4, -5.5), turned(12, -5.5), turned(12, 5.5), turned(-4, 5.5)], true);
  return [
    stroke(pathOf([[x, y], frame.place(section.axisEnd)]), {
      line: 'ink',
      width: 0.9,
      dash: '10 3 2 3',
      clipped: true,
    }),
    ...[edges.top, edges.bottom].flatMap((line) => [
      stroke(pathOf(line), { line: 'casing', width: 2.9, clipped: true }),
      stroke(pathOf(line), { line: 'saffron', width: 1.5, clipped: true }),
    ]),
    stroke(body, { fill: 'saffron', line: 'casing', width: 1.2, clipped: true }),
  ];
}

/** The card figure of a standing person. */
export function personMarks({ person }: Section, frame: Frame): Stroke[] {
  const { distance, ground, stature } = person;
  const [x, foot] = frame.place([distance, ground]);
  const high = stature * frame.view.scale;
  const head = 0.075 * high;
  const top = foot - high;
  const neck = top + 2.1 * head;
  const wide = 0.11 * high;
  const d =
    `M${px(x - wide)} ${px(neck + head)}Q${px(x - wide)} ${px(neck)} ${px(x)} ${px(neck)}` +
    `Q${px(x + wide)} ${px(neck)} ${px(x + wide)} ${px(neck + head)}` +
    `L${px(x + 0.55 * wide)} ${px(foot)}L${px(x - 0.55 * wide)} ${px(foot)}Z`;
  const round =
    `M${px(x - head)} ${px(top + head)}A${px(head)} ${px(head)} 0 1 1 ${px(x + head)} ${px(top + head)}` +
    `A${px(head)} ${px(head)} 0 1 1 ${px(x - head)} ${px(top + head)}Z`;
  return [d, round].map((shape) =>
    stroke(shape, { fill: 'cardTop', line: 'ink', width: 1.1, clipped: true }),
  );
}
