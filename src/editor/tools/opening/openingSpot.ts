import type { Fault } from '../../../base/fault.ts';
import type { LengthUnit } from '../../../base/length.ts';
import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { difference, heading, moved } from '../../../model/segment.ts';
import type { Opening, OpeningKind } from '../../../model/structure.ts';
import type { OpeningDraft } from '../../../plan/commands/addOpening.ts';
import { faultText } from '../../../plan/faultText.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Sketch } from '../chart.ts';
import { cornerNames, endWord } from '../mount/cornerNames.ts';
import { lengthWords } from '../mount/mountWords.ts';
import type { Pointed } from '../pointed.ts';
import type { Candidate } from '../snap.ts';
import { snap } from '../snap.ts';
import { firstOpening, labelOf, ON_LINE, ON_WALL } from './openingKinds.ts';
import type { OpeningHost } from './openingHost.ts';

/** An opening where it would go. */
export interface OpeningSpot {
  readonly host: OpeningHost;
  readonly opening: OpeningDraft;
  /** What it snapped to. */
  readonly snapped: string | null;
}

/** An opening stays so far inside the ends of its wall, m. */
const INSIDE = 0.05;
const STEP = 0.05;
const PIXELS = { middle: 10, gap: 6, above: 6 };

/** The kind that a turn of the tool's key means on a wall or on a line. */
export function kindOn(turn: number, isLine: boolean): OpeningKind {
  const kinds = isLine ? ON_LINE : ON_WALL;
  return kinds[turn % kinds.length] ?? 'archway';
}

/** The opening of a kind that a pointer means on its host, centred under it, snapped along. */
export function openingSpot(host: OpeningHost, turn: number, at: Pointed, free: boolean): OpeningSpot {
  const { structure, face, length } = host;
  const isLine = structure.kind === 'barrier';
  const kind = kindOn(turn, isLine);
  const first = firstOpening(kind, { height: structure.height, isLine });
  const width = Math.min(first.width, Math.max(0.1, Math.floor((length - 2 * INSIDE) * 100) / 100));
  const others = structure.openings.filter((opening) => opening.face === face);
  const snapped = snap(host.along, centres(others, length), at.metresPerPixel, free);
  const wish = snapped.name === null && !free ? multiple(host.along - width / 2) : snapped.value - width / 2;
  const along = Math.max(INSIDE, Math.min(length - width - INSIDE, milli(wish)));
  return { host, opening: { ...first, face, along: milli(along), width }, snapped: snapped.name };
}

const milli = (value: number): number => Math.round(value * 1000) / 1000;
const multiple = (value: number): number => Math.round(value / STEP) * STEP;

/** Where the middle of an opening is drawn to: the wall's middle, the middles of what is free, other openings. */
function centres(others: readonly Opening[], length: number): readonly Candidate[] {
  const sorted = others.toSorted((a, b) => a.along - b.along);
  const ends = [0, ...sorted.flatMap(({ along, width }) => [along, along + width]), length];
  const gaps: Candidate[] = [];
  for (let k = 0; k + 1 < ends.length; k += 2) {
    const [from, to] = [ends[k] ?? 0, ends[k + 1] ?? length];
    if (sorted.length > 0 && to > from)
      gaps.push({ value: (from + to) / 2, pixels: PIXELS.gap, name: 'equal gaps' });
  }
  return [
    { value: length / 2, pixels: PIXELS.middle, name: 'middle' },
    ...gaps,
    ...sorted.map(({ along, width, name }) => ({
      value: along + width / 2,
      pixels: PIXELS.above,
      name: `in line with ${name}`,
    })),
  ];
}

/** Why an opening does not fit, in words. */
export function openingTrouble(
  plan: Plan,
  on: string,
  opening: Pick<Opening, 'face' | 'kind' | 'along' | 'width'>,
  faults: readonly Fault[],
): string {
  const structure = plan.structures[on];
  if (structure && 'openings' in structure) {
    const left = lengthOfFace(structure, opening.face) - opening.along;
    if (opening.along >= 0 && left > 0 && opening.width > left) {
      const { units } = plan.settings;
      const room = `${lengthWords(left, units)}${units === 'metres' ? ' m' : ''}`;
      return `The ${opening.kind} is wider than the ${room} left on ${structure.name}. Narrow it, or move it.`;
    }
  }
  return faults.map(faultText).join(' ');
}

function lengthOfFace(structure: OpeningHost['structure'], face: number): number {
  const corners = structure.kind === 'building' ? structure.outline : structure.line;
  const [from, to] = [corners[face], corners[(face + 1) % corners.length]];
  return from && to ? Math.hypot(...difference(to, from)) : 0;
}

/** "Gate · 11.00 from the west end · 6.80 from the east end · middle" */
export function spotWords({ host, opening, snapped }: OpeningSpot, unit: LengthUnit): string {
  const names = endNames(host);
  const word = endWord(host.structure);
  const far = host.length - opening.along - opening.width;
  return [
    labelOf(opening.kind),
    `${lengthWords(opening.along, unit)} from the ${names.start} ${word}`,
    `${lengthWords(far, unit)} from the ${names.end} ${word}`,
    snapped,
  ]
    .filter(Boolean)
    .join(' · ');
}

/** What the ends of an edge are called. */
export function endNames({ from, to }: { readonly from: Vec2; readonly to: Vec2 }): {
  start: string;
  end: string;
} {
  const [x, y] = heading(from, to);
  return cornerNames({ along: [x, y, 0] });
}

/** The opening on its wall, with its distances to both ends. */
export function spotSketch(
  { host, opening, snapped }: OpeningSpot,
  unit: LengthUnit,
  wrong: boolean,
): Sketch {
  const along = heading(host.from, host.to);
  const foot = host.structure.base + opening.sill;
  const at = (share: number, z: number): Vec3 => {
    const [x, y] = moved(host.from, along, share);
    return [x, y, z];
  };
  const [from, to] = [opening.along, opening.along + opening.width];
  const plate = (a: number, b: number): Sketch['plates'][number] => ({
    at: at((a + b) / 2, foot),
    text: lengthWords(b - a, unit),
    tone: 'measure',
    between: [at(a, foot), at(b, foot)],
  });
  const points = [
    at(from, foot),
    at(to, foot),
    at(to, foot + opening.height),
    at(from, foot + opening.height),
  ];
  const middle = at((from + to) / 2, foot);
  return {
    kind: 'sketch',
    lines: [{ points, closed: true, style: wrong ? 'wrong' : 'live', hatched: wrong }],
    marks: snapped === null ? [] : [{ at: middle, sign: snapped === 'middle' ? 'middle' : 'equal' }],
    plates: [
      plate(0, from),
      plate(to, host.length),
      ...(snapped === null ? [] : [{ at: middle, text: snapped, tone: 'snap' } as const]),
    ],
  };
}
