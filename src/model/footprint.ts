import { accept, refuse, type Fault, type Outcome } from '../base/fault.ts';
import { GREATEST_COORDINATE, SAME_POINT } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import { chainEdges, firstMeet, type ChainCorner, type ChainEdge, type Meet } from './meet.ts';
import { modelFault } from './modelFault.ts';
import { cornerAt, inRing, signedArea } from './ring.ts';
import { span } from './segment.ts';
import type { Ring } from './structure.ts';

/** The least area that an outline may enclose, m²: a square of `LEAST_SIZE`. */
const LEAST_AREA = 1e-4;

/** Rings fit to build on: simple, apart, outline counter-clockwise, holes clockwise within it. */
export interface Footprint {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
  /** For each edge of `outline`, the edge that it was in the outline given. */
  readonly edges: readonly number[];
  /** The outline given ran clockwise: its edges now run the other way. */
  readonly reversed: boolean;
}

/** A ring without repeated corners, and which of the given corners each was. */
interface Cleaned {
  readonly ring: Ring;
  readonly kept: readonly number[];
}

/**
 * Makes an outline with holes fit to build on, or says which corners stand in the way.
 * Repeated corners are dropped (with a note) and winding is put right. Corners on a straight run are kept, since
 * openings and mounts count faces by corner.
 * @param subject  what the person calls the thing, for the faults
 * Faults: path `['outline', corner]` or `['holes', hole, corner]`; corners named in `given` count from 1.
 */
export function validFootprint(outline: Ring, holes: readonly Ring[], subject: string): Outcome<Footprint> {
  const faults: Fault[] = [];
  const notes: Fault[] = [];
  const clean = (ring: Ring, path: readonly (string | number)[]): Cleaned => {
    faults.push(...coordinateFaults(ring, path, subject));
    const cleaned = withoutRepeats(ring);
    const kept = new Set(cleaned.kept);
    for (let corner = 0; kept.size < ring.length && corner < ring.length; corner++) {
      if (!kept.has(corner)) {
        notes.push(
          modelFault('footprint.repeated', subject, [...path, corner], { given: `corner ${corner + 1}` }),
        );
      }
    }
    if (cleaned.ring.length < 3) {
      const about = { given: cleaned.ring.length, allowed: '3 corners or more' };
      faults.push(modelFault('footprint.corners', subject, path, about));
    }
    return cleaned;
  };
  const outer = clean(outline, ['outline']);
  const inner = holes.map((hole, index) => clean(hole, ['holes', index]));
  if (faults.length > 0) return refuse(...faults);

  const all = [outer, ...inner];
  const meet = firstMeet(all.flatMap(({ ring }, chain) => chainEdges(ring, chain, true)));
  if (meet) return refuse(meetFault(meet, all, subject));
  const areas = all.map(({ ring }) => signedArea(ring));
  const flat = areas.findIndex((area) => Math.abs(area) < LEAST_AREA);
  if (flat >= 0) {
    const about = { given: Math.abs(areas[flat] ?? 0), allowed: `at least ${LEAST_AREA} m²` };
    return refuse(modelFault('footprint.area', subject, ringPath(flat), about));
  }
  const astray = nestingFault(
    outer.ring,
    inner.map(({ ring }) => ring),
    subject,
  );
  if (astray) return refuse(astray);

  const reversed = (areas[0] ?? 0) < 0;
  const size = outer.ring.length;
  const given = givenEdges(outline, outer.kept);
  return accept(
    {
      outline: reversed ? [...outer.ring].reverse() : outer.ring,
      holes: inner.map(({ ring }, index) => ((areas[index + 1] ?? 0) > 0 ? [...ring].reverse() : ring)),
      edges: reversed ? given.map((_, k) => given[(2 * size - 2 - k) % size] ?? 0) : given,
      reversed,
    },
    notes,
  );
}

/** For each edge between kept corners, the given edge that it is: the only one there with a length. */
function givenEdges(ring: Ring, kept: readonly number[]): number[] {
  return kept.map((start, k) => {
    const end = kept[k + 1] ?? ring.length;
    let edge = start;
    while (edge + 1 < end && span(cornerAt(ring, edge), cornerAt(ring, edge + 1)) < SAME_POINT) edge++;
    return edge;
  });
}

const ringPath = (chain: number): readonly (string | number)[] =>
  chain === 0 ? ['outline'] : ['holes', chain - 1];

/** Coordinates that are no numbers or too far away, each by its corner. */
export function coordinateFaults(
  corners: readonly Vec2[],
  path: readonly (string | number)[],
  subject: string,
): Fault[] {
  return corners.flatMap((corner, index) => {
    const bad = corner.find((value) => !(Math.abs(value) <= GREATEST_COORDINATE));
    if (bad === undefined) return [];
    if (!Number.isFinite(bad)) {
      return [
        modelFault('size.number', subject, [...path, index], { given: String(bad), allowed: 'a number' }),
      ];
    }
    const allowed = `within ${GREATEST_COORDINATE} m of the origin`;
    return [modelFault('size.far', subject, [...path, index], { given: bad, allowed })];
  });
}

/** The ring without corners that repeat the one before (the first counts as following the last). */
function withoutRepeats(ring: Ring): Cleaned {
  const kept: number[] = [];
  ring.forEach((corner, index) => {
    const before = kept.length > 0 ? ring[kept[kept.length - 1] ?? 0] : undefined;
    if (!before || !(span(before, corner) < SAME_POINT)) kept.push(index);
  });
  while (kept.length > 1 && span(cornerAt(ring, kept[kept.length - 1] ?? 0), cornerAt(ring, 0)) < SAME_POINT)
    kept.pop();
  return { ring: kept.map((index) => cornerAt(ring, index)), kept };
}

function meetFault(meet: Meet, rings: readonly Cleaned[], subject: string): Fault {
  const given = ({ chain, index }: ChainCorner): number => {
    const kept = rings[chain]?.kept;
    return kept?.[index % kept.length] ?? index;
  };
  const ring = (chain: number): string => (chain === 0 ? '' : ` of hole ${chain}`);
  const edge = ({ chain, index }: ChainEdge): string =>
    `corners ${given({ chain, index }) + 1} to ${given({ chain, index: index + 1 }) + 1}${ring(chain)}`;
  const at = meet.how === 'crosses' ? meet.first : meet.corner;
  const words =
    meet.how === 'crosses'
      ? `${edge(meet.first)} and ${edge(meet.second)}`
      : `corner ${given(at) + 1}${ring(at.chain)} and ${edge(meet.edge)}`;
  return modelFault(`footprint.${meet.how}`, subject, [...ringPath(at.chain), given(at)], { given: words });
}

/** Once no rings meet, one corner tells where the whole ring lies. */
function nestingFault(outline: Ring, holes: readonly Ring[], subject: string): Fault | null {
  for (const [index, hole] of holes.entries()) {
    const corner = cornerAt(hole, 0);
    if (!inRing(corner, outline)) return modelFault('footprint.hole-outside', subject, ['holes', index, 0]);
    const around = holes.findIndex((other, k) => k !== index && inRing(corner, other));
    if (around >= 0) {
      const about = { given: `hole ${index + 1} in hole ${around + 1}` };
      return modelFault('footprint.hole-in-hole', subject, ['holes', index, 0], about);
    }
  }
  return null;
}
