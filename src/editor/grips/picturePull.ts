import { bearing } from '../../base/angle.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import { setPicture } from '../../plan/commands/addPicture.ts';
import type { Picture, PinnedPicture, Plan, SitePicture } from '../../plan/plan.ts';
import { siteFromPicture } from '../../plan/sitePicture.ts';
import { headingOf } from '../tools/drawing/axes.ts';
import { heldPlaces } from './pictureGrips.ts';
import type { PlanePull, Pull } from './pull.ts';

const EAST: Vec3 = [1, 0, 0];
const NORTH: Vec3 = [0, 1, 0];

/** What a handle of a picture does; null where it is locked or has no such handle. */
export function picturePull(plan: Plan, picture: Picture, point: 'first' | 'second' | 'body'): Pull | null {
  if (picture.locked) return null;
  const { use } = picture;
  if (use.kind === 'photo') return photoPull(picture, use, point);
  if (use.kind !== 'site' || (point !== 'body' && use.metresPerPixel === null)) return null;
  return sitePull(plan, picture, use, point);
}

function overGround(at: Vec3): Omit<PlanePull, 'name' | 'set' | 'ghost'> {
  return {
    kind: 'plane',
    at,
    axes: [EAST, NORTH],
    labels: ['East', 'North'],
    value: [at[0], at[1]],
    snaps: [[], []],
    ground: { held: [], before: [] },
  };
}

function photoPull(
  { id, name }: Picture,
  use: PinnedPicture,
  point: 'first' | 'second' | 'body',
): Pull | null {
  if (point === 'second') return null;
  if (point === 'first')
    return {
      kind: 'turn',
      name: `Turn ${name}`,
      about: use.at,
      label: 'Looks towards',
      value: use.heading ?? 0,
      parallels: [],
      set: (value) => (now) => setPicture(now, id, { use: { ...use, heading: bearing(value) } }),
    };
  const moves: PlanePull = {
    ...overGround(use.at),
    name: `Move ${name}`,
    ghost: () => null,
    set: (value) => (now) => setPicture(now, id, { use: { ...use, at: [value[0], value[1], use.at[2]] } }),
  };
  return moves;
}

function sitePull(
  plan: Plan,
  picture: Picture,
  use: SitePicture,
  point: 'first' | 'second' | 'body',
): PlanePull | null {
  const { id, name, file } = picture;
  const places = heldPlaces(picture);
  if (!places) return null;
  const level = groundHeight(plan.ground);
  const laid = (value: Vec2): SitePicture =>
    point === 'body' ? moved(use, places.body, value) : scaledTo(use, places, point, value);
  return {
    ...overGround([...places[point], level]),
    name: point === 'body' ? `Move ${name}` : `Scale ${name}`,
    ghost: (value) => ({
      points: [
        [0, 0],
        [file.width, 0],
        [file.width, file.height],
        [0, file.height],
      ].map(([u = 0, v = 0]): Vec3 => [...siteFromPicture({ file, use: laid(value) }, [u, v]), level]),
      closed: true,
    }),
    set: (value) => (now) => setPicture(now, id, { use: laid(value) }),
  };
}

const moved = (use: SitePicture, from: Vec2, to: Vec2): SitePicture => ({
  ...use,
  at: [use.at[0] + to[0] - from[0], use.at[1] + to[1] - from[1]],
});

/** Turned and scaled about the other corner, so that this one lies at a place; on the other corner it stays as it was. */
function scaledTo(
  use: SitePicture,
  { first, second }: { readonly first: Vec2; readonly second: Vec2 },
  point: 'first' | 'second',
  to: Vec2,
): SitePicture {
  const [fixed, held] = point === 'first' ? [second, first] : [first, second];
  const [before, after] = [
    Math.hypot(held[0] - fixed[0], held[1] - fixed[1]),
    Math.hypot(to[0] - fixed[0], to[1] - fixed[1]),
  ];
  if (use.metresPerPixel === null || !(before > 0) || !(after > 0)) return use;
  const scale = after / before;
  return {
    ...use,
    // The upper left corner is where the picture lies.
    at: point === 'first' ? to : first,
    metresPerPixel: use.metresPerPixel * scale,
    turn: bearing(use.turn + headingOf(fixed, to) - headingOf(fixed, held)),
  };
}
