import type { Vec2 } from '../base/vector.ts';
import type { Structure } from '../model/structure.ts';

const BARRIERS = { wall: 'Wall', fence: 'Fence', hedge: 'Hedge' } as const;

/** What kind of thing it is, as one would say it. */
export function kindWord(structure: Structure): string {
  switch (structure.kind) {
    case 'building':
      return 'Building';
    case 'barrier':
      return BARRIERS[structure.sort];
    case 'canopy':
      return 'Canopy';
    case 'tree':
      return 'Tree';
    case 'vehicle':
      return structure.sort === 'van' ? 'Van' : 'Car';
    case 'block':
      return 'Block';
  }
}

/** Length and breadth over ground, m, along its own first edge. */
function footprint(structure: Structure): readonly [number, number] {
  switch (structure.kind) {
    case 'building':
    case 'canopy':
    case 'block':
      return spans(structure.outline);
    case 'barrier':
      return [lengthOf(structure.line, structure.closed), structure.thickness];
    case 'tree':
      return [structure.crownRadius * 2, structure.crownRadius * 2];
    case 'vehicle':
      return [structure.length, structure.width];
  }
}

function spans(outline: readonly Vec2[]): readonly [number, number] {
  const [a, b] = outline;
  const size = a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
  if (!a || !b || size === 0) return [0, 0];
  const [ux, uy] = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
  const along = outline.map(([x, y]) => x * ux + y * uy);
  const across = outline.map(([x, y]) => y * ux - x * uy);
  return [Math.max(...along) - Math.min(...along), Math.max(...across) - Math.min(...across)];
}

function lengthOf(line: readonly Vec2[], closed: boolean): number {
  const corners = closed && line[0] ? [...line, line[0]] : line;
  let sum = 0;
  corners.forEach(([x, y], index) => {
    const before = corners[index - 1];
    if (before) sum += Math.hypot(x - before[0], y - before[1]);
  });
  return sum;
}

/** "11.00 × 7.00" */
export const footprintText = (structure: Structure): string =>
  footprint(structure)
    .map((size) => size.toFixed(2))
    .join(' × ');

const tall = (structure: Structure): number => ('height' in structure ? structure.height : structure.top);

/** The few words beside its name in the list. */
export function detailText(structure: Structure): string {
  switch (structure.kind) {
    case 'building':
    case 'canopy':
    case 'block':
      return footprintText(structure);
    case 'barrier':
      return structure.passage === 'solid' ? `${structure.height.toFixed(2)} m` : 'screen';
    case 'tree':
      return structure.inLeaf ? 'in leaf' : 'bare';
    case 'vehicle':
      return `${structure.height.toFixed(2)} m`;
  }
}

/** What a screen reader says of it: "Garage, building, 3.60 by 5.60, 2.60 high". */
export function spokenText(structure: Structure): string {
  const [long, broad] = footprint(structure);
  const size =
    structure.kind === 'barrier' ? `${long.toFixed(2)} long` : `${long.toFixed(2)} by ${broad.toFixed(2)}`;
  return `${structure.name}, ${kindWord(structure).toLowerCase()}, ${size}, ${tall(structure).toFixed(2)} high`;
}

/** Area of a ring of corners, m². */
export function ringArea(ring: readonly Vec2[]): number {
  let doubled = 0;
  ring.forEach(([x, y], index) => {
    const next = ring[(index + 1) % ring.length];
    if (next) doubled += x * next[1] - next[0] * y;
  });
  return Math.abs(doubled) / 2;
}
