import { tan } from '../../../base/angle.ts';
import type { Vec3 } from '../../../base/vector.ts';
import { stopId, type About } from '../about.ts';
import type { CautionThing, Found } from '../caution.ts';
import type { FiguresOf } from '../figures.ts';
import type { ThresholdId } from '../thresholds.ts';
import type { WallSpot } from '../wallSpot.ts';

/** The plate of a camera on its wall, along the edge as drawn and above the base, m: the fixings lie within it. */
interface PlateOnWall {
  readonly left: number;
  readonly right: number;
  readonly foot: number;
  readonly head: number;
}

/** "Right" of a plate is as seen from outside: along the edge of an outline that runs counter-clockwise. */
function plateOf({ plate, along, height, face }: WallSpot, at: (s: number, z: number) => Vec3): PlateOnWall {
  const [a, b] = [at(0, 0), at(1, 0)];
  const runs = (b[0] - a[0]) * -face.outward[1] + (b[1] - a[1]) * face.outward[0] >= 0 ? 1 : -1;
  const middle = along + runs * plate.right;
  const level = height + plate.up;
  return {
    left: Math.min(along, middle - plate.width / 2),
    right: Math.max(along, middle + plate.width / 2),
    foot: Math.min(height, level - plate.height / 2),
    head: Math.max(height, level + plate.height / 2),
  };
}

interface Near {
  readonly what: FiguresOf<30>['what'];
  readonly thing: string;
  readonly distance: number;
  readonly crossed: ThresholdId;
  readonly thresholds: readonly ThresholdId[];
  readonly at: Vec3;
  readonly about: CautionThing | null;
}

/** Row 30: hole or fixings above or beside an opening, or near an edge of the wall. */
export function holeNear(about: About): readonly Found[] {
  const { wall, fixing } = about;
  if (wall === null) return [];
  const found = [...byOpenings(about, wall), ...byEdges(about, wall)];
  return found.map(({ what, thing, distance, crossed, thresholds, at, about: concerned }) => ({
    id: stopId(30, `${what}-${thing}`, fixing.hole ?? at),
    severity: 'stop' as const,
    weight: about.limit(crossed) / Math.max(0.01, distance),
    figures: { row: 30 as const, what, thing, distance },
    places: [{ at, thing: concerned }],
    thresholds,
  }));
}

function byOpenings(about: About, wall: WallSpot): readonly Near[] {
  const [above, beside] = [about.limit('hole.above'), about.limit('hole.beside')];
  const plate = plateOf(wall, wall.at);
  return wall.openings.flatMap((opening): Near[] => {
    const [from, to] = [opening.along, opening.along + opening.width];
    const [sill, head] = [opening.sill, opening.sill + opening.height];
    const concerned: CautionThing = { kind: 'opening', id: opening.id, on: wall.structure.id };
    const off = Math.max(from - plate.right, plate.left - to, 0);
    // Boards of the plate that reach down before the opening stand over its head too.
    const up = Math.max(plate.foot - head, 0);
    if (off <= beside && up <= above && plate.head > head)
      return [
        {
          what: 'lintel',
          thing: opening.name,
          distance: up,
          crossed: 'hole.above',
          thresholds: ['hole.above', 'hole.beside'],
          at: wall.at(Math.min(to, Math.max(from, wall.along)), head),
          about: concerned,
        },
      ];
    const isLevel = plate.head > sill && plate.foot < head;
    if (!isLevel || off > beside) return [];
    const jamb = plate.left >= to ? to : from;
    return [
      {
        what: 'jamb',
        thing: opening.name,
        distance: off,
        crossed: 'hole.beside',
        thresholds: ['hole.beside'],
        at: wall.at(jamb, wall.height),
        about: concerned,
      },
    ];
  });
}

function byEdges(about: About, wall: WallSpot): readonly Near[] {
  const edge = about.limit('hole.edge');
  const plate = plateOf(wall, wall.at);
  const concerned: CautionThing = { kind: 'structure', id: wall.structure.id };
  // A bracket around the corner is made for it.
  const ends = wall.atCorner
    ? []
    : [
        { thing: 'corner', distance: plate.left, at: wall.at(0, wall.height) },
        { thing: 'corner', distance: wall.length - plate.right, at: wall.at(wall.length, wall.height) },
      ];
  const all = [...ends, { thing: 'top', distance: wall.top - plate.head, at: wall.at(wall.along, wall.top) }];
  return all
    .filter(({ distance }) => distance < edge)
    .map(({ thing, distance, at }) => ({
      what: 'edge',
      thing,
      distance: Math.max(0, distance),
      crossed: 'hole.edge',
      thresholds: ['hole.edge'],
      at,
      about: concerned,
    }));
}

/** How much higher the inner end of a hole is, that falls outwards; null where the thickness of the wall is not given. */
const riseOf = (about: About, { thickness }: WallSpot): number | null =>
  thickness === null ? null : thickness * tan(about.limit('cable.fall'));

/** Row 31: where the hole comes out inside. Always told for a wall of a building. */
export function insideEnd(about: About): readonly Found[] {
  const { wall } = about;
  if (wall === null || wall.structure.kind !== 'building') return [];
  const inner = wall.height + (riseOf(about, wall) ?? 0);
  const floors = [...wall.structure.floors].sort((one, two) => one.level - two.level);
  const at = floors.findLastIndex(({ level }) => level <= inner);
  const floor = floors[at];
  const next = floors[at + 1];
  const ceiling = floor === undefined ? 0 : floor.level + floor.ceiling;
  const joists = floor === undefined || next === undefined ? null : { from: ceiling, to: next.level };
  const { hole, outward, thickness } = wall;
  const deep = thickness ?? 0.3;
  const end: Vec3 = [hole[0] - outward[0] * deep, hole[1] - outward[1] * deep, hole[2] + inner - wall.height];
  return [
    {
      id: stopId(31, 'inside', hole),
      severity: 'stop',
      weight: joists !== null && inner > joists.from ? 2 : 1,
      figures: {
        row: 31,
        height: floor === undefined ? null : inner - floor.level,
        floor: floor?.name ?? null,
        joists,
        inJoists: joists !== null && inner >= joists.from && inner <= joists.to,
      },
      places: [{ at: end, thing: { kind: 'structure', id: wall.structure.id } }],
      thresholds: ['cable.fall'],
    },
  ];
}

/** Row 37: what the hole of the cable must be. Told of every hole in a wall. */
export function cableHole(about: About): readonly Found[] {
  const { wall } = about;
  if (wall === null) return [];
  const plug = about.limit('cable.plug');
  const { plate } = wall;
  const inWidth = plate.width / 2 - Math.abs(plate.right);
  const inHeight = plate.height / 2 - Math.abs(plate.up);
  const bare = Math.min(inWidth, inHeight) < plug / 2;
  return [
    {
      id: `37`,
      severity: 'tell',
      weight: bare ? 2 : 0.5,
      figures: { row: 37, rise: riseOf(about, wall), plug, fall: about.limit('cable.fall'), bare },
      places: [{ at: wall.hole, thing: { kind: 'camera', id: about.set.id } }],
      thresholds: ['cable.plug', 'cable.fall'],
    },
  ];
}
