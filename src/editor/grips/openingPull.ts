import type { Vec3 } from '../../base/vector.ts';
import type { Got, Opening, Structure } from '../../model/structure.ts';
import { setOpening } from '../../plan/commands/setOpening.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Change } from '../shaping/attempt.ts';
import type { Candidate } from '../tools/snap.ts';
import type { Grip } from './grip.ts';
import { openingPlace } from './openingGrips.ts';
import type { PlacedGrip } from './placedGrip.ts';
import type { LinePull, Pull } from './pull.ts';

type Side = Extract<Grip, { part: 'opening' }>['side'];

const ALIGNED = 6;

/** An opening slid along its wall, or one of its sides, its head or its sill. What it does not touch stays. */
export function openingPull(
  structure: Structure,
  opening: Opening,
  side: Side,
  { at, way }: PlacedGrip,
): Pull | null {
  const place = openingPlace(structure, opening);
  if (!place) return null;
  const { face, asDrawn } = place;
  const { id, name, along, width, height, sill } = opening;
  const others =
    'openings' in structure
      ? structure.openings.filter((one) => one.face === opening.face && one.id !== id)
      : [];
  const set =
    (change: Partial<Opening>, how?: Got): Change =>
    (plan) =>
      setOpening(plan, structure.id, id, change, how);
  if (side === 'body') {
    // The numbers are those of the drawing: along its edge from the first corner drawn, and up.
    const drawn: Vec3 = asDrawn ? face.along : [0 - face.along[0], 0 - face.along[1], 0];
    return {
      kind: 'plane',
      name: `Slide ${name}`,
      at,
      axes: [drawn, [0, 0, 1]],
      labels: ['Along', 'Sill'],
      value: [along, sill],
      snaps: [
        [
          { value: (face.width - width) / 2, pixels: 10, name: 'middle' },
          ...others.map((other): Candidate => ({
            value: other.along + other.width / 2 - width / 2,
            pixels: ALIGNED,
            name: `in line with ${other.name}`,
          })),
        ],
        [{ value: sill, pixels: 12, name: '' }, ...sameSills(others)],
      ],
      ground: null,
      // A door stays on its floor.
      set: ([s, up], how) =>
        set(opening.kind === 'window' ? { along: s, sill: Math.max(0, up) } : { along: s }, how),
      ghost: () => null,
    };
  }
  if (typeof way === 'string') return null;
  const line = (label: string, value: number, snaps: Candidate[], change: LinePull['set']): LinePull => ({
    kind: 'line',
    name: `${label} of ${name}`,
    at,
    along: side === 'sill' ? [0, 0, 1] : way.along,
    label,
    value,
    bounds: side === 'head' || side === 'sill' ? { least: 0, most: LIMITS.height.most } : LIMITS.size,
    snaps,
    set: change,
  });
  if (side === 'head')
    return line('Head', sill + height, sameHeads(others), (head, how) => set({ height: head - sill }, how));
  if (side === 'sill')
    return line('Sill', sill, sameSills(others), (next, how) =>
      set({ sill: next, height: sill + height - next }, how),
    );
  // Whether the side pulled is the one nearer to the first corner drawn: then the other stays where it is.
  const drawnX = (asDrawn ? 1 : -1) * (face.along[0] * way.along[0] + face.along[1] * way.along[1]);
  return line('Width', width, sameWidths(others), (next, how) =>
    set(drawnX < 0 ? { along: along + width - next, width: next } : { width: next }, how),
  );
}

const sameHeads = (others: readonly Opening[]): Candidate[] =>
  others.map(({ sill, height, name }) => ({
    value: sill + height,
    pixels: ALIGNED,
    name: `head of ${name}`,
  }));

const sameSills = (others: readonly Opening[]): Candidate[] =>
  others.map(({ sill, name }) => ({ value: sill, pixels: ALIGNED, name: `sill of ${name}` }));

const sameWidths = (others: readonly Opening[]): Candidate[] =>
  others.map(({ width, name }) => ({ value: width, pixels: ALIGNED, name: `as wide as ${name}` }));
