import type { Vec2 } from '../../base/vector.ts';
import { heading, span } from '../../model/segment.ts';
import type { Building, Opening, Service, Structure } from '../../model/structure.ts';
import { setFloors } from '../../plan/commands/setFloors.ts';
import { setOpening } from '../../plan/commands/setOpening.ts';
import { setService } from '../../plan/commands/setService.ts';
import { LIMITS } from '../../plan/limits.ts';
import { cornerNames, endWord } from '../tools/mount/cornerNames.ts';
import type { Setting, SizeSetting } from './setting.ts';

/** The ends of the wall or of the run of a barrier that a part is on, as drawn; null where it has none. */
function runOf(on: Structure, face: number): readonly [Vec2, Vec2] | null {
  const corners = on.kind === 'barrier' ? on.line : 'outline' in on ? on.outline : [];
  const [a, b] = [corners[face], corners[(face + 1) % corners.length]];
  return a && b ? [a, b] : null;
}

/** Its length, m; 0 where it has none. */
function runLength(on: Structure, face: number): number {
  const run = runOf(on, face);
  return run ? span(...run) : 0;
}

/** What the distances to its two ends are called, as on the Model: "From the west corner". */
function endLabels(on: Structure, face: number): readonly [start: string, end: string] {
  const run = runOf(on, face);
  if (!run) return ['From the first corner', 'From the far corner'];
  const [x, y] = heading(...run);
  const { start, end } = cornerNames({ along: [x, y, 0] });
  return [`From the ${start} ${endWord(on)}`, `From the ${end} ${endWord(on)}`];
}

/** The numbers of an opening, in the order of its sheet: where it is from both ends, and how large. */
export function openingSettings(on: Structure, opening: Opening): readonly SizeSetting[] {
  const { id, along, width } = opening;
  const length = runLength(on, opening.face);
  const part = (
    key: string,
    label: string,
    value: number,
    least: number,
    most: number,
    change: (value: number) => Partial<Opening>,
  ): SizeSetting => ({
    key,
    label,
    measure: 'length',
    bounds: { least, most },
    value,
    got: opening.got,
    change: (plan, next) => setOpening(plan, on.id, id, change(next), 'measured'),
  });
  const room = Math.max(0, length - width);
  const [fromStart, fromEnd] = endLabels(on, opening.face);
  const block = on.kind === 'building' && on.wallThickness === null;
  return [
    part('along', fromStart, along, 0, room, (next) => ({ along: next })),
    part('from end', fromEnd, Math.max(0, length - along - width), 0, room, (next) => ({
      along: length - width - next,
    })),
    part('width', 'Width', width, LIMITS.size.least, Math.max(LIMITS.size.least, length), (next) => ({
      width: next,
    })),
    part('height', 'Height', opening.height, LIMITS.size.least, LIMITS.height.most, (next) => ({
      height: next,
    })),
    part('sill', 'Sill above the base', opening.sill, 0, LIMITS.height.most, (next) => ({ sill: next })),
    ...(block ? [part('setBack', 'Set back', opening.setBack, 0, 2, (next) => ({ setBack: next }))] : []),
  ];
}

/** The numbers of a point on a wall. */
export function serviceSettings(
  on: Structure,
  { id, face, along, height, got }: Service,
): readonly SizeSetting[] {
  const part = (key: 'along' | 'height', label: string, value: number, most: number): SizeSetting => ({
    key,
    label,
    measure: 'length',
    bounds: { least: 0, most },
    value,
    got,
    change: (plan, next) => setService(plan, on.id, id, { [key]: next }, 'measured'),
  });
  return [
    part('along', endLabels(on, face)[0], along, runLength(on, face)),
    part('height', 'Above the base', height, LIMITS.height.most),
  ];
}

/** The levels of a building's floors, two numbers each. */
export function floorSettings({ id, floors }: Building): readonly (readonly [Setting, Setting])[] {
  return floors.map((floor, index) => {
    const part = (key: 'level' | 'ceiling', label: string, least: number): Setting => ({
      key: `${key} ${index}`,
      label: `${floor.name}, ${label}`,
      measure: 'length',
      bounds: { least, most: LIMITS.height.most },
      value: floor[key],
      change: (plan, value) =>
        setFloors(
          plan,
          id,
          floors.map((other, k) => (k === index ? { ...other, [key]: value } : other)),
        ),
    });
    return [part('level', 'above the base', LOWEST), part('ceiling', 'ceiling', LEAST_ROOM)] as const;
  });
}

/** A cellar's floor, and the lowest room, m: common practice, no source. */
const LOWEST = -20;
const LEAST_ROOM = 0.5;
