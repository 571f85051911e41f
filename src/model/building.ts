import type { Fault } from '../base/fault.ts';
import { SAME_POINT } from '../base/tolerance.ts';
import { buildingOpenings, type WallOpening } from './buildingOpenings.ts';
import { validFootprint, type Footprint } from './footprint.ts';
import { roomsOf, type Rooms } from './hollow.ts';
import { LEAF, shutLeaf } from './leaf.ts';
import { madeOf, unmade, type Made } from './made.ts';
import { modelFault } from './modelFault.ts';
import { cornerAt } from './ring.ts';
import { flatRoofInstead, roofOf } from './roof.ts';
import type { RoofShape } from './roofShape.ts';
import { heading, leftOf, moved } from './segment.ts';
import { Shell } from './shell.ts';
import { numberFaults, sizeFaults } from './size.ts';
import type { Building } from './structure.ts';
import { addRecess, addReveal, addWall, levelTop, type CutCorners } from './wall.ts';

/**
 * A building: one closed shell of walls, soffit, roof, recesses and, when it is hollow, rooms; and the leaves that
 * stand in openings right through a wall. Rooms stand open to the ground below.
 */
export function buildingSolids(building: Building): Made {
  const wrong = [
    ...numberFaults(building.base, ['base'], building.name),
    ...sizeFaults(building.height, ['height'], building.name),
  ];
  const valid = validFootprint(building.outline, building.holes, building.name);
  if (!valid.ok) return unmade([...wrong, ...valid.faults]);
  if (wrong.length > 0) return unmade(wrong);
  const footprint = valid.value;
  const { rooms, notes } = roomsOf(building, footprint);
  const build = (roof: RoofShape) => {
    const { openings, faults } = buildingOpenings(building, footprint, roof, rooms);
    const mesh = buildingShell(building, footprint, roof, rooms, openings).mesh();
    return { mesh, openings, told: [...valid.notes, ...roof.notes, ...notes, ...faults] };
  };
  const asked = build(roofOf(building, footprint));
  // A roof that does not close is better flat than a building that is not there.
  const { mesh, openings, told } = asked.mesh ? asked : build(flatRoofInstead(building, footprint));
  const body = madeOf(building, mesh, 'solid', told);
  if (body.solids.length === 0) return body;
  const leaves = leavesOf(building, footprint, rooms, openings);
  return {
    solids: [...body.solids, ...leaves.flatMap(({ solids }) => solids)],
    faults: [...body.faults, ...leaves.flatMap((leaf) => leaf.faults)],
  };
}

function buildingShell(
  building: Building,
  footprint: Footprint,
  roof: RoofShape,
  rooms: Rooms | null,
  openings: readonly WallOpening[],
): Shell {
  const shell = new Shell();
  const { base } = building;
  const { outline, holes } = footprint;
  const fronts = new Map<WallOpening, CutCorners>();
  outline.forEach((a, edge) => {
    const cuts = openings.filter((opening) => opening.edge === edge);
    const corners = addWall(shell, a, cornerAt(outline, edge + 1), base, roof.topOf(edge), cuts);
    corners.forEach((cut, k) => {
      const opening = cuts[k];
      if (opening) fronts.set(opening, cut);
    });
  });
  for (const [hole, ring] of holes.entries()) {
    ring.forEach((a, k) => {
      const b = cornerAt(ring, k + 1);
      addWall(shell, a, b, base, roof.holeTopOf(hole, k));
    });
  }
  for (const loops of roof.faces)
    shell.face(...loops.map((loop) => loop.map(([x, y, z]) => shell.corner(x, y, z))));
  for (const { z, outside } of roof.caps) shell.cap(z, outside);
  if (rooms) addRooms(shell, base, rooms, openings, fronts);
  for (const [opening, front] of fronts) {
    if (opening.through) continue;
    const a = cornerAt(outline, opening.edge);
    const inwards = leftOf(heading(a, cornerAt(outline, opening.edge + 1)));
    addRecess(shell, front, inwards, opening.depth, opening.foot === base);
  }
  shell.cap(base, 'down');
  return shell;
}

/** The inner faces of the walls, seen from the rooms, with the reveals of openings between the two skins. */
function addRooms(
  shell: Shell,
  base: number,
  rooms: Rooms,
  openings: readonly WallOpening[],
  fronts: ReadonlyMap<WallOpening, CutCorners>,
): void {
  rooms.rings.forEach((ring, r) => {
    ring.forEach((a, edge) => {
      const b = cornerAt(ring, edge + 1);
      const behind = openings.flatMap((opening) => {
        const { through } = opening;
        return through?.ring === r && through.edge === edge ? [{ opening, through }] : [];
      });
      // The face is walked from b to a, against the outer edge, so that the wall is again on its left.
      const cuts = behind.map(({ opening: { from, to, foot, head }, through }) => ({
        from: through.to - to,
        to: through.to - from,
        foot,
        head,
      }));
      const corners = addWall(shell, b, a, base, levelTop(b, a, rooms.ceiling), cuts);
      corners.forEach(([lowStart, lowEnd, highEnd, highStart], k) => {
        const opening = behind[k]?.opening;
        const front = opening && fronts.get(opening);
        if (front) addReveal(shell, front, [lowEnd, lowStart, highStart, highEnd], opening.foot === base);
      });
    });
  });
  shell.cap(rooms.ceiling, 'down');
}

/** The closed leaves of openings right through a wall; open ones stand out of the way. */
function leavesOf(
  building: Building,
  footprint: Footprint,
  rooms: Rooms | null,
  openings: readonly WallOpening[],
): Made[] {
  if (!rooms) return [];
  return openings.flatMap((fitted) => {
    const { opening, through } = fitted;
    if (!through || opening.leaf === 'open' || opening.kind === 'archway') return [];
    const a = cornerAt(footprint.outline, fitted.edge);
    const along = heading(a, cornerAt(footprint.outline, fitted.edge + 1));
    const thickness = Math.min(LEAF, rooms.thickness);
    const deepest = rooms.thickness - thickness;
    const setBack = Math.min(opening.setBack, deepest);
    const leaf = shutLeaf(building, opening, {
      hinge: moved(moved(a, along, fitted.from), leftOf(along), setBack + thickness / 2),
      along,
      width: fitted.to - fitted.from,
      foot: fitted.foot,
      head: fitted.head,
      thickness,
    });
    if (opening.setBack <= deepest + SAME_POINT) return [leaf];
    const note: Fault = modelFault('opening.set-back', opening.name, ['openings', fitted.index, 'setBack'], {
      given: opening.setBack,
      allowed: `at most ${deepest} m in this wall`,
    });
    return [{ solids: leaf.solids, faults: [...leaf.faults, note] }];
  });
}
