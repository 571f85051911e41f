import { cos, turn } from '../base/angle.ts';
import type { Fault } from '../base/fault.ts';
import type { Vec3 } from '../base/vector.ts';
import { insideBy } from './eaves.ts';
import type { Footprint } from './footprint.ts';
import { levelWalls } from './flatRoof.ts';
import { hipLoops, raised, type Hip } from './hipRoof.ts';
import { modelFault } from './modelFault.ts';
import { bearingOf } from './monopitchRoof.ts';
import { cornerAt } from './ring.ts';
import type { Loop, RoofShape } from './roofShape.ts';
import { crossOf, dotOf, heading, meeting, rightOf, span } from './segment.ts';
import type { Building, Ring } from './structure.ts';
import { peakBetween, vergeOver, type Verge } from './verge.ts';

/** How far the corners of an end may be from square for a gable, °. Common practice, no source. */
const SQUARE_WITHIN = 30;
/** How far from the ridge asked for an end may face for its gable, °. */
const RIDGE_WITHIN = 45;
/** What must lie behind a gable's wall, m. */
const LEAST_BEHIND = 1e-3;

/** An end of a wing that can be turned upright. Numbers of edges: as the eaves of the outline count them. */
interface End {
  readonly edge: number;
  readonly before: number;
  readonly after: number;
  /** The node in which its hip ends. */
  readonly tip: number;
  readonly start: Vec3;
  readonly peak: Vec3;
  readonly end: Vec3;
  readonly width: number;
  /** How far from the ridge asked for it faces, °. */
  readonly off: number;
}

/**
 * A gable on any outline: a hip of which the ends of wings stand upright. An end is a wall between two corners that are
 * square within 30°, whose hip is a triangle. Its wall goes up to the ridge, its verge is flush.
 * With a ridge asked for, only ends that face along it are gables. Without any the roof stays hipped, with a note.
 */
export function wingedGable(
  building: Building,
  footprint: Footprint,
  hip: Hip,
  eavesZ: number,
  overhang: number,
): RoofShape {
  const { walls } = hip.eaves;
  const outline = footprint.outline;
  const runs = walls[0]?.runs ?? [];
  const ends = hip.eaves.matched ? chosen(endsOf(building, hip, eavesZ, overhang)) : [];
  const loops = hipLoops(footprint, hip, eavesZ);
  const tops = new Map<number, Loop>();
  for (const end of ends) {
    const run = runs[end.edge] ?? [];
    const verge = vergeOver(outline, run, eavesZ, [end.start, end.peak, end.end]);
    turnUpright(loops, hip, end, verge);
    run.slice(0, -1).forEach((edge, k) => {
      const top = verge.tops[k];
      if (top) tops.set(edge, top);
    });
  }
  const upright = new Set(ends.map(({ edge }) => edge));
  const level = levelWalls(footprint, eavesZ);
  const note: Fault = modelFault('roof.hip-instead', building.name, ['roof', 'kind'], {
    allowed: 'an end with two square corners that faces along the ridge',
  });
  return {
    kind: ends.length > 0 ? 'gable' : 'hip',
    ...level,
    topOf: (edge) => tops.get(edge) ?? level.topOf(edge),
    faces: loops.flatMap((loop, edge): (readonly Loop[])[] => (upright.has(edge) ? [] : [[loop]])),
    caps: [{ z: eavesZ, outside: 'down' }],
    soffitDepth: (edge) => (tops.has(edge) ? 0 : overhang),
    notes: ends.length > 0 ? [] : [note],
  };
}

/** Ends that do not share a corner: the ones nearest to the ridge asked for, then the narrowest, come first. */
function chosen(ends: readonly End[]): End[] {
  const taken = new Set<number>();
  const found: End[] = [];
  // To the micrometre, so that ends of one width are told by their number however the house is turned.
  const sure = (value: number): number => Math.round(value * 1e6);
  const order = (a: End, b: End): number =>
    sure(a.off) - sure(b.off) || sure(a.width) - sure(b.width) || a.edge - b.edge;
  for (const end of [...ends].sort(order)) {
    if (taken.has(end.before) || taken.has(end.after)) continue;
    taken.add(end.edge);
    found.push(end);
  }
  return found;
}

function endsOf(building: Building, hip: Hip, eavesZ: number, overhang: number): End[] {
  const ring = hip.eaves.rings[0] ?? [];
  const walls = hip.eaves.walls[0]?.ring ?? [];
  return ring.flatMap((_, edge) => endAt(building, hip, ring, walls, edge, eavesZ, overhang) ?? []);
}

function endAt(
  { roof }: Building,
  hip: Hip,
  ring: Ring,
  walls: Ring,
  edge: number,
  eavesZ: number,
  overhang: number,
): End | null {
  const tip = hip.skeleton.faces[edge]?.length === 3 ? hip.skeleton.faces[edge]?.[2] : undefined;
  if (tip === undefined) return null;
  const before = (edge + ring.length - 1) % ring.length;
  const after = (edge + 1) % ring.length;
  const [p, q] = [cornerAt(ring, edge), cornerAt(ring, edge + 1)];
  const [inwards, along, outwards] = [
    heading(cornerAt(ring, edge - 1), p),
    heading(p, q),
    heading(q, cornerAt(ring, edge + 2)),
  ];
  const sines = [crossOf(inwards, along), crossOf(along, outwards)] as const;
  const cosines = [dotOf(inwards, along), dotOf(along, outwards)];
  if (Math.min(...sines) <= 0 || cosines.some((c) => Math.abs(c) > cos(90 - SQUARE_WITHIN))) return null;
  const off = roof.ridge === null ? 0 : offRidge(bearingOf(rightOf(along)), roof.ridge);
  if (off > RIDGE_WITHIN) return null;

  // Where the eaves on both sides meet the plane of the wall; without overhang, at its own corners.
  const wall = cornerAt(walls, edge);
  const start = overhang > 0 ? meeting(p, inwards, wall, along) : p;
  const end = overhang > 0 ? meeting(q, outwards, wall, along) : q;
  if (!start || !end) return null;
  const beside = [before, after].flatMap((k) => hip.skeleton.faces[k] ?? []);
  const own = new Set(hip.skeleton.faces[edge]?.slice(0, 2));
  const isBehind = (node: number): boolean =>
    insideBy(hip.skeleton.nodes[node]?.at ?? wall, wall, along) > LEAST_BEHIND;
  if (!beside.every((node) => own.has(node) || isBehind(node))) return null;
  return {
    edge,
    before,
    after,
    tip,
    start: raised(start, eavesZ),
    peak: peakBetween([start, end], inwards, outwards, eavesZ, roof.pitch),
    end: raised(end, eavesZ),
    width: span(start, end),
    off,
  };
}

/** The angle between the way an end faces and a ridge, which has no front and back, °. */
function offRidge(faces: number, ridge: number): number {
  const between = Math.abs(turn(faces, ridge));
  return Math.min(between, 180 - between);
}

/** Carries the faces beside an end on to the wall, where the hip was. */
function turnUpright(loops: Vec3[][], hip: Hip, end: End, verge: Verge): void {
  const { skeleton, points } = hip;
  const [before, after] = [loops[end.before], loops[end.after]];
  const [p, q] = (skeleton.faces[end.edge] ?? []).map((node) => points[node]);
  const tip = points[end.tip];
  if (!before || !after || !p || !q || !tip) return;
  before.splice(before.indexOf(p), 1, ...verge.up, verge.peak);
  after.splice(after.indexOf(q), 1, verge.peak, ...verge.down);
  // Where only these two planes meet there, the ridge runs straight on through the hip's end.
  const touching = skeleton.faces.filter((face) => face.includes(end.tip)).length;
  if (touching > 3) return;
  for (const loop of [before, after]) loop.splice(loop.indexOf(tip), 1);
}
